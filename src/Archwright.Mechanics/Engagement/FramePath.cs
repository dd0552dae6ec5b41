using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>The straight way from one slot frame to another: the centre on a line, the turn about one axis.</summary>
internal static class FramePath
{
    /// <summary>The frame at a share of the way.</summary>
    /// <param name="from">At share 0.</param>
    /// <param name="to">At share 1.</param>
    /// <param name="share">From 0 to 1.</param>
    public static SlotFrame Between(in SlotFrame from, in SlotFrame to, double share)
    {
        if (share >= 1)
            return to;

        Vector3 turn = TurnBetween(from, to);
        return from.Moved((to.Centre - from.Centre) * share, turn * share);
    }

    /// <summary>Rotation vector that turns the directions of one frame into those of the other [rad].</summary>
    public static Vector3 TurnBetween(in SlotFrame from, in SlotFrame to)
    {
        // R = Σ toᵢ fromᵢᵀ: sin(angle)·axis is half of Σ fromᵢ × toᵢ, and the trace is 1 + 2 cos(angle).
        Vector3 twice = Vector3.Cross(from.Along, to.Along) + Vector3.Cross(from.Outward, to.Outward)
            + Vector3.Cross(from.Third, to.Third);
        double cos = (Vector3.Dot(from.Along, to.Along) + Vector3.Dot(from.Outward, to.Outward)
            + Vector3.Dot(from.Third, to.Third) - 1) / 2;
        double sin = twice.Length / 2;
        return sin < 1e-300 ? default : twice * (Math.Atan2(sin, cos) / (2 * sin));
    }
}
