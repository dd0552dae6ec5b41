using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Cli.Units;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Bench;
using Spectre.Console;

namespace Archwright.Cli.Tables;

/// <summary>The answer of <c>bend</c> for people.</summary>
internal static class BendReport
{
    /// <summary>Writes it.</summary>
    public static void Write(
        Terminal terminal, IReadOnlyList<(BendCase Case, BendResult Result)> bends, ForceUnit unit)
    {
        foreach ((BendCase test, BendResult result) in bends)
        {
            Layout.Heading(terminal, Title(test));
            Layout.Paragraph(terminal, SetUp(test));
            Layout.Gap(terminal);
            Table table = Layout.Table(
                ("deflection\nmm", true), ("temperature\n°C", true), ($"force\n{unit.Symbol}", true));
            foreach (BendPoint point in result.Readings)
            {
                table.AddRow(
                    new Text(Plain(point.Deflection)), new Text(Plain(point.Temperature)),
                    new Text(unit.Figure(point.Force)));
            }

            Layout.Write(terminal, table);
            Layout.Gap(terminal);
            Layout.Paragraph(terminal, Summary(result, unit));
            if (Cold(test) is { } cold)
                Layout.Paragraph(terminal, cold);
            Layout.Gap(terminal);
        }

        Layout.Paragraph(terminal, "Knife edges and indenter without friction and without radius. A rectangular wire "
            + "is bent over its thickness. " + Cautions.Decision);
    }

    /// <summary>The wire in words.</summary>
    internal static string Title(BendCase test) => WireWords.Title(test.WireId, test.Wire.Section);

    /// <summary>The bench in words.</summary>
    internal static string SetUp(BendCase test) =>
        $"three-point bend over {Plain(test.Span)} mm, starting at {Plain(test.Temperature)} °C";

    private static string Summary(BendResult result, ForceUnit unit) =>
        $"At {Plain(result.Top)} mm {unit.Force(result.ForceAtTop)}. "
        + (result.Residual < 0.005
            ? "Let go, it is straight again."
            : $"Let go, it stays bent by {result.Residual.ToString("0.00", CultureInfo.InvariantCulture)} mm.");

    private static string? Cold(BendCase test)
    {
        double coldest = test.Path.Select(step => step.Temperature ?? test.Temperature).Append(test.Temperature).Min();
        return test.Wire.Alloy is Superelastic alloy && coldest < alloy.ColdestTemperature
            ? $"Below {alloy.ColdestTemperature.ToString("0", CultureInfo.InvariantCulture)} °C the law of this alloy "
                + "has no meaning; colder, it is computed at that temperature."
            : null;
    }

    private static string Plain(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
