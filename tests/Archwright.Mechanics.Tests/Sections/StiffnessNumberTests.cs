using Archwright.Mechanics.Sections;
using Archwright.Tests.Published;

namespace Archwright.Mechanics.Tests.Sections;

/// <summary>Bending stiffness of sections against the published cross-section numbers, see
/// <see cref="CrossSectionNumbers"/>.</summary>
public sealed class StiffnessNumberTests
{
    private const double Mil = 0.0254;
    private static readonly double Base = Section.Round(4 * Mil).BendingOverThickness;

    [Theory, Trait("basis", "published")]
    [MemberData(nameof(CrossSectionNumbers.Round), MemberType = typeof(CrossSectionNumbers))]
    public void Round_wires(double diameter, double number)
    {
        Section wire = Section.Round(diameter * Mil);

        Assert.Equal(number, wire.BendingOverThickness / Base, tolerance: 0.01);
        Assert.Equal(number, wire.BendingOverWidth / Base, tolerance: 0.01);
    }

    [Theory, Trait("basis", "published")]
    [MemberData(nameof(CrossSectionNumbers.Rectangular), MemberType = typeof(CrossSectionNumbers))]
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
