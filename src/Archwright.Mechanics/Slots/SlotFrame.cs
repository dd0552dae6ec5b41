using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Slots;

/// <summary>Where a slot is and how it is turned, in the frame of the case (the patient's).</summary>
/// <remarks><c>default</c> is not a frame: use <see cref="Create"/>.</remarks>
public readonly record struct SlotFrame
{
    /// <summary>Centre of the channel [mm].</summary>
    public Vector3 Centre { get; private init; }

    /// <summary>Unit vector of the slot's axis, along the arch from the patient's right to the left.</summary>
    public Vector3 Along { get; private init; }

    /// <summary>Unit vector out of the slot (labial or buccal), at right angles to <see cref="Along"/>.</summary>
    public Vector3 Outward { get; private init; }

    /// <summary>Along × outward: across the slot's height (points inferior).</summary>
    public Vector3 Third => Vector3.Cross(Along, Outward);

    /// <summary>A frame from a centre and two directions; they are normalised, and the last rounding error of their
    /// right angle is removed by turning <paramref name="outward"/>.</summary>
    /// <param name="centre">[mm]</param>
    /// <param name="along">Direction of the slot's axis; any length.</param>
    /// <param name="outward">Direction out of the slot; any length; within half a degree of a right angle to
    /// <paramref name="along"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A component is not finite, a direction is zero, or the two
    /// are not at right angles.</exception>
    public static SlotFrame Create(Vector3 centre, Vector3 along, Vector3 outward)
    {
        Require.Finite(centre);
        Require.Finite(along);
        Require.Finite(outward);
        if (along.Length < 1e-9 || outward.Length < 1e-9)
            throw new ArgumentOutOfRangeException(nameof(along), along, "A direction must not be zero.");

        Vector3 a = along.Unit();
        Vector3 o = outward.Unit();
        double overlap = Vector3.Dot(a, o);
        if (Math.Abs(overlap) > RightAngleTolerance)
        {
            throw new ArgumentOutOfRangeException(
                nameof(outward), outward, "It must be at right angles to the slot's axis (within half a degree).");
        }

        return new SlotFrame { Centre = centre, Along = a, Outward = (o - overlap * a).Unit() };
    }

    /// <summary>Largest cosine between the two directions that still counts as a right angle: half a degree.</summary>
    public const double RightAngleTolerance = 0.0087;

    /// <summary>This frame moved and then turned about its own centre.</summary>
    /// <param name="shift">[mm], in the frame of the case.</param>
    /// <param name="turn">Rotation vector, axis times angle [rad], in the frame of the case.</param>
    public SlotFrame Moved(Vector3 shift, Vector3 turn) => this with
    {
        Centre = Centre + shift,
        Along = Along.Turned(turn),
        Outward = Outward.Turned(turn),
    };
}
