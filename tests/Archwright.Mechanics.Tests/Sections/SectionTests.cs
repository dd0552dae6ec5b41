using Archwright.Mechanics.Sections;
using CsCheck;

namespace Archwright.Mechanics.Tests.Sections;

public sealed class SectionTests
{
    private static readonly Gen<Section> AnyRectangle =
        Gen.Select(Gen.Double[0.2, 0.8], Gen.Double[0.2, 0.8], Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 0.999]))
            .Select((thickness, width, rounding) =>
                Section.Rectangular(thickness, width, rounding * Math.Min(thickness, width) / 2));

    private static readonly Gen<Section> AnySection =
        Gen.OneOf(AnyRectangle, Gen.Double[0.2, 0.8].Select(Section.Round));

    /// <summary>Strips across the section, their lengths from Pythagoras at the rounded edges, summed by Simpson's rule
    /// over the angle of the arc.</summary>
    [Fact, Trait("basis", "independent")]
    public void Area_and_second_moments_are_those_of_brute_force_quadrature() =>
        AnySection.Sample(wire =>
        {
            (double area, double second) = Strips(wire.Thickness, wire.Width, wire.EdgeRadius);
            (double sameArea, double other) = Strips(wire.Width, wire.Thickness, wire.EdgeRadius);

            Assert.Equal(1, wire.Area / area, tolerance: 1e-11);
            Assert.Equal(1, wire.Area / sameArea, tolerance: 1e-11);
            Assert.Equal(1, wire.BendingOverThickness / second, tolerance: 1e-11);
            Assert.Equal(1, wire.BendingOverWidth / other, tolerance: 1e-11);
        }, iter: 50);

    /// <summary>The outline is turned point by point, and its highest and outermost points are looked for.</summary>
    [Fact, Trait("basis", "independent")]
    public void Half_height_and_half_depth_are_those_of_the_turned_outline() =>
        Gen.Select(AnySection, Gen.Double[-7, 7]).Sample((wire, twist) =>
        {
            (double sin, double cos) = Math.SinCos(twist);
            double highest = 0;
            double outermost = 0;
            foreach ((double x, double y) in Outline(wire))
            {
                highest = Math.Max(highest, x * sin + y * cos);
                outermost = Math.Max(outermost, x * cos - y * sin);
            }

            Assert.InRange(wire.HalfHeight(twist), highest - 1e-12, highest + ArcSag * wire.EdgeRadius + 1e-12);
            Assert.InRange(wire.HalfDepth(twist), outermost - 1e-12, outermost + ArcSag * wire.EdgeRadius + 1e-12);
        }, iter: 200);

    /// <summary>A fibre strains by axial + κw x + κt y; every fibre of the outline is asked.</summary>
    [Fact, Trait("basis", "independent")]
    public void The_largest_fibre_strain_is_reached_on_the_outline_and_nowhere_exceeded() =>
        Gen.Select(AnySection, Gen.Double[-0.02, 0.02], Gen.Double[-0.1, 0.1], Gen.Double[-0.1, 0.1])
            .Sample((wire, axial, overThickness, overWidth) =>
            {
                double largest = Outline(wire).Max(p => Math.Abs(axial + overWidth * p.X + overThickness * p.Y));
                double missed =
                    ArcSag * wire.EdgeRadius * Math.Sqrt(overThickness * overThickness + overWidth * overWidth);

                double strain = wire.LargestFibreStrain(axial, overThickness, overWidth);

                Assert.InRange(strain, largest - 1e-14, largest + missed + 1e-14);
            }, iter: 200);

    /// <summary>Closed form: the surface of a round wire, and a corner of one with sharp edges.</summary>
    [Fact, Trait("basis", "law")]
    public void The_largest_fibre_strain_of_a_round_wire_is_at_its_surface_and_of_a_sharp_one_at_a_corner()
    {
        Assert.Equal(0.001 + 0.2 * 0.05, Section.Round(0.4).LargestFibreStrain(-0.001, 0.03, -0.04), tolerance: 1e-16);
        Assert.Equal(0.2 * 0.03 + 0.3 * 0.04, Section.Rectangular(0.4, 0.6).LargestFibreStrain(0, -0.03, 0.04), 1e-16);
        Assert.Equal(0, Section.Rectangular(0.4, 0.6, 0.05).LargestFibreStrain(0, 0, 0));
    }

    /// <summary>
    /// Rounded or bevelled edges were found to cost 7 to 8 % of the area (weighed) and 15 to 19 % of the bending
    /// stiffness (three-point bending) of rectangular wires: B. K. Rucker, R. P. Kusy, "Elastic properties of
    /// alternative versus single-stranded leveling archwires", Am. J. Orthod. Dentofacial Orthop. 122 (2002) 528–541
    /// (found, abstract: c.coek.info). The edge radius is chosen for the loss of area; the loss of stiffness must
    /// follow. </summary>
    [Theory, Trait("basis", "published")]
    [InlineData(0.016, 0.016, 0.07)]
    [InlineData(0.016, 0.016, 0.08)]
    [InlineData(0.018, 0.018, 0.075)]
    [InlineData(0.020, 0.020, 0.075)]
    [InlineData(0.016, 0.022, 0.07)]
    [InlineData(0.016, 0.022, 0.08)]
    [InlineData(0.019, 0.025, 0.075)]
    public void Edges_that_cost_7_to_8_percent_of_the_metal_cost_15_to_19_percent_of_the_stiffness(
        double thicknessInches, double widthInches, double areaLost)
    {
        double thickness = 25.4 * thicknessInches;
        double width = 25.4 * widthInches;
        double radius = Math.Sqrt(areaLost * thickness * width / (4 - Math.PI));
        Section sharp = Section.Rectangular(thickness, width);

        Section rounded = Section.Rectangular(thickness, width, radius);

        Assert.Equal(1 - areaLost, rounded.Area / sharp.Area, tolerance: 1e-12);
        Assert.InRange(1 - rounded.BendingOverThickness / sharp.BendingOverThickness, 0.15, 0.19);
        Assert.InRange(1 - rounded.BendingOverWidth / sharp.BendingOverWidth, 0.15, 0.19);
    }

    [Fact, Trait("basis", "law")]
    public void A_rectangle_rounded_to_the_limit_has_the_constants_of_a_round_wire()
    {
        Section round = Section.Round(0.5);

        Section nearly = Section.Rectangular(0.5, 0.5, Math.BitDecrement(0.25));

        Assert.Equal(1, nearly.Area / round.Area, tolerance: 1e-14);
        Assert.Equal(1, nearly.BendingOverThickness / round.BendingOverThickness, tolerance: 1e-13);
        Assert.Equal(1, nearly.BendingOverWidth / round.BendingOverWidth, tolerance: 1e-13);
        Assert.Equal(1, nearly.Torsion / round.Torsion, tolerance: 1e-13);
        Assert.Equal(round.HalfHeight(0.3), nearly.HalfHeight(0.3), tolerance: 1e-15);
        Assert.Equal(round.LargestFibreStrain(0.01, 0.1, 0.2), nearly.LargestFibreStrain(0.01, 0.1, 0.2), 1e-15);
    }

    [Theory, Trait("basis", "law")]
    [InlineData(0, 0.5, 0)]
    [InlineData(-0.4, 0.5, 0)]
    [InlineData(0.4, double.NaN, 0)]
    [InlineData(0.4, double.PositiveInfinity, 0)]
    [InlineData(0.4, 0.5, -0.01)]
    [InlineData(0.4, 0.5, 0.2)]
    [InlineData(0.5, 0.4, 0.21)]
    [InlineData(0.4, 0.5, double.NaN)]
    public void Impossible_sizes_are_refused(double thickness, double width, double radius) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Section.Rectangular(thickness, width, radius));

    [Theory, Trait("basis", "law")]
    [InlineData(0)]
    [InlineData(-0.4)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Impossible_diameters_are_refused(double diameter) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Section.Round(diameter));

    private const int ArcPoints = 2000;     // in a quarter of a circle

    // How far the arc may bulge between two of its points, in radii
    private static double ArcSag => 1 - Math.Cos(Math.PI / 4 / ArcPoints);

    private static IEnumerable<(double X, double Y)> Outline(Section wire)
    {
        double x = wire.Width / 2 - wire.EdgeRadius;
        double y = wire.Thickness / 2 - wire.EdgeRadius;
        for (int i = 0; i <= ArcPoints; i++)
        {
            (double sin, double cos) = Math.SinCos(Math.PI / 2 * i / ArcPoints);
            (double px, double py) = (x + wire.EdgeRadius * cos, y + wire.EdgeRadius * sin);
            yield return (px, py);
            yield return (-px, py);
            yield return (px, -py);
            yield return (-px, -py);
        }
    }

    private static (double Area, double Second) Strips(double a, double b, double r)
    {
        double middle = a - 2 * r;
        double area = middle * b;
        double second = b * middle * middle * middle / 12;
        const int Strips = 2000;
        for (int i = 0; i <= Strips; i++)
        {
            (double sin, double cos) = Math.SinCos(Math.PI / 2 * i / Strips);
            double y = middle / 2 + r * sin;
            double length = b - 2 * r + 2 * Math.Sqrt(Math.Max(0, r * r - r * sin * (r * sin)));
            double simpson = i is 0 or Strips ? 1 : i % 2 == 0 ? 2 : 4;
            double dy = r * cos * simpson * Math.PI / 2 / Strips / 3;
            area += 2 * length * dy;
            second += 2 * length * y * y * dy;
        }

        return (area, second);
    }
}
