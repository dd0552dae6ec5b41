using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>The geometries of two brackets on a straight wire, by <c>ratio</c> = θ_A/θ_B of their angles.</summary>
/// <remarks>Two slots that grip the wire. The wire bent between them is shorter by L(2θ_A² − θ_Aθ_B + 2θ_B²)/30, and
/// the second slot comes nearer by that, so that sliding, which the ratios presuppose, has nothing left to do.
/// </remarks>
internal static class TwoBrackets
{
    private const double Span = 7;
    private const double Angle = 1e-3;

    private static readonly Wire Wire = Bench.Round(200_000, 0.4064);

    /// <summary>M_A/M_B.</summary>
    public static double MomentRatio(SetUp given) => Moments(given.Number("ratio"));

    /// <summary>M_A/M_B, for pictures too.</summary>
    public static double Moments(double ratio)
    {
        (Wrench a, Wrench b) = Loads(ratio);
        return a.Moment.Z / b.Moment.Z;
    }

    /// <summary>Force, that at equal angles = 1.</summary>
    public static double ForceShare(SetUp given)
    {
        (_, Wrench b) = Loads(given.Number("ratio"));
        double equal = 12 * Wire.Alloy.Young * Wire.Section.BendingOverThickness * Angle / (Span * Span);
        return Math.Abs(b.Force.Y) / equal;
    }

    private static (Wrench A, Wrench B) Loads(double ratio)
    {
        double a = ratio * Angle;
        double nearer = Span * (2 * a * a - a * Angle + 2 * Angle * Angle) / 30;
        EngagementResult result = Bench.Engage(
            Wire, Bench.Slot(0, Hold.Clamped, turn: a), Bench.Slot(Span, Hold.Clamped, turn: Angle, along: -nearer));
        return (result.Slots[0].OnTooth, result.Slots[1].OnTooth);
    }
}
