using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Cli.Solving;
using Archwright.Cli.Units;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;
using Spectre.Console;

namespace Archwright.Cli.Tables;

/// <summary>Force and moment on every tooth, for people.</summary>
internal static class LoadsTable
{
    /// <summary>Columns of a screen that takes the whole table; a narrow one goes without contact and drawn wire.
    /// </summary>
    private const int FullWidth = 110;

    /// <summary>Columns of a screen that takes one more than the components of the load.</summary>
    private const int WideWidth = 100;

    /// <summary>One line a slot.</summary>
    public static void Write(
        Terminal terminal, SolvedCase solved, SolvedState state, ToothWords words, ForceUnit unit, CeilingCheck check)
    {
        EngagementResult? working = state == solved.Engaged && terminal.Width >= WideWidth ? solved.Working : null;
        bool isWide = terminal.Width >= (working is null ? WideWidth : FullWidth);
        (string Heading, bool IsFigure)[] columns =
        [
            (words.Heading, false),
            ($"labial\n{unit.Symbol}", true), ($"occlusal\n{unit.Symbol}", true), ($"mesial\n{unit.Symbol}", true),
            ($"whole\n{unit.Symbol}", true), .. Working(working, unit),
            ($"rotation\n{unit.MomentSymbol}", true), ($"tip\n{unit.MomentSymbol}", true),
            ($"torque\n{unit.MomentSymbol}", true),
        ];
        if (isWide)
            columns = [.. columns, ("wire in\nthe slot", false), ("drawn\nmm", true)];
        Table table = Layout.Table(columns);
        for (int i = 0; i < state.Loads.Length; i++)
        {
            Slot slot = solved.Case.Arrangement.Slots[i];
            SlotLoad load = state.Result.Slots[i];
            double? later = working?.Slots[i].OnTooth.Force.Length;
            Text[] row = [Cell(words.Number(i), check.IsAbove(i)), .. Figures(state.Loads[i], later, i, unit, check)];
            if (isWide)
                row = [.. row, Cell(Contact(slot, load.Contact), false), Cell(Drawn(load.Drawn), false)];
            table.AddRow(row);
        }

        Layout.Write(terminal, table);
    }

    /// <summary>What the signs of the table mean.</summary>
    public static void WriteKey(Terminal terminal, bool anyAbove)
    {
        Layout.Paragraph(terminal, "Force and moment of the wire on the tooth, the moment about the slot. "
            + "+ labial: toward lip or cheek. + occlusal: extrudes. + mesial: toward the midline. "
            + "+ rotation: mesial side turns labially. + tip: crown toward the midline. + torque: crown turns "
            + "labially, root lingually. drawn: wire that came through the slot, + toward the patient's left.",
            style: Layout.Quiet);
        if (anyAbove)
            Layout.Paragraph(terminal, "! above the ceiling of the practice for this tooth.", style: Layout.Warning);
    }

    /// <summary>Contact in plain words.</summary>
    internal static string Contact(Slot slot, ContactState contact) => slot switch
    {
        { IsBonded: false } => "no bracket",
        { Tie.Kind: TieKind.None } => "not tied",
        { Hold: Hold.Clamped } => "clamped",
        { Hold: Hold.Point or Hold.EdgePoints } => "guided",
        _ => contact switch
        {
            ContactState.None => "does not touch",
            ContactState.OneEdge => "one edge",
            _ => "both edges",
        },
    };

    private static string Drawn(double millimetres) =>
        millimetres.ToString("+0.00;−0.00;0.00", CultureInfo.InvariantCulture);

    private static IEnumerable<(string Heading, bool IsFigure)> Working(EngagementResult? working, ForceUnit unit)
    {
        if (working is not null)
            yield return ($"working\n{unit.Symbol}", true);
    }

    private static IEnumerable<Text> Figures(
        ClinicalLoad load, double? working, int slot, ForceUnit unit, CeilingCheck check)
    {
        yield return Force(load.LabialForce, LoadKind.LabiolingualForce);
        yield return Cell(
            Marked(unit.Figure(load.OcclusalForce), Above(LoadKind.ExtrusionForce) || Above(LoadKind.IntrusionForce)),
            Above(LoadKind.ExtrusionForce) || Above(LoadKind.IntrusionForce));
        yield return Force(load.MesialForce, LoadKind.MesiodistalForce);
        yield return Cell(unit.Figure(load.Force) + " ", false);
        if (working is { } force)
            yield return Cell(unit.Figure(force) + " ", false);
        yield return Moment(load.RotationMoment, LoadKind.RotationMoment);
        yield return Moment(load.TipMoment, LoadKind.TipMoment);
        yield return Moment(load.TorqueMoment, LoadKind.TorqueMoment);

        bool Above(LoadKind kind) => check.IsAbove(slot, kind);
        Text Force(double value, LoadKind kind) => Cell(Marked(unit.Figure(value), Above(kind)), Above(kind));
        Text Moment(double value, LoadKind kind) => Cell(Marked(unit.MomentFigure(value), Above(kind)), Above(kind));
    }

    // A blank keeps the figures of a column in line.
    private static string Marked(string figure, bool isAbove) => figure + (isAbove ? "!" : " ");

    private static Text Cell(string text, bool isAbove) => isAbove ? new Text(text, Layout.Warning) : new Text(text);
}
