using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Cli.Units;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Engagement;
using Spectre.Console;

namespace Archwright.Cli.Tables;

/// <summary>The answer of <c>compare</c> for people: a ranked table, a sentence under each wire.</summary>
internal static class CompareReport
{
    /// <summary>Columns of a screen that takes the whole table.</summary>
    private const int FullWidth = 120;

    /// <summary>Columns of a screen that takes all but the moments.</summary>
    private const int WideWidth = 100;

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
        string numbers = words.NumberedBy.Length > 0 ? $" ({words.NumberedBy})" : "";
        Layout.Paragraph(terminal, $"{wires.Count} wires compared on this arch{numbers}, the best first: "
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
        (string Heading, bool IsFigure, Func<ComparedWire, Text> Cell)[] columns =
            [.. Columns(words, unit, terminal.Width, wires.Any(wire => wire.Working is not null))];
        Table table = Layout.Table([("", true), .. columns.Select(column => (column.Heading, column.IsFigure))]);
        for (int i = 0; i < table.Columns.Count; i++)
        {
            table.Columns[i].NoWrap = true;
            bool isBeforeFigure = i < columns.Length && columns[i].IsFigure;
            table.Columns[i].Padding = new Padding(0, 0, i == 0 || i > 2 && isBeforeFigure ? 1 : 2, 0);
        }

        for (int i = 0; i < wires.Length; i++)
            table.AddRow([new Text(Layout.Whole(i + 1)), .. columns.Select(column => column.Cell(wires[i]))]);

        var style = new SentenceStyle(unit.Force, unit.Moment, words.Notation, SaysTransforms: false);
        IReadOnlyList<string> lines = Layout.Lines(terminal, table);
        int heading = lines.Count - wires.Length;
        for (int i = 0; i < lines.Count; i++)
        {
            terminal.Output.WriteLine(lines[i]);
            if (i < heading)
                continue;
            ComparedWire wire = wires[i - heading];
            Layout.Paragraph(terminal, style.Say(wire, words.Case.Arrangement), "    ", Layout.Quiet);
            if (!wire.Lasting.IsEmpty)
                Layout.Paragraph(terminal, CompareWords.Lasting(wire, words, unit), "    ", Layout.Quiet);
        }
    }

    // A narrow screen shows less: first moment and play are left out, then strain, set and share.
    private static IEnumerable<(string Heading, bool IsFigure, Func<ComparedWire, Text> Cell)> Columns(
        ToothWords words, ForceUnit unit, int width, bool hasWorking)
    {
        yield return ("wire", false, wire => new Text(wire.Wire.Id, Layout.Strong));
        yield return ("verdict", false, wire => new Text(
            CompareWords.Of(wire.Verdict), wire.Verdict == WireVerdict.WithinLimits ? Style.Plain : Layout.Warning));
        yield return ($"largest\nforce\n{unit.Symbol}", true, wire => new Text(CompareWords.Force(wire, unit)));
        yield return ("\n\non", false, wire => Number(wire, wire.LargestForceSlot));
        if (hasWorking)
            yield return ($"when\nworking\n{unit.Symbol}", true, wire => new Text(CompareWords.Working(wire, unit)));
        if (width >= FullWidth)
        {
            yield return ($"largest\nmoment\n{unit.MomentSymbol}", true,
                wire => Figure(wire, unit.MomentFigure(wire.LargestMoment)));
            yield return ("\n\non", false, wire => Number(wire, wire.LargestMomentSlot));
        }

        yield return ("teeth\nabove a\nceiling", false, wire => new Text(
            CompareWords.TeethAbove(wire, words), wire.TeethAboveCeiling.IsEmpty ? Style.Plain : Layout.Warning));
        if (width >= WideWidth)
        {
            yield return ("strain\n% of\nlimit", true, wire => new Text(CompareWords.Strain(wire)));
            if (hasWorking)
                yield return ("set\nmm\n", true, wire => new Text(CompareWords.Set(wire)));
            yield return ("trans-\nformed\n%", true, wire => new Text(CompareWords.Transformed(wire)));
        }

        if (width >= FullWidth || !hasWorking)
            yield return ("torque\nplay\n", true, wire => new Text(CompareWords.Play(wire)));

        static Text Figure(ComparedWire wire, string figure) => new(wire.Engaged ? figure : "–");
        Text Number(ComparedWire wire, int slot) => new(wire.Engaged ? words.Number(slot) : "");
    }

    private static void WriteKey(Terminal terminal, ComparedWire[] shown)
    {
        Layout.Paragraph(terminal, Key(shown.Any(wire => wire.Working is not null), terminal.Width),
            style: Layout.Quiet);
        if (terminal.Width >= WideWidth && shown.Any(wire => wire.Wire.InitialModulusOnly))
        {
            Layout.Paragraph(terminal, "* where an alloy that transforms leaves its elastic range: beyond, it pushes "
                + "with its plateau, and still springs back.", style: Layout.Quiet);
        }

        if (shown.Any(wire => wire.IsUpperBound))
        {
            Layout.Paragraph(terminal, "< less than this: the wire leaves its elastic range, and the force is computed "
                + "as if it did not.", style: Layout.Quiet);
        }

        if (shown.Any(wire => wire is { Engaged: true, Working: null }) && shown.Any(wire => wire.Working is not null))
            Layout.Paragraph(terminal, "? not found.", style: Layout.Quiet);
    }

    private static string Key(bool hasWorking, int width)
    {
        string relief = Engager.Relief.ToString("0 %", CultureInfo.InvariantCulture);
        string working = hasWorking
            ? $"largest force: on engagement; when working: once every displaced tooth has come {relief} of its way. "
            : "Forces are those on engagement. ";
        string set = hasWorking ? "set: how far it stays bent when it is taken out. " : "";
        string wide = width >= WideWidth
            ? "strain: largest in the wire, in percent of its elastic limit. " + set
                + "transformed: largest share of a section. "
            : "";
        string play = width >= FullWidth || !hasWorking
            ? "torque play: twist each way before the wire locks in its loosest slot; free where it never does."
            : $"A screen of {FullWidth} columns shows more.";
        string above = hasWorking ? "those that leave the fewest teeth above it when working" : "the fewest teeth";
        return $"Ranked: within limits, the stiffest first; then those above a ceiling, {above} first; then those that "
            + $"would stay bent; then those that cannot go in. {working}{wide}{play}";
    }
}
