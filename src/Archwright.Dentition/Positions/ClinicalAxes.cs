using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>Turns between slot axes and the words of the clinic.</summary>
/// <param name="Side">+1 on the patient's right, −1 on the left.</param>
/// <param name="Jaw">+1 upper, −1 lower.</param>
/// <remarks>With along from the patient's right to the left, outward labial and third = along × outward (inferior):
/// labial = outward, occlusal = Jaw·third, mesial = Side·along; positive angles turn about Side·third (rotation),
/// Side·Jaw·outward (tip) and −Jaw·along (torque). <c>default</c> has no side: use <see cref="For"/>.</remarks>
public readonly record struct ClinicalAxes(int Side, int Jaw)
{
    /// <summary>The axes of a bench set-up without teeth: those of an upper right tooth.</summary>
    public static ClinicalAxes Bench { get; } = new(Side: 1, Jaw: 1);

    /// <summary>The axes of a tooth.</summary>
    public static ClinicalAxes For(ToothNumber tooth) => new(tooth.IsRight ? 1 : -1, tooth.IsUpper ? 1 : -1);

    /// <summary>The rest frame moved by an offset: shifted along its own axes, then turned about its own centre by
    /// one rotation vector whose components along the three clinical axes of the rest frame are the angles.</summary>
    /// <param name="rest">Where the slot should be.</param>
    /// <param name="offset">How it is off.</param>
    /// <exception cref="ArgumentOutOfRangeException">A part of the offset is not finite.</exception>
    public SlotFrame Displaced(SlotFrame rest, ClinicalOffset offset)
    {
        if (!offset.IsFinite)
            throw new ArgumentOutOfRangeException(nameof(offset), offset, "Every part must be a finite number.");

        Vector3 shift = offset.Labial * Labial(rest) + offset.Occlusal * Occlusal(rest) + offset.Mesial * Mesial(rest);
        Vector3 turn = offset.Rotation * RotationAxis(rest) + offset.Tip * TipAxis(rest)
            + offset.Torque * TorqueAxis(rest);
        return rest.Moved(shift, turn);
    }

    /// <summary>The offset that brings one frame onto another: the inverse of <see cref="Displaced"/>.</summary>
    /// <param name="rest">Where the slot should be.</param>
    /// <param name="actual">Where it is.</param>
    /// <returns>Angles of a turn up to 180°; at exactly 180° one of the two equal answers.</returns>
    public ClinicalOffset Between(SlotFrame rest, SlotFrame actual)
    {
        Vector3 shift = actual.Centre - rest.Centre;
        Vector3 turn = Turns.FromTo(rest, actual);
        return new ClinicalOffset(
            Vector3.Dot(shift, Labial(rest)),
            Vector3.Dot(shift, Occlusal(rest)),
            Vector3.Dot(shift, Mesial(rest)),
            Vector3.Dot(turn, RotationAxis(rest)),
            Vector3.Dot(turn, TipAxis(rest)),
            Vector3.Dot(turn, TorqueAxis(rest)));
    }

    /// <summary>A load on the tooth in clinical components.</summary>
    /// <param name="actual">Where the slot is; its axes and its centre are used.</param>
    /// <param name="load">Force and moment on the tooth, moment about any point.</param>
    public ClinicalLoad Resolve(SlotFrame actual, Wrench load)
    {
        Wrench atSlot = load.MovedTo(actual.Centre);
        return new ClinicalLoad(
            Vector3.Dot(atSlot.Force, Labial(actual)),
            Vector3.Dot(atSlot.Force, Occlusal(actual)),
            Vector3.Dot(atSlot.Force, Mesial(actual)),
            Vector3.Dot(atSlot.Moment, RotationAxis(actual)),
            Vector3.Dot(atSlot.Moment, TipAxis(actual)),
            Vector3.Dot(atSlot.Moment, TorqueAxis(actual)));
    }

    /// <summary>Unit vector toward the lip or cheek.</summary>
    public static Vector3 Labial(SlotFrame frame) => frame.Outward;

    /// <summary>Unit vector toward the biting plane.</summary>
    public Vector3 Occlusal(SlotFrame frame) => Jaw * frame.Third;

    /// <summary>Unit vector toward the midline along the arch.</summary>
    public Vector3 Mesial(SlotFrame frame) => Side * frame.Along;

    /// <summary>Axis about which a positive rotation turns.</summary>
    public Vector3 RotationAxis(SlotFrame frame) => Side * frame.Third;

    /// <summary>Axis about which a positive tip turns.</summary>
    public Vector3 TipAxis(SlotFrame frame) => Side * Jaw * frame.Outward;

    /// <summary>Axis about which a positive torque turns.</summary>
    public Vector3 TorqueAxis(SlotFrame frame) => -Jaw * frame.Along;
}
