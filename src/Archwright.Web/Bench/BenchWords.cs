using System.Globalization;
using Archwright.Mechanics.Alloys;
using Archwright.Practice.Bench;
using Archwright.Practice.Settings;
using Archwright.Web.Words;

namespace Archwright.Web.Bench;

/// <summary>What the figures of the bench mean, in sentences. Every sentence is made from the figures.</summary>
/// <param name="unit">How forces are shown.</param>
public sealed class BenchWords(ShownForce unit)
{
    // A tooth that is nearly in line: where a wire that was bent far does its last work [mm].
    private const double NearlyThere = 1;

    // Tip at which sliding is put into figures [degrees].
    private const double ATip = 6;

    private const double NextToNothing = 0.005;

    /// <summary>The whole in a sentence or two.</summary>
    public IReadOnlyList<string> InShort(IReadOnlyList<BenchedWire> wires)
    {
        (BenchedWire Wire, double Force)[] back = BackAtLast(wires);
        if (back.Length < BenchQuestion.FewestWires)
            return [];

        (BenchedWire Wire, double Force) soft = back.MinBy(one => one.Force);
        (BenchedWire Wire, double Force) hard = back.MaxBy(one => one.Force);
        if (soft.Force < NextToNothing)
        {
            BenchedWire[] spent = [.. back.Where(one => one.Force < NextToNothing).Select(one => one.Wire)];
            return hard.Force < NextToNothing
                ? [$"Bent this far, none of them pushes any more {Figures.Plain(NearlyThere)} mm before the end."]
                : [$"Bent this far, {Letters(spent)} no longer {(spent.Length > 1 ? "push" : "pushes")} "
                    + $"{Figures.Plain(NearlyThere)} mm before the end; {hard.Wire.Letter} still does, with "
                    + $"{Figures.Force(hard.Force, unit)}."];
        }

        return hard.Force / soft.Force < 1.05
            ? [$"Coming back, {Figures.Plain(NearlyThere)} mm before the end, all push about alike."]
            : [$"Coming back, {Figures.Plain(NearlyThere)} mm before the end, {hard.Wire.Letter} pushes "
                + $"{Times(hard.Force / soft.Force)} as hard as {soft.Wire.Letter}: "
                + $"{Figures.Force(hard.Force, unit)} against {Figures.Force(soft.Force, unit)}."];
    }

    /// <summary>Of the bend.</summary>
    public IReadOnlyList<string> Bend(IReadOnlyList<BenchedWire> wires) =>
    [
        .. wires.Where(wire => wire.Sheet.Bend.IsThere).Select(BentOne),
        .. wires.Select(Cold).OfType<string>(),
    ];

    /// <summary>Of the twist.</summary>
    public static IReadOnlyList<string> Twist(IReadOnlyList<BenchedWire> wires)
    {
        List<string> said = [.. wires.Where(wire => wire.Sheet.Twist.IsThere).Select(TwistedOne)];
        (BenchedWire Wire, double Torque)[] torques =
        [
            .. wires.Where(wire => wire.Sheet.Twist.IsThere)
                .Select(wire => (wire, wire.Sheet.Twist.There[^1].Y)).Where(one => one.Y > 0.05),
        ];
        if (torques.Length > 1)
        {
            (BenchedWire strong, double most) = torques.MaxBy(one => one.Torque);
            (BenchedWire weak, double least) = torques.MinBy(one => one.Torque);
            if (most / least > 1.05)
            {
                said.Add($"At {Figures.Plain(BenchTests.MostTwist)}° {strong.Letter} turns {Times(most / least)} as "
                    + $"hard as {weak.Letter}.");
            }
        }

        return said;
    }

    /// <summary>Of sliding.</summary>
    /// <param name="curves">Wires and their resistance against the tip [degrees, N].</param>
    public IReadOnlyList<string> Slide(IReadOnlyList<(BenchedWire Wire, BenchCurve Resistance)> curves)
    {
        List<string> said =
        [
            .. curves.Select(one => $"{one.Wire.Letter}: {Figures.Force(one.Resistance.There[0].Y, unit)} in line, "
                + $"{Figures.Force(one.Resistance.At(ATip, back: false) ?? double.NaN, unit)} tipped by "
                + $"{Figures.Plain(ATip)}°."),
        ];
        if (curves.Count < BenchQuestion.FewestWires)
            return said;

        string inLine = Best(curves, 0);
        string tipped = Best(curves, ATip);
        said.Add(inLine == tipped
            ? $"{inLine} slides best, in line and tipped."
            : $"In line {inLine} slides best: there only the tie presses, and the lower coefficient wins. Tipped by "
                + $"{Figures.Plain(ATip)}° {tipped} does: there the wire's own bending presses the edges.");
        return said;
    }

    /// <summary>Of stiffness and range.</summary>
    public static IReadOnlyList<string> Stiffness(IReadOnlyList<BenchedWire> wires)
    {
        if (wires.Count < BenchQuestion.FewestWires)
            return [];

        BenchedWire stiff = wires.MaxBy(wire => wire.Sheet.Stiffness.RelativeUpDown)!; // two at least: see above
        BenchedWire soft = wires.MinBy(wire => wire.Sheet.Stiffness.RelativeUpDown)!;
        BenchedWire far = wires.MaxBy(wire => wire.Sheet.Stiffness.ElasticRange())!;
        double ratio = stiff.Sheet.Stiffness.RelativeUpDown / soft.Sheet.Stiffness.RelativeUpDown;
        List<string> said =
        [
            ratio < 1.05
                ? "Up and down all are about as stiff."
                : $"Up and down {stiff.Letter} is {Times(ratio)} as stiff as {soft.Letter}. {far.Letter} is bent "
                    + "furthest before it leaves its elastic part.",
        ];
        BenchedWire[] transforming = [.. wires.Where(wire => wire.Sheet.Wire.InitialModulusOnly)];
        if (transforming.Length > 0)
        {
            said.Add($"Range of {Letters(transforming)}: up to the plateau alone. Beyond it the wire grows softer and "
                + "still springs back; the bend above shows it.");
        }

        return said;
    }

    /// <summary>Play in a word.</summary>
    public static string Play(BenchSheet sheet) => sheet switch
    {
        { Wire.Section.IsRound: true } => "turns freely",
        { Play: null } => "does not go in",
        { Play: double.PositiveInfinity } => "turns freely",
        { Play: { } play } => $"{Tenths(play)}° each way",
    };

    private string BentOne(BenchedWire wire)
    {
        BenchSheet sheet = wire.Sheet;
        double back = sheet.Bend.At(NearlyThere, back: true) ?? 0;
        return $"{wire.Letter}: {Figures.Force(sheet.Bend.There[^1].Y, unit)} at {Figures.Plain(BenchTests.Top)} mm; "
            + $"on the way back at {Figures.Plain(NearlyThere)} mm "
            + (back < NextToNothing ? "it no longer pushes" : Figures.Force(back, unit)) + ". "
            + (sheet.Set is { } set && set >= NextToNothing
                ? $"Let go, it stays bent by {Figures.Hundredths(set)}."
                : "Let go, it is straight again.");
    }

    private static string TwistedOne(BenchedWire wire)
    {
        BenchSheet sheet = wire.Sheet;
        if (sheet.Wire.Section.IsRound)
            return $"{wire.Letter} is round: it turns in its slots and never torques.";
        if (sheet.Play is not { } play || double.IsInfinity(play))
            return $"{wire.Letter} turns freely all round in these slots and never torques.";

        return $"{wire.Letter}: play of one slot {Tenths(play)}° each way, so between two slots nothing happens up to "
            + $"{Tenths(2 * play)}°; at {Figures.Plain(BenchTests.MostTwist)}° "
            + $"{Figures.Moment(sheet.Twist.There[^1].Y)}.";
    }

    private static string? Cold(BenchedWire wire) =>
        wire.Sheet.Wire.Alloy.WholeLaw is Superelastic alloy && wire.Sheet.Temperature < alloy.ColdestTemperature
            ? $"{wire.Letter}: below {alloy.ColdestTemperature.ToString("0", CultureInfo.InvariantCulture)} °C the law "
                + "of this alloy has no meaning; colder, it is computed at that temperature."
            : null;

    private static (BenchedWire Wire, double Force)[] BackAtLast(IReadOnlyList<BenchedWire> wires) =>
    [
        .. wires.Select(wire => (wire, Force: wire.Sheet.Bend.At(NearlyThere, back: true)))
            .Where(one => one.Force is not null).Select(one => (one.wire, one.Force!.Value)), // not null: see above
    ];

    private static string Best(IReadOnlyList<(BenchedWire Wire, BenchCurve Resistance)> curves, double tip) =>
        curves.MinBy(one => one.Resistance.At(tip, back: false) ?? double.PositiveInfinity).Wire.Letter;

    // "A", "A and B", "A, B and C".
    private static string Letters(IReadOnlyList<BenchedWire> wires) => wires.Count < 2
        ? wires[0].Letter
        : $"{string.Join(", ", wires.SkipLast(1).Select(wire => wire.Letter))} and {wires[^1].Letter}";

    private static string Times(double ratio) => ratio < 9.95
        ? $"{Tenths(ratio)} times"
        : $"{ratio.ToString("0", CultureInfo.InvariantCulture)} times";

    private static string Tenths(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);
}
