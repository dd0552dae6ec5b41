using Archwright.Dentition.Catalogue;
using Archwright.Mechanics.Sections;

namespace Archwright.Treatment.Decisions;

/// <summary>Which of two wires is the heavier.</summary>
public static class WireSize
{
    /// <summary>Bending stiffness of a wire as one figure: the geometric mean of those over its two sides
    /// [N·mm²].</summary>
    /// <remarks>A square and a round wire compare as they feel, and a flat one counts for both its sides. For an
    /// alloy that transforms it is that of the first, elastic part.</remarks>
    public static double Stiffness(CatalogueWire wire)
    {
        ArgumentNullException.ThrowIfNull(wire);
        return wire.Wire.Alloy.Young
            * Math.Sqrt(wire.Section.BendingOverThickness * wire.Section.BendingOverWidth);
    }

    /// <summary>How the second wire compares with the first: 1 heavier, −1 lighter, 0 about the same (within 5 %).
    /// </summary>
    public static int Compare(CatalogueWire from, CatalogueWire to)
    {
        double ratio = Stiffness(to) / Stiffness(from);
        return ratio > Same ? 1 : ratio < 1 / Same ? -1 : 0;
    }

    /// <summary>Whether one section holds the other inside it, so that of the same alloy it is stiffer in every
    /// way and has less play.</summary>
    internal static bool Contains(Section outer, Section inner) =>
        outer.Thickness >= inner.Thickness - Rounding && outer.Width >= inner.Width - Rounding
        && (outer.IsRound ? inner.IsRound : true);

    private const double Same = 1.05;
    private const double Rounding = 1e-9;
}
