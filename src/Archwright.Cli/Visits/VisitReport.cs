using Archwright.Cli.Running;
using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Uncertainty;
using Spectre.Console;
using Layout = Archwright.Cli.Tables.Layout;

namespace Archwright.Cli.Visits;

/// <summary>The answer of <c>visit</c> for people.</summary>
internal static class VisitReport
{
    /// <summary>Writes it.</summary>
    /// <param name="terminal">Where.</param>
    /// <param name="file">The case.</param>
    /// <param name="advice">What is recommended.</param>
    /// <param name="unit">Unit of forces.</param>
    /// <param name="notation">Tooth numbers.</param>
    /// <param name="top">Wires to show, the best first.</param>
    public static void Write(
        Terminal terminal, CaseFile file, VisitAdvice advice, ForceUnit unit, ToothNotation notation, int top)
    {
        Layout.Heading(terminal, file.Title.Length > 0 ? file.Title : "Case without a title");
        Layout.Paragraph(terminal, VisitWords.Today(advice.Question));
        Layout.Gap(terminal);
        Layout.Heading(terminal, VisitWords.Headline(advice));
        Layout.Paragraph(terminal, advice.Because);
        foreach (string line in VisitWords.Details(advice, notation))
            Layout.Paragraph(terminal, line);

        Layout.Gap(terminal);
        if (!advice.Considerations.IsEmpty)
        {
            Layout.Heading(terminal, "What might be considered");
            foreach (string one in advice.Considerations)
                Layout.Paragraph(terminal, "- " + one);
            Layout.Gap(terminal);
        }

        WriteMissing(terminal, advice);
        WriteOptions(terminal, advice, unit, notation, top);
        Layout.Gap(terminal);
        Layout.Heading(terminal, "Heed");
        foreach (string caution in advice.Cautions)
            Layout.Paragraph(terminal, "- " + caution);

        Layout.Gap(terminal);
        Layout.Paragraph(terminal, $"Judged by the policy {advice.PolicyVersion}. {Tables.Cautions.Decision}");
    }

    private static void WriteMissing(Terminal terminal, VisitAdvice advice)
    {
        if (advice.Missing.IsEmpty)
            return;

        Layout.Heading(terminal, "Not said, and asked for");
        foreach (MissingFact fact in advice.Missing)
            Layout.Paragraph(terminal, $"- {fact.Question} ({fact.Key})");
        Layout.Gap(terminal);
    }

    private static void WriteOptions(
        Terminal terminal, VisitAdvice advice, ForceUnit unit, ToothNotation notation, int top)
    {
        int allowed = advice.Options.Count(option => option.Allowed);
        Layout.Heading(terminal, $"{advice.Options.Length} wires, {allowed} of them may go in");
        Table table = Layout.Table(
            ("", true), ("wire", false), ("", false), ($"tying\nin\n{unit.Symbol}", true), ("\n\non", false),
            ($"once\ngiven\n{unit.Symbol}", true), ("\n\non", false),
            ("comfort\nindex\nof 10", true), ($"delivered\nby week {advice.Figures.Weeks}\n%", true),
            ("\n\nrange", true));
        WireOption[] shown = [.. advice.Options.Take(top)];
        for (int i = 0; i < shown.Length; i++)
            table.AddRow([.. Row(shown[i], i, advice, unit, notation)]);

        IReadOnlyList<string> lines = Layout.Lines(terminal, table);
        int heading = lines.Count - shown.Length;
        for (int i = 0; i < lines.Count; i++)
        {
            terminal.Output.WriteLine(lines[i]);
            if (i >= heading)
                Layout.Paragraph(terminal, VisitWords.Why(shown[i - heading]), "    ", Layout.Quiet);
        }

        if (shown.Length < advice.Options.Length)
        {
            Layout.Paragraph(
                terminal, $"{advice.Options.Length - shown.Length} more with --all.");
        }

        Layout.Paragraph(
            terminal,
            "Tying in: largest force on a tooth, as if teeth were rigid. Once given: after the ligament has given. "
            + "= differs from the first by less than is known. Range: slow and quick patients.",
            style: Layout.Quiet);
    }

    private static IEnumerable<Text> Row(
        WireOption option, int i, VisitAdvice advice, ForceUnit unit, ToothNotation notation)
    {
        WireFigures wire = option.Figures;
        Percentiles? share = wire.Delivery?.Share;
        yield return new Text(Layout.Whole(i + 1));
        yield return new Text(wire.Wire.Id, option.Allowed ? Layout.Strong : Style.Plain);
        yield return new Text(VisitWords.Mark(option));
        yield return new Text(wire.Engaged ? unit.Figure(wire.LargestForce) : "–");
        yield return new Text(
            wire.LargestForceSlot >= 0 ? advice.Question.Tooth(wire.LargestForceSlot).Show(notation) : "");
        yield return new Text(wire.LargestGiven is { } given ? unit.Figure(given) : "–");
        yield return new Text(
            wire.LargestGivenSlot >= 0 ? advice.Question.Tooth(wire.LargestGivenSlot).Show(notation) : "");
        yield return new Text(option.ComfortIndex is { } index ? VisitWords.Figure(index, "0.0") : "–");
        yield return new Text(share is { } some ? VisitWords.Figure(100 * some.P50, "0") : "–");
        yield return new Text(share is { } range
            ? $"{VisitWords.Figure(100 * range.P10, "0")} to {VisitWords.Figure(100 * range.P90, "0")}" : "");
    }
}
