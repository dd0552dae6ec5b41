using Archwright.Practice.Bench;
using Archwright.Practice.Settings;
using Archwright.Web.Drawing;
using Archwright.Web.Words;

namespace Archwright.Web.Bench;

/// <summary>A wire on the bench with its letter and colour.</summary>
/// <param name="Letter">"A" to "D".</param>
/// <param name="Tone">Its colour, counted from 0.</param>
/// <param name="Sheet">What it did.</param>
public sealed record BenchedWire(string Letter, int Tone, BenchSheet Sheet);

/// <summary>A table of the bench.</summary>
/// <param name="Heads">Heads of its columns.</param>
/// <param name="Rows">Its rows; the first cell names the row.</param>
/// <param name="Caption">What stands in it, with the unit.</param>
public sealed record BenchTable(
    IReadOnlyList<string> Heads, IReadOnlyList<IReadOnlyList<string>> Rows, string Caption);

/// <summary>One test of the bench, ready for the screen.</summary>
/// <param name="Id">For addresses inside the page.</param>
/// <param name="Title">Its name.</param>
/// <param name="SetUp">What is done to the wire.</param>
/// <param name="Chart">Picture; null where a table says it all, or nothing could be computed.</param>
/// <param name="Axes">Words along and up the picture.</param>
/// <param name="Table">The figures.</param>
/// <param name="Words">What it means, sentence by sentence.</param>
/// <param name="Missing">What could not be computed, and why.</param>
public sealed record BenchPanel(
    string Id, string Title, string SetUp, BenchChart? Chart, (string Along, string Up) Axes, BenchTable Table,
    IReadOnlyList<string> Words, IReadOnlyList<string> Missing);

/// <summary>Makes the panels of the bench from what was computed.</summary>
/// <param name="question">What was asked.</param>
/// <param name="unit">How forces are shown.</param>
public sealed class BenchPanels(BenchQuestion question, ShownForce unit)
{
    private readonly BenchWords words = new(unit);

    /// <summary>The panels.</summary>
    /// <param name="wires">The wires that are computed so far.</param>
    public IReadOnlyList<BenchPanel> Of(IReadOnlyList<BenchedWire> wires) =>
        [Bend(wires), Twist(wires), Slide(wires), Stiffness(wires)];

    /// <summary>The whole in a sentence or two.</summary>
    public IReadOnlyList<string> InShort(IReadOnlyList<BenchedWire> wires) => words.InShort(wires);

    private BenchPanel Bend(IReadOnlyList<BenchedWire> wires)
    {
        double[] places =
        [
            .. Enumerable.Range(1, (int)(BenchTests.Top / BenchTests.ReadEvery)).Select(i => i * BenchTests.ReadEvery),
            BenchTests.Top,
        ];
        return Panel(
            "bend", "Bending, there and back",
            $"Three-point bend over {Figures.Plain(BenchTests.Span)} mm to {Figures.Plain(BenchTests.Top)} mm and "
            + $"back, at {question.Temperature} °C; a rectangular wire over its thickness.",
            wires, sheet => sheet.Bend, newtons => Figures.InUnit(newtons, unit),
            ("deflection of the middle [mm]", $"force [{Figures.Unit(unit)}]"),
            new BenchTable(
                [
                    "Deflection", .. wires.Where(wire => wire.Sheet.Bend.IsThere)
                        .SelectMany(wire => new[] { $"{wire.Letter} there", $"{wire.Letter} back" }),
                ],
                [.. places.Select(place => (IReadOnlyList<string>)
                [
                    $"{Figures.Plain(place)} mm", .. wires.Where(wire => wire.Sheet.Bend.IsThere).SelectMany(wire =>
                        new[] { Force(wire.Sheet.Bend.At(place, false)), Force(wire.Sheet.Bend.At(place, true)) }),
                ])],
                $"Force in {Figures.Unit(unit)}"),
            words.Bend(wires));
    }

    private BenchPanel Twist(IReadOnlyList<BenchedWire> wires)
    {
        double[] places = [5, 10, 15, 20, 25, 30];
        BenchedWire[] there = [.. wires.Where(wire => wire.Sheet.Twist.IsThere)];
        return Panel(
            "twist", "Torque, with play",
            $"Between two slots of {Say.Slot(question.Slot)}, {Figures.Plain(BenchTests.Gap)} mm apart; one is turned "
            + $"to {Figures.Plain(BenchTests.MostTwist)}° and back, at {question.Temperature} °C.",
            wires, sheet => sheet.Twist, torque => torque,
            ("turn of one slot against the other [degrees]", "torque [N·mm]"),
            new BenchTable(
                ["Turn", .. there.SelectMany(wire => new[] { $"{wire.Letter} there", $"{wire.Letter} back" })],
                [.. places.Select(place => (IReadOnlyList<string>)
                [
                    $"{Figures.Plain(place)}°", .. there.SelectMany(wire => new[]
                    {
                        Torque(wire.Sheet.Twist.At(place, false)), Torque(wire.Sheet.Twist.At(place, true)),
                    }),
                ])],
                "Torque in N·mm"),
            BenchWords.Twist(wires));
    }

    private BenchPanel Slide(IReadOnlyList<BenchedWire> wires)
    {
        double[] places = [0, 2, 4, 6, 8, 10];
        BenchedWire[] there = [.. wires.Where(wire => wire.Sheet.Edges.IsThere)];
        return Panel(
            "slide", "Resistance to sliding",
            $"Through a bracket {Figures.Plain(BenchTests.BracketInches * 25.4)} mm wide with a slot of "
            + $"{Say.Slot(question.Slot)}, tipped against the wire, {Figures.Plain(BenchTests.Neighbour)} mm to the "
            + $"neighbours; the tie presses with {Figures.Force(question.Tie, unit)}; "
            + (question.IsWet ? "in saliva." : "dry."),
            wires, sheet => Resistance(sheet), newtons => Figures.InUnit(newtons, unit),
            ("tip of the bracket [degrees]", $"resistance [{Figures.Unit(unit)}]"),
            new BenchTable(
                ["Tip", .. there.Select(wire => wire.Letter)],
                [.. places.Select(place => (IReadOnlyList<string>)
                [
                    $"{Figures.Plain(place)}°",
                    .. there.Select(wire => Force(Resistance(wire.Sheet).At(place, false))),
                ])],
                $"Resistance in {Figures.Unit(unit)}"),
            words.Slide([.. there.Select(wire => (wire, Resistance(wire.Sheet)))]));
    }

    private static BenchPanel Stiffness(IReadOnlyList<BenchedWire> wires) => new(
        "stiffness", "Stiffness and range",
        $"Stiffness at the start of the bend, a round steel wire of 0.004 in = 1. Range: deflection of a simple beam "
        + $"of {Figures.Plain(BenchTests.Span)} mm at which it leaves its first, elastic part.",
        null, ("", ""),
        new BenchTable(
            ["Wire", "Up and down", "In and out", "Twist", "Range", "Stays bent", "Play"],
            [.. wires.Select(wire => (IReadOnlyList<string>)
            [
                wire.Letter,
                Number(wire.Sheet.Stiffness.RelativeUpDown), Number(wire.Sheet.Stiffness.RelativeInOut),
                Number(wire.Sheet.Stiffness.RelativeTorsion),
                Figures.Plain(Math.Round(wire.Sheet.Stiffness.ElasticRange(BenchTests.Span), 2)),
                wire.Sheet.Set is { } set ? Figures.Plain(Math.Round(set, 2)) : "not computed",
                BenchWords.Play(wire.Sheet),
            ])],
            "Stiffness as a number, range and set in mm"),
        BenchWords.Stiffness(wires), []);

    private BenchCurve Resistance(BenchSheet sheet) => sheet.Edges with
    {
        There = Practice.Values.Listing<BenchPoint>.Of(sheet.Edges.There.Select(point => point with
        {
            Y = sheet.Resistance(point.Y, question.Tie, question.IsWet),
        })),
    };

    private static BenchPanel Panel(
        string id, string title, string setUp, IReadOnlyList<BenchedWire> wires, Func<BenchSheet, BenchCurve> curve,
        Func<double, double> shown, (string, string) axes, BenchTable table, IReadOnlyList<string> said)
    {
        (BenchedWire Wire, BenchCurve Curve)[] all = [.. wires.Select(wire => (wire, curve(wire.Sheet)))];
        return new BenchPanel(
            id, title, setUp,
            all.Any(one => one.Curve.IsThere)
                ? BenchChart.Draw([.. all.Select(one => (one.Wire.Letter, one.Wire.Tone, one.Curve))], shown)
                : null,
            axes, table, said,
            [.. all.Where(one => !one.Curve.IsThere).Select(one => $"{one.Wire.Letter}: {one.Curve.WhyNot}")]);
    }

    private string Force(double? newtons) => newtons is { } value ? Figures.BareForce(value, unit) : "–";

    private static string Torque(double? value) => value is { } one ? Figures.BareMoment(one) : "–";

    private static string Number(double value) => value < 10
        ? value.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture)
        : value.ToString("0", System.Globalization.CultureInfo.InvariantCulture);
}
