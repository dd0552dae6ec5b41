using Archwright.Dentition.Tables;

namespace Archwright.Treatment.Support;

/// <summary>The periodontal ligament as a thin elastic layer between root and bone.</summary>
/// <remarks>
/// A layer of thickness t answers a displacement u of the root with M u/t along its normal and G u/t across it,
/// M = E(1−ν)/((1+ν)(1−2ν)), G = E/2(1+ν). The modulus in print swings by orders of magnitude and the result tenfold
/// with ν alone, so the pair is tied to measured mobility of crowns, not the other way round.
/// </remarks>
public static class Ligament
{
    private static readonly Lazy<Dictionary<string, Sourced>> Rows = new(() =>
        Table.Embedded(typeof(Ligament).Assembly, "Support/ligament.csv")
            .ToDictionary(row => row.Required("quantity"), row => row.Figure(), StringComparer.Ordinal));

    /// <summary>Young's modulus E at small strain [MPa].</summary>
    public static Sourced Young => Of("young");

    /// <summary>Poisson's ratio ν.</summary>
    public static Sourced Poisson => Of("poisson");

    /// <summary>Thickness t [mm].</summary>
    public static Sourced Thickness => Of("thickness");

    /// <summary>Height of the bone crest below the neck in health [mm].</summary>
    public static Sourced CrestBelowNeck => Of("crest_below_neck");

    /// <summary>Displacement of the root at which the layer stiffens [mm].</summary>
    public static double Knee { get; } = Of("knee_strain").Value * Thickness.Value;

    /// <summary>How many times as stiff it is past the knee.</summary>
    public static double Stiffening { get; } = Of("stiffening").Value;

    /// <summary>Stiffness of the layer along its normal, M/t [MPa/mm].</summary>
    public static double Normal { get; } = Young.Value * (1 - Poisson.Value)
        / ((1 + Poisson.Value) * (1 - 2 * Poisson.Value)) / Thickness.Value;

    /// <summary>Stiffness of the layer across its normal, G/t [MPa/mm].</summary>
    public static double Across { get; } = Young.Value / (2 * (1 + Poisson.Value)) / Thickness.Value;

    /// <summary>How far the root goes, as a share of what a layer without knee would let it.</summary>
    /// <param name="displacement">Root mean square displacement of the root's surface without knee [mm].</param>
    public static double ShareGiven(double displacement) => displacement <= Knee
        ? 1
        : (Knee + (displacement - Knee) / Stiffening) / displacement;

    private static Sourced Of(string quantity) => Rows.Value.TryGetValue(quantity, out Sourced? figure)
        ? figure
        : throw new TableException($"Support/ligament.csv has no '{quantity}'. Add the row.");
}
