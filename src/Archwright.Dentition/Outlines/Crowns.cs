using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Outlines;

/// <summary>Sizes of crowns for drawing, from the anatomy table.</summary>
public static class Crowns
{
    /// <summary>Least distance of a slot from the face of its crown [mm]; drawing alone.</summary>
    private const double LeastToFace = 0.6;

    /// <summary>The crown of a tooth; null where the table does not hold it.</summary>
    public static Crown? Of(ToothNumber tooth)
    {
        if (!Anatomy.TryOf(tooth, out Anatomy? anatomy))
            return null;

        // Crown centres lie lingually of their slots by one figure a jaw; half of the crown stands before the centre.
        double centre = DefaultArches.SlotOffset(tooth.IsUpper ? Jaw.Upper : Jaw.Lower).Value;
        double depth = anatomy.CrownDepth.Value;
        return new Crown(
            tooth.Position, anatomy.CrownWidth.Value, anatomy.CrownHeight.Value, depth, anatomy.SlotHeight.Value,
            Math.Max(LeastToFace, centre - depth / 2));
    }
}
