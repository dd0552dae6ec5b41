using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Treatment.Crowns;

/// <summary>Outline of a crown seen from the biting plane, at the height of the slot: a circle drawn out along the
/// longer of its two widths.</summary>
/// <param name="Radius">[mm]</param>
/// <param name="HalfLength">Half of the straight part [mm].</param>
/// <param name="IsDeep">Whether the straight part runs labiolingually.</param>
/// <param name="Lingual">How far lingual of the slot the crown's middle lies [mm].</param>
/// <remarks>Textbook widths. Front teeth touch near their edges, where they are about half as deep as at the
/// cingulum: common practice, no source. Contact points of different height are left out.</remarks>
internal readonly record struct CrownOutline(double Radius, double HalfLength, bool IsDeep, double Lingual)
{
    private const double DepthAtContactOfFrontTeeth = 0.5;

    public static CrownOutline Of(ToothNumber tooth)
    {
        Anatomy anatomy = Anatomy.Of(tooth);
        double width = anatomy.CrownWidth.Value;
        double depth = anatomy.CrownDepth.Value * (tooth.IsAnterior ? DepthAtContactOfFrontTeeth : 1);
        double lingual = Archwright.Dentition.ArchForms.DefaultArches.SlotOffset(
            tooth.IsUpper ? Jaw.Upper : Jaw.Lower).Value;
        return new CrownOutline(Math.Min(width, depth) / 2, Math.Abs(width - depth) / 2, depth > width, lingual);
    }

    /// <summary>Middle of the crown [mm].</summary>
    public Vector3 Middle(in SlotFrame slot) => slot.Centre - Lingual * slot.Outward;

    /// <summary>From the middle to one end of the straight part [mm].</summary>
    public Vector3 Half(in SlotFrame slot) => HalfLength * (IsDeep ? slot.Outward : slot.Along);
}
