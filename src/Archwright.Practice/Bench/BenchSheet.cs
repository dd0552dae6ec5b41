using Archwright.Dentition.Catalogue;
using Archwright.Mechanics.Bench;
using Archwright.Practice.Values;

namespace Archwright.Practice.Bench;

/// <summary>What one wire did on the bench at one temperature. Each test stands by itself: where one could not be
/// computed, its sentence says why, and the others hold.</summary>
public sealed record BenchSheet
{
    /// <summary>The wire.</summary>
    public required CatalogueWire Wire { get; init; }

    /// <summary>Temperature of the wire [°C].</summary>
    public required double Temperature { get; init; }

    /// <summary>Bent in three points: deflection of the middle [mm] and force [N].</summary>
    public required BenchCurve Bend { get; init; }

    /// <summary>What stays bent when the wire is let go [mm]; null where the bend could not be computed.</summary>
    public required double? Set { get; init; }

    /// <summary>Twisted between two slots: turn of one against the other [degrees] and torque [N·mm].</summary>
    public required BenchCurve Twist { get; init; }

    /// <summary>Play of one slot each way [degrees]; positive infinity for a wire that never locks, null for one that
    /// does not go in.</summary>
    public required double? Play { get; init; }

    /// <summary>In a tipped bracket: tip [degrees] and sum of the forces at its edges [N].</summary>
    public required BenchCurve Edges { get; init; }

    /// <summary>Stiffness, and range by the simple beam.</summary>
    public required WireStiffness Stiffness { get; init; }

    /// <summary>Resistance to sliding at a tip: coefficient × (tie + edges) [N].</summary>
    /// <param name="edges">Sum of the forces at the edges [N].</param>
    /// <param name="tie">Force with which the tie presses [N].</param>
    /// <param name="wet">In saliva, or dry.</param>
    /// <remarks>The formula and what it leaves out: <see cref="SlidingTest"/>.</remarks>
    public double Resistance(double edges, double tie, bool wet) =>
        (wet ? Wire.Alloy.FrictionWet.Value : Wire.Alloy.FrictionDry.Value) * (tie + edges);
}

/// <summary>A point of a curve.</summary>
/// <param name="X">What was done to the wire.</param>
/// <param name="Y">What it answered.</param>
public readonly record struct BenchPoint(double X, double Y);

/// <summary>A curve there and, where the wire was taken back, back again.</summary>
/// <param name="There">From nothing to the most.</param>
/// <param name="Back">From the most to nothing; empty where nothing was taken back.</param>
/// <param name="WhyNot">Why there is no curve, in a sentence; empty where there is one.</param>
public sealed record BenchCurve(Listing<BenchPoint> There, Listing<BenchPoint> Back, string WhyNot = "")
{
    /// <summary>No curve, and why.</summary>
    public static BenchCurve Not(string why) => new(Listing<BenchPoint>.Empty, Listing<BenchPoint>.Empty, why);

    /// <summary>True where there is a curve.</summary>
    public bool IsThere => There.Count > 0;

    /// <summary>The answer at a place that was computed; null where none was.</summary>
    /// <param name="x">The place.</param>
    /// <param name="back">On the way back, or there.</param>
    public double? At(double x, bool back)
    {
        foreach (BenchPoint point in back ? Back : There)
        {
            if (Math.Abs(point.X - x) < 1e-9)
                return point.Y;
        }

        return null;
    }
}
