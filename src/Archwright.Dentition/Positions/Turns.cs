using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>The turn between two frames.</summary>
internal static class Turns
{
    /// <summary>Rotation vector that carries the axes of one frame onto those of another.</summary>
    /// <remarks>With R = Σ bᵢ aᵢᵀ over the three axes: tr R = 1 + 2 cos θ, and the sum of aᵢ × bᵢ is 2 sin θ times
    /// the axis. Near θ = π that sum vanishes; there the axis is the direction that R + 1 keeps.</remarks>
    public static Vector3 FromTo(SlotFrame from, SlotFrame to)
    {
        Vector3 twiceSine = Vector3.Cross(from.Along, to.Along) + Vector3.Cross(from.Outward, to.Outward)
            + Vector3.Cross(from.Third, to.Third);
        double trace = Vector3.Dot(from.Along, to.Along) + Vector3.Dot(from.Outward, to.Outward)
            + Vector3.Dot(from.Third, to.Third);
        double sine = twiceSine.Length / 2;
        double cosine = (trace - 1) / 2;
        double angle = Math.Atan2(sine, cosine);
        if (sine > 1e-6)
            return twiceSine * (angle / (2 * sine));

        // Small turn: twice the sine is twice the angle. Half a turn: pick the longest of aᵢ + bᵢ.
        return cosine > 0 ? twiceSine / 2 : angle * Longest(from, to).Unit();
    }

    private static Vector3 Longest(SlotFrame from, SlotFrame to)
    {
        Vector3 along = from.Along + to.Along;
        Vector3 outward = from.Outward + to.Outward;
        Vector3 third = from.Third + to.Third;
        Vector3 longest = along.Length > outward.Length ? along : outward;
        return longest.Length > third.Length ? longest : third;
    }
}
