using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>How much room the teeth in front of the first molars lack.</summary>
/// <param name="Needed">Sum of the crown widths of the teeth that have a slot [mm].</param>
/// <param name="Available">Length of the present arch between the mesial sides of the first molars [mm].</param>
/// <remarks>The present arch is a polynomial curve laid through the crown centres (<see cref="ArchFit"/>). Crown
/// widths are those of average teeth: a person's differ by about half a millimetre a tooth, so by two for the sum.
/// Teeth without a slot are left out: where one waits for room, add its width.</remarks>
public sealed record SpaceDeficit(double Needed, double Available)
{
    /// <summary>Crowding, needed less available; negative for spacing [mm].</summary>
    public double Crowding => Needed - Available;

    /// <summary>The room of an arch; null without both first molars, or when no arch curve fits.</summary>
    /// <param name="teeth">Tooth of each slot, null for a label that is none.</param>
    /// <param name="slots">The slots, in the same order.</param>
    /// <exception cref="ArgumentException">Teeth and slots are not as many.</exception>
    public static SpaceDeficit? Of(IReadOnlyList<ToothNumber?> teeth, IReadOnlyList<Slot> slots)
    {
        if (teeth.Count != slots.Count)
            throw new ArgumentException($"{teeth.Count} teeth were given for {slots.Count} slots.", nameof(teeth));

        var centres = new List<Vector3>();
        var molars = new List<double>();
        double needed = 0;
        for (int i = 0; i < teeth.Count; i++)
        {
            if (teeth[i] is not { } tooth || !Anatomy.TryOf(tooth, out Anatomy? anatomy))
                continue;

            Vector3 centre = ContactPoints.CrownCentre(tooth, slots[i].Actual);
            centres.Add(centre);
            if (tooth.Position == 6)
                molars.Add(Math.Abs(centre.X));
            needed += tooth.Position < 6 ? anatomy.CrownWidth.Value : 0;
        }

        if (molars.Count != 2 || ArchFit.ToPoints(centres) is not { } fit)
            return null;

        double halfMolar = Anatomy.Of(teeth.First(tooth => tooth?.Position == 6)!.Value).CrownWidth.Value / 2;
        return new SpaceDeficit(needed, molars.Sum(across => fit.Form.ArcTo(across) - halfMolar));
    }
}
