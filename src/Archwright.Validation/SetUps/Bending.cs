using System.Collections.Concurrent;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Tables;
using Archwright.Mechanics.Bench;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>Three-point bending after ISO 15841: span 10 mm, 36 °C, to 3.1 mm and back, unless the set-up says
/// otherwise. Keys: <c>wire</c>; <c>top</c>, <c>at</c> [mm]; <c>temperature</c> [°C].</summary>
internal static class Bending
{
    private const double Span = 10;
    private const double Mouth = 36;
    private const double Top = 3.1;

    // The same bend is asked for by several checks.
    private static readonly ConcurrentDictionary<Asked, BendResult> Done = new();

    private static readonly double[] Stops = [.. Enumerable.Range(1, 44).Select(i => i / 10.0)];

    /// <summary>Force at a deflection; <c>branch</c> = unloading (when left out), loading or top [N].</summary>
    public static double Force(SetUp given) => Force(given, Asked.Of(given));

    /// <summary>Force of <c>wire</c> over that of <c>other</c>; the other may have its own <c>other_temperature</c> and
    /// <c>other_top</c>, and <c>other_law</c> = elastic takes it as if it never yielded.</summary>
    public static double ForceRatio(SetUp given)
    {
        Asked asked = Asked.Of(given);
        var other = new Asked(
            given.Has("other") ? given.Wire("other").Id : asked.Wire,
            given.Number("other_temperature", asked.Temperature), given.Number("other_top", asked.Top),
            given.Has("other_law") && given.Text("other_law") == "elastic");
        return Force(given, asked) / Force(given, other);
    }

    /// <summary>Fall of the unloading force from <c>from</c> to <c>to</c> mm, for each mm [N/mm].</summary>
    public static double Slope(SetUp given)
    {
        BendResult bend = Run(Asked.Of(given));
        double from = given.Number("from"), to = given.Number("to");
        return (OnUnloading(bend, from) - OnUnloading(bend, to)) / (from - to);
    }

    /// <summary>Force after a step in temperature over that before it, at one deflection. The wire is bent to
    /// <c>top</c> and back to <c>at</c> (no way back where both are alike), taken to <c>visit</c> °C and back;
    /// <c>of</c> = during or after.</summary>
    public static double AfterTemperature(SetUp given)
    {
        double top = given.Number("top"), at = given.Number("at"), mouth = Asked.Of(given).Temperature;
        BendResult bend = BendTest.Run(
            given.Wire().WholeWire, Span, mouth,
            [BendStep.To(top, top), BendStep.To(at, at), BendStep.Warm(given.Number("visit")), BendStep.Warm(mouth)]);
        double before = bend.Readings[^3].Force;
        return given.Text("of") switch
        {
            "during" => bend.Readings[^2].Force / before,
            "after" => bend.Readings[^1].Force / before,
            string other => throw new TableException($"A visit is read during or after, not '{other}'."),
        };
    }

    /// <summary>The whole curve, up and down, for pictures.</summary>
    public static BendResult Run(string wire, double temperature = Mouth, double top = Top) =>
        Run(new Asked(wire, temperature, top, IsElastic: false));

    private static BendResult Run(Asked asked) => Done.GetOrAdd(asked, one => BendTest.Run(
        one.IsElastic ? one.Catalogued.Wire : one.Catalogued.WholeWire, Span, one.Temperature,
        [
            BendStep.To(one.Top, [.. Stops.Where(stop => stop <= one.Top)]),
            BendStep.To(0, [.. Stops.Where(stop => stop < one.Top)]),
        ]));

    private static double Force(SetUp given, Asked asked)
    {
        BendResult bend = Run(asked);
        return (given.Has("branch") ? given.Text("branch") : "unloading") switch
        {
            "top" => bend.ForceAtTop,
            "loading" => OnLoading(bend, given.Number("at")),
            "unloading" => OnUnloading(bend, given.Number("at")),
            string other => throw new TableException($"A bend has no branch '{other}'."),
        };
    }

    private static double OnLoading(BendResult bend, double at) =>
        bend.Readings.First(point => Math.Abs(point.Deflection - at) < 1e-9).Force;

    private static double OnUnloading(BendResult bend, double at) =>
        bend.Readings.Last(point => Math.Abs(point.Deflection - at) < 1e-9).Force;

    private readonly record struct Asked(string Wire, double Temperature, double Top, bool IsElastic)
    {
        public CatalogueWire Catalogued => new SetUp("bend", "wire=" + Wire).Wire();

        public static Asked Of(SetUp given) => new(
            given.Wire().Id, given.Number("temperature", Mouth), given.Number("top", Bending.Top), IsElastic: false);
    }
}
