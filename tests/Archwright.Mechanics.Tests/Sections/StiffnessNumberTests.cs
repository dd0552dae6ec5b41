using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Tests.Sections;

/// <summary>
/// Cross-section stiffness numbers: bending stiffness of a section relative to a 0.004 in round one of the same alloy.
/// C. J. Burstone, "Variable-modulus orthodontics", Am. J. Orthod. 80 (1981) 1–16. The definition is found; its table
/// was not seen. Values: computed from the definition by a separate program and printed to 0.01; those of the table
/// known from memory agree (39.06, 150.06, 256.00, 410.06, 625.00; 597.57, 966.87, 1535.35; 1129.79, 1865.10, 2175.95).
/// </summary>
public sealed class StiffnessNumberTests
{
    private const double Mil = 0.0254;
    private static readonly double Base = Section.Round(4 * Mil).BendingOverThickness;

    [Theory, Trait("basis", "published")]
    [InlineData(8, 16.00)]
    [InlineData(9, 25.63)]
    [InlineData(10, 39.06)]
    [InlineData(12, 81.00)]
    [InlineData(14, 150.06)]
    [InlineData(16, 256.00)]
    [InlineData(17.5, 366.36)]
    [InlineData(18, 410.06)]
    [InlineData(20, 625.00)]
    [InlineData(22, 915.06)]
    [InlineData(30, 3164.06)]
    [InlineData(36, 6561.00)]
    public void Round_wires(double diameter, double number)
    {
        Section wire = Section.Round(diameter * Mil);

        Assert.Equal(number, wire.BendingOverThickness / Base, tolerance: 0.01);
        Assert.Equal(number, wire.BendingOverWidth / Base, tolerance: 0.01);
    }

    [Theory, Trait("basis", "published")]
    [InlineData(14, 25, 454.92, 1450.63)]
    [InlineData(16, 16, 434.60, 434.60)]
    [InlineData(16, 22, 597.57, 1129.79)]
    [InlineData(17, 17, 553.87, 553.87)]
    [InlineData(17, 22, 716.77, 1200.40)]
    [InlineData(17, 25, 814.51, 1761.48)]
    [InlineData(18, 18, 696.14, 696.14)]
    [InlineData(18, 22, 850.84, 1271.01)]
    [InlineData(18, 25, 966.87, 1865.10)]
    [InlineData(19, 25, 1137.13, 1968.71)]
    [InlineData(20, 20, 1061.03, 1061.03)]
    [InlineData(20, 25, 1326.29, 2072.33)]
    [InlineData(21, 25, 1535.35, 2175.95)]
    [InlineData(21.5, 28, 1845.37, 3129.84)]
    public void Rectangular_wires_with_sharp_edges(
        double thickness, double width, double secondOrder, double firstOrder)
    {
        Section wire = Section.Rectangular(thickness * Mil, width * Mil);

        Assert.Equal(secondOrder, wire.BendingOverThickness / Base, tolerance: 0.01);
        Assert.Equal(firstOrder, wire.BendingOverWidth / Base, tolerance: 0.01);
    }

    /// <summary>Torsion constants of sharp-edged wires in mm⁴ from the series of Saint-Venant, computed by a separate
    /// program and printed to 1e-6.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData(16, 16, 0.003835)]
    [InlineData(16, 22, 0.006922)]
    [InlineData(17, 25, 0.009880)]
    [InlineData(18, 25, 0.011279)]
    [InlineData(19, 25, 0.012753)]
    [InlineData(21, 25, 0.015902)]
    public void Torsion_of_rectangular_wires_with_sharp_edges(double thickness, double width, double torsion) =>
        Assert.Equal(torsion, Section.Rectangular(thickness * Mil, width * Mil).Torsion, tolerance: 0.5e-6);
}
