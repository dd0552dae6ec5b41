using Archwright.Dentition.Tables;
using Archwright.Dentition.Teeth;

namespace Archwright.Treatment.Support;

/// <summary>What lip or cheek presses on one crown with, and how that rises as the crown goes out.</summary>
/// <remarks>Figures of averages, in <c>Support/soft-tissue.csv</c>; people differ several times over, and sensors by a
/// factor of ten.</remarks>
/// <param name="Resting">Pressure at rest where the crown stands in balance [MPa].</param>
/// <param name="Rise">Rise of the pressure with each millimetre that the crown goes out [MPa/mm].</param>
/// <param name="Face">Face of the crown that is pressed [mm²].</param>
public sealed record LipPressure(double Resting, double Rise, double Face)
{
    // 1 gf/cm² in MPa.
    private const double GramsForce = 9.80665e-5;

    private static readonly Lazy<Dictionary<(string, string, string), Sourced>> Rows = new(() =>
        Table.Embedded(typeof(LipPressure).Assembly, "Support/soft-tissue.csv").ToDictionary(
            row => (row.Required("jaw"), row.Required("group"), row.Required("quantity")), row => row.Figure()));

    /// <summary>That of an average tooth.</summary>
    /// <param name="tooth">Which.</param>
    /// <remarks>The face of the crown is an ellipse of its width and height.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The tables do not hold the tooth.</exception>
    public static LipPressure Of(ToothNumber tooth)
    {
        Anatomy anatomy = Anatomy.Of(tooth);
        return new LipPressure(
            GramsForce * Row(tooth, "resting_pressure").Value,
            GramsForce * Row(tooth, "rise").Value,
            Math.PI / 4 * anatomy.CrownWidth.Value * anatomy.CrownHeight.Value);
    }

    /// <summary>Force of lip or cheek on the crown at rest, in balance with the tongue [N].</summary>
    public double RestingForce => Resting * Face;

    /// <summary>What lip or cheek presses with more than in balance [N]; negative where it presses less.</summary>
    /// <param name="outward">How far the crown stands out from where it was in balance [mm].</param>
    /// <remarks>
    /// <code>
    ///     F(u) = A (max(p₀ + k u, 0) − p₀)
    /// </code>
    /// The tongue, and whatever else held the crown, is taken to press on with p₀: so a crown that stands out is pushed
    /// in, one that stands in is pushed out, and no harder than with A p₀, when the lip has left it.
    /// </remarks>
    public double More(double outward) => Face * (Math.Max(Resting + Rise * outward, 0) - Resting);

    /// <summary>Rise of the force at that place [N/mm].</summary>
    /// <param name="outward">[mm]</param>
    public double Stiffness(double outward) => Resting + Rise * outward > 0 ? Face * Rise : 0;

    private static Sourced Row(ToothNumber tooth, string quantity)
    {
        string jaw = tooth.IsUpper ? "upper" : "lower";
        string group = tooth.Position switch { <= 2 => "incisors", 3 => "canines", <= 5 => "premolars", _ => "molars" };
        return Rows.Value.TryGetValue((jaw, group, quantity), out Sourced? figure)
            ? figure
            : throw new TableException($"Support/soft-tissue.csv has no '{quantity}' of {jaw} {group}. Add the row.");
    }
}
