using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.ArchForms;

/// <summary>Average crowns side by side along an arch.</summary>
public static class CrownRow
{
    /// <summary>Length along the arch from the midline to the centre of each crown, central incisor to second
    /// molar [mm].</summary>
    public static IReadOnlyList<double> ArcsFromMidline(Jaw jaw)
    {
        double start = 0;
        List<double> arcs = [];
        foreach (ToothNumber tooth in jaw.Teeth().Skip(8).Take(7))
        {
            double width = Anatomy.Of(tooth).CrownWidth.Value;
            arcs.Add(start + width / 2);
            start += width;
        }

        return arcs;
    }

    /// <summary>Length along the arch from the midline to the far side of the second molar [mm].</summary>
    public static double HalfLength(Jaw jaw) =>
        jaw.Teeth().Skip(8).Take(7).Sum(tooth => Anatomy.Of(tooth).CrownWidth.Value);

    /// <summary>Length along the arch from the midline to the centre of a crown, positive to the patient's
    /// right [mm].</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is a third molar, or no tooth.</exception>
    public static double Arc(ToothNumber tooth)
    {
        if (tooth.Position is < 1 or > 7)
        {
            throw new ArgumentOutOfRangeException(
                nameof(tooth), tooth, "Only teeth up to the second molar are placed.");
        }

        double arc = ArcsFromMidline(tooth.IsUpper ? Jaw.Upper : Jaw.Lower)[tooth.Position - 1];
        return tooth.IsRight ? arc : -arc;
    }
}
