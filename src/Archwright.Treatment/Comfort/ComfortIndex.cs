using Archwright.Treatment.Decisions;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Comfort;

/// <summary>How a wire may feel, as one figure from 0 to 10 that rises with the forces on engagement.</summary>
/// <remarks>
/// With F the sum of the forces on all teeth when the wire goes in and H that of the policy,
/// <code>
///     index = 10 F / (F + H).
/// </code>
/// The shape is ours: trials show that more force hurts more at a day (Luppanapornlarp et al., Eur J Orthod
/// 2010;32:596–601: 150 against 50 gf), and that a step of one size hardly matters (Erdinç and Dinçer, Eur J Orthod
/// 2004;26:79–85), so it rises and levels off. It compares wires; it is no measurement of pain.
/// </remarks>
public static class ComfortIndex
{
    /// <summary>Top of the scale.</summary>
    public const double Worst = 10;

    /// <summary>The index of a wire when it goes, or went, in.</summary>
    public static double Of(WireFigures wire, VisitPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(wire);
        ArgumentNullException.ThrowIfNull(policy);
        return Of(wire.FittingForce, policy);
    }

    /// <summary>The index of a sum of forces.</summary>
    /// <param name="force">On all teeth together [N].</param>
    /// <param name="policy">Whose middle force is taken.</param>
    public static double Of(double force, VisitPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(policy);
        return Worst * force / (force + policy.ComfortHalfForce);
    }
}
