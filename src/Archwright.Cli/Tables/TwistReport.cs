using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Cli.Units;
using Archwright.Dentition.Units;
using Archwright.Exchange.CaseFiles;
using Spectre.Console;

namespace Archwright.Cli.Tables;

/// <summary>The answer of <c>twist</c> for people.</summary>
internal static class TwistReport
{
    /// <summary>Writes it.</summary>
    public static void Write(Terminal terminal, TwistCase test, double[] torques, ForceUnit unit)
    {
        Layout.Heading(terminal, Title(test));
        Layout.Paragraph(terminal, SetUp(test));
        Layout.Gap(terminal);
        Table table = Layout.Table(("twist\ndegrees", true), ($"torque\n{unit.MomentSymbol}", true), ("", false));
        double play = 2 * test.Wire.Section.TorquePlay(test.SlotHeight);
        int top = Top(test);
        for (int i = 0; i < torques.Length; i++)
        {
            bool isFree = Math.Abs(test.Twists[i]) <= play;
            table.AddRow(
                new Text(test.TwistsDegrees[i].ToString("0.##", CultureInfo.InvariantCulture).Replace('-', '−')),
                new Text(unit.MomentFigure(torques[i])),
                new Text(isFree ? "in the play" : i > top ? "on the way back" : ""));
        }

        Layout.Write(terminal, table);
        Layout.Gap(terminal);
        Layout.Paragraph(terminal, Play(test));
        if (test.ComplianceDegrees == 0)
        {
            Layout.Paragraph(terminal, "The brackets are rigid here; real ones give way with all that carries them, "
                + "and measured torques are lower (--compliance).");
        }

        Layout.Paragraph(terminal, "Stated sizes: real slots are often larger, so real play is often more and real "
            + "torque less. " + Cautions.Decision);
    }

    /// <summary>Index of the largest twist: what follows is on the way back.</summary>
    internal static int Top(TwistCase test)
    {
        int top = 0;
        for (int i = 1; i < test.TwistsDegrees.Length; i++)
        {
            if (Math.Abs(test.TwistsDegrees[i]) > Math.Abs(test.TwistsDegrees[top]))
                top = i;
        }

        return top;
    }

    /// <summary>The wire in words.</summary>
    internal static string Title(TwistCase test) => WireWords.Title(test.WireId, test.Wire.Section);

    /// <summary>The two slots in words.</summary>
    internal static string SetUp(TwistCase test) =>
        $"between two slots {Length(test.SlotHeight)} mm high and {Length(test.SlotDepth)} mm deep, "
        + $"{test.EdgeGap.ToString("0.##", CultureInfo.InvariantCulture)} mm of free wire; "
        + (test.ComplianceDegrees == 0
            ? "one slot is turned"
            : "one bracket is turned, and the brackets give way by "
                + $"{test.ComplianceDegrees.ToString("0.###", CultureInfo.InvariantCulture)}° for each N·mm");

    /// <summary>The play in a sentence.</summary>
    internal static string Play(TwistCase test)
    {
        if (test.Wire.Section.IsRound)
            return "A round wire turns in its slots and never torques.";

        double play = test.Wire.Section.TorquePlay(test.SlotHeight);
        if (double.IsInfinity(play))
            return "This wire turns freely all round in these slots and never torques.";

        string one = Angle.ToDegrees(play).ToString("0.0", CultureInfo.InvariantCulture);
        string both = Angle.ToDegrees(2 * play).ToString("0.0", CultureInfo.InvariantCulture);
        return $"Play of one slot {one}° each way; between two slots torque begins at {both}°.";
    }

    private static string Length(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);
}
