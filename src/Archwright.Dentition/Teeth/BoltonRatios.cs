using Archwright.Dentition.Tables;

namespace Archwright.Dentition.Teeth;

/// <summary>Whether upper and lower crowns go together: sums of their widths, lower over upper.</summary>
/// <param name="Overall">First molar to first molar [%].</param>
/// <param name="Anterior">Canine to canine [%].</param>
/// <remarks>W. A. Bolton, Angle Orthod 1958;28:113–130 (from memory): 91.3 ± 1.91 and 77.2 ± 1.65 in 55 excellent
/// occlusions. People of other descent differ by one or two; beyond two standard deviations, or 2 mm, is worth a
/// thought (Othman and Harradine, Angle Orthod 2007;77:668–674, found).</remarks>
public sealed record BoltonRatios(double Overall, double Anterior)
{
    private static readonly Lazy<Dictionary<string, Sourced>> Rows = new(() =>
        Table.Embedded("Teeth/bolton.csv").ToDictionary(
            row => row.Required("quantity"), row => row.Figure(), StringComparer.Ordinal));

    /// <summary>The published overall ratio [%].</summary>
    public static Sourced UsualOverall => Rows.Value["overall"];

    /// <summary>The published anterior ratio [%].</summary>
    public static Sourced UsualAnterior => Rows.Value["anterior"];

    /// <summary>The ratios of crown widths.</summary>
    /// <param name="widths">Mesiodistal width [mm] of every tooth from first molar to first molar of both
    /// jaws.</param>
    /// <exception cref="ArgumentException">A tooth is missing, or a width is not between 2 and 20 mm.</exception>
    public static BoltonRatios Of(IReadOnlyDictionary<ToothNumber, double> widths)
    {
        ArgumentNullException.ThrowIfNull(widths);
        return new BoltonRatios(
            100 * Sum(widths, Jaw.Lower, 6) / Sum(widths, Jaw.Upper, 6),
            100 * Sum(widths, Jaw.Lower, 3) / Sum(widths, Jaw.Upper, 3));
    }

    /// <summary>The ratios of the average teeth.</summary>
    public static BoltonRatios OfAverageTeeth() => Of(
        ToothNumber.UpperArch.Concat(ToothNumber.LowerArch).Where(tooth => tooth.Position <= 6)
            .ToDictionary(tooth => tooth, tooth => Anatomy.Of(tooth).CrownWidth.Value));

    private static double Sum(IReadOnlyDictionary<ToothNumber, double> widths, Jaw jaw, int last) =>
        jaw.Teeth().Where(tooth => tooth.Position <= last).Sum(tooth =>
            widths.TryGetValue(tooth, out double width) && width is >= 2 and <= 20
                ? width
                : throw new ArgumentException(
                    $"The width of {tooth} ({tooth.Name}) is needed, between 2 and 20 mm.", nameof(widths)));
}
