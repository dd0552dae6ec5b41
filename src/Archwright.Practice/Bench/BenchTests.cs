using System.Collections.Immutable;
using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Bench;
using Archwright.Practice.Values;

namespace Archwright.Practice.Bench;

/// <summary>Takes a wire through every test of the bench, with its whole law: it yields or transforms.</summary>
public static class BenchTests
{
    /// <summary>Distance of the knife edges [mm], and how far the middle is bent [mm]: those of ISO 15841 (from
    /// memory).</summary>
    public const double Span = 10, Top = 3.1;

    /// <summary>Deflections that tables show are this far apart [mm].</summary>
    public const double ReadEvery = 0.5;

    /// <summary>Free wire between the two slots of the twist [mm]. Common practice, no source.</summary>
    public const double Gap = 5;

    /// <summary>Largest turn of one slot against the other, and from one to the next [degrees].</summary>
    public const double MostTwist = 30, TwistEvery = 2.5;

    /// <summary>Largest tip of the bracket, and from one to the next [degrees].</summary>
    public const double MostTip = 10, TipEvery = 1;

    /// <summary>Width of the bracket that slides [in] and wire from its edges to the neighbours [mm]: the set-up of
    /// docs/theory/sliding.md.</summary>
    public const double BracketInches = 0.140, Neighbour = 8;

    /// <summary>Coldest and warmest that can be asked for [°C]: ice in the mouth, and more than a hot drink.</summary>
    public const int Coldest = 0, Warmest = 60;

    // Deep enough for every wire of the catalogue [in].
    private const double DepthInches = 0.030;

    /// <summary>Runs all tests.</summary>
    /// <param name="wire">The wire.</param>
    /// <param name="temperature">Of the wire [°C].</param>
    /// <param name="slotCode">"018" or "022".</param>
    /// <param name="cancellation">Gives up between two tests.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is out of range, or there is no such
    /// slot.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static BenchSheet Run(
        CatalogueWire wire, double temperature, string slotCode, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(wire);
        ArgumentOutOfRangeException.ThrowIfLessThan(temperature, Coldest);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(temperature, Warmest);
        double slot = SlotHeight(slotCode);
        double? set = null;
        BenchCurve bend = Tried(() => Bent(wire, temperature, out set), cancellation);
        bool goesIn = wire.Section.Thickness <= slot;
        string tooThick = $"It does not go into the slot: it is {Mm(wire.Section.Thickness)} mm thick, the slot "
            + $"{Mm(slot)} mm high.";
        return new BenchSheet
        {
            Wire = wire,
            Temperature = temperature,
            Bend = bend,
            Set = set,
            Twist = goesIn ? Tried(() => Twisted(wire, temperature, slot), cancellation) : BenchCurve.Not(tooThick),
            Play = goesIn ? Angle.ToDegrees(wire.Section.TorquePlay(slot)) : null,
            Edges = goesIn
                ? Tried(() => Tipped(wire, temperature, slot, cancellation), cancellation)
                : BenchCurve.Not(tooThick),
            Stiffness = WireStiffness.Of(wire),
        };
    }

    /// <summary>Bends a wire alone, as <c>archwright bend</c> does.</summary>
    /// <param name="wire">The wire.</param>
    /// <param name="temperature">[°C]</param>
    /// <param name="set">What stays bent [mm]; null where it could not be computed.</param>
    public static BenchCurve Bend(CatalogueWire wire, double temperature, out double? set)
    {
        double? left = null;
        BenchCurve curve = Tried(() => Bent(wire, temperature, out left), default);
        set = left;
        return curve;
    }

    /// <summary>Height of a nominal slot [mm].</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such slot.</exception>
    public static double SlotHeight(string code) => code switch
    {
        "018" => WireStiffness.Slot018,
        "022" => WireStiffness.Slot022,
        _ => throw new ArgumentOutOfRangeException(nameof(code), code, "A slot is 018 or 022."),
    };

    private static BenchCurve Bent(CatalogueWire wire, double temperature, out double? set)
    {
        BendResult result = BendTest.Run(
            wire.WholeWire, Span, temperature, BendStep.ThereAndBack(Top, ReadEvery));
        int top = 0;
        while (result.Curve[top].Deflection < result.Top - 1e-9)
            top++;
        set = result.Residual;
        return new BenchCurve(
            Points(result.Curve[..(top + 1)].Select(point => (point.Deflection, point.Force))),
            Points(result.Curve[top..].Select(point => (point.Deflection, point.Force))));
    }

    private static BenchCurve Twisted(CatalogueWire wire, double temperature, double slot)
    {
        int steps = (int)Math.Round(MostTwist / TwistEvery);
        double[] degrees =
        [
            .. Enumerable.Range(0, steps + 1).Select(i => i * TwistEvery),
            .. Enumerable.Range(1, steps).Select(i => MostTwist - i * TwistEvery),
        ];
        double[] torques = TwistTest.Run(
            wire.WholeWire, slot, DepthInches * Millimetres.PerInch, Gap,
            degrees.Select(Angle.FromDegrees).ToArray(), temperature);
        (double, double)[] points = [.. degrees.Zip(torques)];
        return new BenchCurve(Points(points[..(steps + 1)]), Points(points[steps..]));
    }

    private static BenchCurve Tipped(
        CatalogueWire wire, double temperature, double slot, CancellationToken cancellation)
    {
        var test = new SlidingTest
        {
            Wire = wire.WholeWire,
            SlotHeight = slot,
            BracketWidth = BracketInches * Millimetres.PerInch,
            Span = Neighbour,
            Temperature = temperature,
        };
        var points = ImmutableArray.CreateBuilder<BenchPoint>();
        for (double tip = 0; tip <= MostTip + 1e-9; tip += TipEvery)
        {
            cancellation.ThrowIfCancellationRequested();
            points.Add(new BenchPoint(tip, test.EdgeForces(Angle.FromDegrees(tip))));
        }

        return new BenchCurve(Listing<BenchPoint>.Of(points), Listing<BenchPoint>.Empty);
    }

    // A test that finds no equilibrium, or cannot be set up for this wire, is an ordinary answer.
    private static BenchCurve Tried(Func<BenchCurve> test, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        try
        {
            return test();
        }
        catch (Exception cannot) when (cannot is InvalidOperationException or ArgumentException)
        {
            return BenchCurve.Not("This could not be computed: " + cannot.Message.Split('\n')[0]);
        }
    }

    private static Listing<BenchPoint> Points(IEnumerable<(double X, double Y)> points) =>
        Listing<BenchPoint>.Of(points.Select(point => new BenchPoint(point.X, point.Y)));

    private static string Mm(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);
}
