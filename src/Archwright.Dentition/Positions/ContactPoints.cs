using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>Points of the crowns, told from the slots alone, so that any case with tooth numbers has them.</summary>
/// <remarks>
/// The crown's centre lies lingual of its slot by the usual offset of the jaw. Two neighbours touch, in their planned
/// places, at the point that divides the line between their crown centres as their crown widths do; that point
/// belongs to both, so in planned places no contact is displaced. Each tooth then carries its own copy along, as
/// a rigid body about its slot. The contact is taken at the height of the slot, so a torque alone moves it little.
/// </remarks>
public static class ContactPoints
{
    /// <summary>Where two neighbours would touch in their planned places [mm].</summary>
    /// <param name="right">The one nearer to the patient's right.</param>
    /// <param name="rightRest">Its planned slot.</param>
    /// <param name="left">The next one.</param>
    /// <param name="leftRest">Its planned slot.</param>
    public static Vector3 Planned(ToothNumber right, SlotFrame rightRest, ToothNumber left, SlotFrame leftRest)
    {
        double rightWidth = Anatomy.Of(right).CrownWidth.Value;
        double leftWidth = Anatomy.Of(left).CrownWidth.Value;
        Vector3 from = CrownCentre(right, rightRest);
        return from + rightWidth / (rightWidth + leftWidth) * (CrownCentre(left, leftRest) - from);
    }

    /// <summary>Centre of the crown at the height of the slot [mm].</summary>
    public static Vector3 CrownCentre(ToothNumber tooth, SlotFrame slot) =>
        slot.Centre - DefaultArches.SlotOffset(JawOf(tooth)).Value * slot.Outward;

    /// <summary>Middle of the cutting edge, or the cusp tip of a canine [mm].</summary>
    public static Vector3 CuspTip(ToothNumber tooth, SlotFrame slot) =>
        CrownCentre(tooth, slot) + Anatomy.Of(tooth).SlotHeight.Value * ClinicalAxes.For(tooth).Occlusal(slot);

    /// <summary>Where a point of a tooth goes when its slot goes from one place to another.</summary>
    public static Vector3 Carried(Vector3 point, SlotFrame rest, SlotFrame actual)
    {
        Vector3 arm = point - rest.Centre;
        return actual.Centre + Vector3.Dot(arm, rest.Along) * actual.Along
            + Vector3.Dot(arm, rest.Outward) * actual.Outward + Vector3.Dot(arm, rest.Third) * actual.Third;
    }

    private static Jaw JawOf(ToothNumber tooth) => tooth.IsUpper ? Jaw.Upper : Jaw.Lower;
}
