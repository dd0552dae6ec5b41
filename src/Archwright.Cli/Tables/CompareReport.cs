using Archwright.Cli.Running;
using Archwright.Cli.Units;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Spectre.Console;

namespace Archwright.Cli.Tables;

/// <summary>The answer of <c>compare</c> for people: a ranked table, a sentence under each wire.</summary>
internal static class CompareReport
{
    /// <summary>Writes it.</summary>
    /// <param name="terminal">Where.</param>
    /// <param name="file">The case.</param>
    /// <param name="wires">In rank order.</param>
    /// <param name="unit">Unit of forces.</param>
    /// <param name="notation">Tooth numbers.</param>
    /// <param name="top">Wires to show, the best first.</param>
    public static void Write(
        Terminal terminal, CaseFile file, IReadOnlyList<ComparedWire> wires, ForceUnit unit, ToothNotation notation,
        int top)
    {
        var words = new ToothWords(file, notation);
        Layout.Heading(terminal, file.Title.Length > 0 ? file.Title : "Case without a title");
        Layout.Paragraph(terminal, $"{wires.Count} wires compared on this arch, the best first: "
            + string.Join(", ", Counts(wires)) + ".");
        Layout.Gap(terminal);

        ComparedWire[] shown = [.. wires.Take(top)];
        WriteTable(terminal, shown, words, unit);
        Layout.Gap(terminal);
        if (shown.Length < wires.Count)
        {
            Layout.Paragraph(terminal, $"Not shown: {string.Join(", ", Counts([.. wires.Skip(top)]))}. "
                + "Show them with --all.");
        }

        WriteKey(terminal, shown);
        Layout.Gap(terminal);
        Layout.Paragraph(terminal, Cautions.Ceilings);
        Layout.Paragraph(terminal, Cautions.LeftOut);
        Layout.Paragraph(terminal, Cautions.Decision);
    }

    private static IEnumerable<string> Counts(IReadOnlyList<ComparedWire> wires) => wires
        .GroupBy(wire => wire.Verdict)
        .OrderBy(group => group.Key)
        .Select(group => CompareWords.Count(group.Key, group.Count()));

    private static void WriteTable(Terminal terminal, ComparedWire[] wires, ToothWords words, ForceUnit unit)
    {
        Table table = Layout.Table(
            ("", true), ("wire", false), ("verdict", false),
            ($"largest\nforce {unit.Symbol}", true), ("\non", false),
            ($"largest\nmoment {unit.MomentSymbol}", true), ("\non", false),
            ("teeth above\na ceiling", false), ("strain\n% / limit", true), ("torque\nplay", true));
        foreach (TableColumn column in table.Columns)
            column.NoWrap = true;
        for (int i = 0; i < wires.Length; i++)
            table.AddRow(Row(i + 1, wires[i], words, unit));

        var style = new SentenceStyle(unit.Force, unit.Moment, words.Notation);
        IReadOnlyList<string> lines = Layout.Lines(terminal, table);
        int heading = lines.Count - wires.Length;
        for (int i = 0; i < lines.Count; i++)
        {
            terminal.Output.WriteLine(lines[i]);
            if (i >= heading)
                Layout.Paragraph(terminal, style.Say(wires[i - heading], words.Case.Arrangement), "    ", Layout.Quiet);
        }
    }

    private static IEnumerable<Text> Row(int rank, ComparedWire wire, ToothWords words, ForceUnit unit)
    {
        Style style = wire.Verdict == WireVerdict.WithinLimits ? Style.Plain : Layout.Warning;
        bool engaged = wire.Engaged;
        return
        [
            new Text(rank.ToString()),
            new Text(wire.Wire.Id, Layout.Strong),
            new Text(CompareWords.Of(wire.Verdict), style),
            new Text(engaged ? unit.Figure(wire.LargestForce) : "–"),
            new Text(engaged ? words.Number(wire.LargestForceSlot) : ""),
            new Text(engaged ? unit.MomentFigure(wire.LargestMoment) : "–"),
            new Text(engaged ? words.Number(wire.LargestMomentSlot) : ""),
            new Text(CompareWords.TeethAbove(wire, words), wire.TeethAboveCeiling.IsEmpty ? Style.Plain : Layout.Warning),
            new Text(CompareWords.Strain(wire)),
            new Text(CompareWords.Play(wire)),
        ];
    }

    private static void WriteKey(Terminal terminal, ComparedWire[] shown)
    {
        Layout.Paragraph(terminal, "Ranked: within limits, the stiffest first; then those above a ceiling, the fewest "
            + "teeth first; then those that would stay bent; then those that cannot go in. "
            + "strain: largest in the wire against its elastic limit. "
            + "torque play: twist each way before the wire locks in its loosest slot.", style: Layout.Quiet);
        if (shown.Any(wire => wire.Wire.InitialModulusOnly))
        {
            Layout.Paragraph(terminal, "* where an alloy that transforms leaves its elastic range: beyond, it still "
                + "springs back, and pushes less than computed.", style: Layout.Quiet);
        }
    }
}
