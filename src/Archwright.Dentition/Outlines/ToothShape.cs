using System.Collections.Concurrent;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Outlines;

/// <summary>A tooth in space, for looking at alone: lengths, widths and depths are those of the anatomy table, and so
/// is where the slot sits on the crown; cusps, edges and roots are shaped freely after what textbooks describe (common
/// practice, no source). No mechanics rests on it.</summary>
/// <param name="Crown">The crown.</param>
/// <param name="Root">The root, or the roots.</param>
public sealed record ToothShape(Surface Crown, Surface Root)
{
    private const int Around = 36;

    private static readonly ConcurrentDictionary<ToothNumber, ToothShape?> Known = new();

    /// <summary>The shape of a tooth in the frame of its slot: along, outward, third; the origin is the slot's
    /// centre.</summary>
    /// <returns>Null where the anatomy table does not hold the tooth.</returns>
    public static ToothShape? Of(ToothNumber tooth) => Known.GetOrAdd(tooth, Make);

    private static ToothShape? Make(ToothNumber tooth)
    {
        if (!Anatomy.TryOf(tooth, out Anatomy? anatomy) || Crowns.Of(tooth) is not { } size)
            return null;

        var crown = new CrownLoft(tooth, anatomy);
        double neck = size.SlotToEdge - size.Height; // of the slot, toward the bite
        double face = -size.SlotToFace - crown.LabialAt(-neck / size.Height);
        (double, double, double) Placed((double M, double L, double O) p) => (p.M, p.L + face, p.O + neck);

        ClinicalAxes axes = ClinicalAxes.For(tooth);
        var crownSurface = new SurfaceBuilder(Around);
        crownSurface.Close(CrownLoft.Rings, (ring, angle) => Placed(crown.At(ring, angle)), Placed(crown.Middle));
        var rootSurface = new SurfaceBuilder(Around);
        foreach (RootLoft root in RootLoft.Of(tooth, anatomy))
            rootSurface.Close(RootLoft.Rings, (ring, angle) => Placed(root.At(ring, angle)), Placed(root.Apex));
        return new ToothShape(
            crownSurface.Build(axes.Side, axes.Jaw, towardBite: true),
            rootSurface.Build(axes.Side, axes.Jaw, towardBite: false));
    }
}
