using Archwright.Dentition.Catalogue;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>Wires and alloys of the catalogue against one another, by the figures of the catalogue.</summary>
internal static class AlloyRatios
{
    /// <summary>Bending stiffness, occlusal, of <c>wire</c> against <c>other</c>.</summary>
    public static double Stiffness(SetUp given) =>
        Bending(given.Wire()) / Bending(given.Wire("other"));

    /// <summary>Bending moment at which it yields, of <c>alloy</c> against <c>other</c> in the same section.</summary>
    public static double Strength(SetUp given) =>
        given.Alloy().Plasticity!.Yield.Value / given.Alloy("other").Plasticity!.Yield.Value;

    /// <summary>Deflection at which it yields, of <c>alloy</c> against <c>other</c> in the same section.</summary>
    public static double Range(SetUp given) =>
        Strength(given) / (given.Alloy().Young.Value / given.Alloy("other").Young.Value);

    private static double Bending(CatalogueWire wire) => wire.Wire.Alloy.Young * wire.Section.BendingOverThickness;
}
