using Archwright.Mechanics.Numerics;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Movement;

/// <summary>How one tooth answers a load: how hard it is stressed, which way it goes, how fast.</summary>
/// <remarks>
/// With force F and moment M at the centre of resistance in the axes of the slot, T the arms of turning and σ² the
/// squares of the support:
/// <code>
///     stress     s = √(F² + Σ (M_k/T_k)²) / area,
///     direction  d = (F, M_k/σ_k²): the tooth turns about the point that its elastic support turns about,
///     speed      |d|_T = √(F² + Σ (T_k M_k/σ_k²)²),   twist = rate · v(s) · d / |d|_T.
/// </code>
/// A translated tooth moves at v(F/area) exactly; the fastest point of a tipped tooth's crown moves at v(s). So a
/// force through the centre of resistance translates (Kusy and Tulloch 1986), and a·b = σ² holds (Nägerl et al.
/// 1991). The factor between load and twist is positive: movement always takes energy from the wire.
/// </remarks>
internal static class ToothAnswer
{
    private const double KilopascalsPerMegapascal = 1000;
    private const double LeastLoad = 1e-12;

    /// <summary>Mean stress that counts [kPa].</summary>
    public static double Stress(ToothSupport support, Six load)
    {
        Vector3 arms = support.TurningArms;
        double turning = Square(load.Angular.X / arms.X) + Square(load.Angular.Y / arms.Y)
            + Square(load.Angular.Z / arms.Z);
        double force = Math.Sqrt(Vector3.Dot(load.Linear, load.Linear) + turning);
        return KilopascalsPerMegapascal * force / support.StressedArea;
    }

    /// <summary>Twist per day over direction d: multiply the load's components by it and by 1 or 1/σ².</summary>
    /// <param name="support">The tooth.</param>
    /// <param name="load">At its centre of resistance.</param>
    /// <param name="rate">Factor on the law.</param>
    /// <returns>[mm/(day·N)]</returns>
    public static double Mobility(ToothSupport support, Six load, double rate)
    {
        double size = Size(support, Direction(support, load));
        if (size > LeastLoad)
            return rate * MovementLaw.Speed(Stress(support, load)) / size;

        return rate * MovementLaw.LeastSpeed / MovementLaw.LeastStress * KilopascalsPerMegapascal
            / support.StressedArea;
    }

    /// <summary>Shift and turn a day [mm/day, rad/day].</summary>
    public static Six Twist(ToothSupport support, Six load, double rate) =>
        Direction(support, load) * Mobility(support, load, rate);

    /// <summary>What the tooth gives way at once under a load, over that of a ligament without knee: multiply the
    /// support's compliances by it.</summary>
    public static double ShareGiven(ToothSupport support, Six load)
    {
        Vector3 shift = support.ShiftCompliance;
        Vector3 turn = support.TurnCompliance;
        Vector3 squares = support.TurningSquares;
        double sum = Square(shift.X * load.Linear.X) + Square(shift.Y * load.Linear.Y)
            + Square(shift.Z * load.Linear.Z)
            + squares.X * Square(turn.X * load.Angular.X) + squares.Y * Square(turn.Y * load.Angular.Y)
            + squares.Z * Square(turn.Z * load.Angular.Z);
        return Ligament.ShareGiven(Math.Sqrt(sum));
    }

    /// <summary>Shift and turn at once under a load, beside all remodelling [mm, rad].</summary>
    public static Six Give(ToothSupport support, Six load)
    {
        double share = ShareGiven(support, load);
        Vector3 shift = support.ShiftCompliance;
        Vector3 turn = support.TurnCompliance;
        return new Six(
            new Vector3(shift.X * load.Linear.X, shift.Y * load.Linear.Y, shift.Z * load.Linear.Z) * share,
            new Vector3(turn.X * load.Angular.X, turn.Y * load.Angular.Y, turn.Z * load.Angular.Z) * share);
    }

    /// <summary>Largest movement of the crown that a small shift and turn means [mm].</summary>
    public static double Size(ToothSupport support, Six motion)
    {
        Vector3 arms = support.TurningArms;
        return Math.Sqrt(Vector3.Dot(motion.Linear, motion.Linear) + Square(arms.X * motion.Angular.X)
            + Square(arms.Y * motion.Angular.Y) + Square(arms.Z * motion.Angular.Z));
    }

    /// <summary>Way the tooth goes: force, and moment over σ².</summary>
    public static Six Direction(ToothSupport support, Six load) => new(
        load.Linear,
        new Vector3(
            load.Angular.X / support.TurningSquares.X,
            load.Angular.Y / support.TurningSquares.Y,
            load.Angular.Z / support.TurningSquares.Z));

    private static double Square(double x) => x * x;
}
