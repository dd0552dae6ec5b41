using Archwright.Dentition.Tables;

namespace Archwright.Dentition.Catalogue;

/// <summary>How far real wires of a shape may be from their stated size, and what that does to their stiffness.
/// </summary>
/// <param name="Smallest">Thinnest against stated, at most nil; in % of the side, or in mm.</param>
/// <param name="Largest">Thickest against stated, at least nil; in % of the side, or in mm.</param>
public sealed record SizeTolerance(Sourced Smallest, Sourced Largest)
{
    /// <summary>Bending stiffness of the thinnest and of the thickest such wire, stated size = 1.</summary>
    /// <param name="thickness">Stated thickness [mm].</param>
    /// <remarks>Both sides scaled alike: stiffness goes with the fourth power.</remarks>
    public (double Softest, double Stiffest) Stiffness(double thickness) =>
        (Math.Pow(1 + Share(Smallest, thickness), 4), Math.Pow(1 + Share(Largest, thickness), 4));

    internal static SizeTolerance Of(string shape, IReadOnlyList<TableRow> rows)
    {
        Sourced smallest = Row(shape, "smallest", rows).Figure();
        Sourced largest = Row(shape, "largest", rows).Figure();
        return smallest.Value <= 0 && largest.Value >= 0 && IsKnown(smallest) && IsKnown(largest)
            ? new SizeTolerance(smallest, largest)
            : throw Row(shape, "smallest", rows).Fault(
                "the tolerance is upside down or in an unknown unit.",
                "Give the smallest at most 0, the largest at least 0, both in % or mm.");
    }

    private static TableRow Row(string shape, string quantity, IReadOnlyList<TableRow> rows) =>
        rows.SingleOrDefault(row => row.Required("shape") == shape && row.Required("quantity") == quantity)
            ?? throw new TableException($"The sizes want one row '{quantity}' of {shape} wires.");

    private static bool IsKnown(Sourced figure) => figure.Unit is "%" or "mm" && figure.Value > -50;

    private static double Share(Sourced figure, double thickness) =>
        figure.Unit == "%" ? figure.Value / 100 : figure.Value / thickness;
}
