using System.Collections.Immutable;

namespace Archwright.Mechanics.Bench;

/// <summary>One step of a bend test: the indenter goes to a deflection, or the temperature changes.</summary>
public sealed record BendStep
{
    private BendStep()
    {
    }

    /// <summary>Where the indenter goes [mm]; null for a change of temperature.</summary>
    public double? Deflection { get; private init; }

    /// <summary>Deflections to be read on the way, in any order [mm].</summary>
    public ImmutableArray<double> Read { get; private init; } = [];

    /// <summary>New temperature [°C]; null where the indenter moves.</summary>
    public double? Temperature { get; private init; }

    /// <summary>The indenter goes to a deflection.</summary>
    /// <param name="deflection">[mm]</param>
    /// <param name="read">Deflections to be read on the way, its end among them if it is to be read [mm].</param>
    public static BendStep To(double deflection, params ReadOnlySpan<double> read) =>
        new() { Deflection = deflection, Read = [.. read] };

    /// <summary>To a deflection and back to nothing, read at even steps and at the top.</summary>
    /// <param name="top">[mm]</param>
    /// <param name="readEvery">From one reading to the next [mm].</param>
    public static ImmutableArray<BendStep> ThereAndBack(double top, double readEvery)
    {
        double[] read =
        [
            .. Enumerable.Range(1, (int)Math.Ceiling(top / readEvery)).Select(i => i * readEvery).Where(d => d < top),
            top,
        ];
        return [To(top, read), To(0, [.. read[..^1], 0])];
    }

    /// <summary>The temperature changes while the indenter stands; it is read afterwards.</summary>
    /// <param name="temperature">[°C]</param>
    public static BendStep Warm(double temperature) => new() { Temperature = temperature };

    /// <summary>Places on the way from a deflection, in order: what is to be read, and the end.</summary>
    internal IEnumerable<double> Stops(double from)
    {
        double to = Deflection!.Value;
        bool isDown = to < from;
        IEnumerable<double> between = Read.Where(d => isDown ? d < from && d > to : d > from && d < to).Distinct();
        foreach (double stop in isDown ? between.OrderDescending() : between.Order())
            yield return stop;

        yield return to;
    }

    internal bool Reads(double stop) => Read.Contains(stop);
}

/// <summary>A point of a bending curve.</summary>
/// <param name="Deflection">Of the indenter [mm].</param>
/// <param name="Temperature">[°C]</param>
/// <param name="Force">Of the indenter on the wire; nil where the wire has left it [N].</param>
public readonly record struct BendPoint(double Deflection, double Temperature, double Force);

/// <summary>What a bend test gave.</summary>
/// <param name="Readings">What was asked for, in the order of the path.</param>
/// <param name="Curve">Every computed point, in order: for a plot.</param>
/// <param name="Top">Largest deflection [mm].</param>
/// <param name="ForceAtTop">Force when it was first reached [N].</param>
/// <param name="Residual">Deflection that is left when the wire is let go after the path, at its last temperature [mm].
/// </param>
public sealed record BendResult(
    ImmutableArray<BendPoint> Readings,
    ImmutableArray<BendPoint> Curve,
    double Top,
    double ForceAtTop,
    double Residual);
