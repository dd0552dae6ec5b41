using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using CsCheck;

namespace Archwright.Dentition.Tests.ArchForms;

/// <summary>Arch curves: their formulas, lengths, and frames on them.</summary>
public sealed class ArchFormTests
{
    /// <summary>S. Braun et al., "The form of the human dental arch", Angle Orthod 1998;68:29–36 (formula: from
    /// memory): y(0) = D to 1 part in 10⁴, y(±W/2) = 0.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(60, 42.8)]
    [InlineData(56, 41.4)]
    public void The_beta_curve_is_D_deep_at_the_front_and_ends_on_the_line_of_the_molars(double width, double depth)
    {
        var arch = new BetaArch(width, depth);

        Assert.Equal(1, arch.ForwardAt(0) / depth, 1e-4);
        Assert.Equal(0, arch.ForwardAt(width / 2), 1e-9);
        Assert.Equal(1, arch.Depth / depth, 1e-4);
        Assert.Equal(width / 2, arch.HalfWidth);
    }

    /// <summary>Length of beta arches chosen to be as long as the textbook crowns: 111 and 106 mm, ± 0.2; computed
    /// apart from this code.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData(60, 42.8, 111)]
    [InlineData(56, 41.4, 106)]
    public void A_beta_arch_has_the_tabulated_perimeter(double width, double depth, double perimeter) =>
        Assert.Equal(perimeter, new BetaArch(width, depth).Perimeter, 0.2);

    [Fact, Trait("basis", "independent")]
    public void The_beta_curve_in_its_parameter_is_the_formula()
    {
        var arch = new BetaArch(60, 42.8);
        for (double x = 0; x <= 30; x += 0.5)
            Assert.Equal(arch.ForwardAt(0) - arch.ForwardAt(x), arch.DepthAt(x), 1e-9);
    }

    /// <summary>Lengths of chords of a fine polygon against the quadrature.</summary>
    [Fact, Trait("basis", "independent")]
    public void Lengths_along_a_curve_are_those_of_a_fine_polygon()
    {
        Check(new BetaArch(56, 41.4), 27.9);
        Check(DefaultArches.Of(Jaw.Upper), 29);
        Check(DefaultArches.Of(Jaw.Lower), 26.5);

        static void Check(ArchForm arch, double across)
        {
            double sum = 0;
            const int pieces = 200_000;
            for (int i = 0; i < pieces; i++)
            {
                double from = across * i / pieces;
                double to = across * (i + 1) / pieces;
                double rise = arch.DepthAt(to) - arch.DepthAt(from);
                sum += Math.Sqrt((to - from) * (to - from) + rise * rise);
            }

            Assert.Equal(sum, arch.ArcTo(across), 1e-6);
        }
    }

    /// <summary>Default arches fitted to the textbook crown widths; coefficients computed apart from this code, four
    /// digits printed, of widths of the same tables. Length to canine and second molar centres: 18.75 and 51.0 upper,
    /// 14.0 and 47.75 lower, ± 0.05.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData(Jaw.Upper, 2.456e-8, 0.02674, 16.5, 18.75, 29.0, 51.0)]
    [InlineData(Jaw.Lower, 4.088e-8, 0.03000, 12.75, 14.0, 26.5, 47.75)]
    public void The_default_arch_is_as_wide_and_as_long_as_the_tables(
        Jaw jaw, double a, double b, double canine, double canineArc, double molar, double molarArc)
    {
        PolynomialArch arch = DefaultArches.Of(jaw);

        Assert.Equal(1, arch.A / a, 0.0005);
        Assert.Equal(1, arch.B / b, 0.0005);
        Assert.Equal(canineArc, arch.ArcTo(canine), 0.05);
        Assert.Equal(molarArc, arch.ArcTo(molar), 0.05);
    }

    /// <summary>Width across and depth of each crown centre on the default arches; one decimal, computed apart from
    /// this code.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData(
        Jaw.Upper, new[] { 8.4, 22.2, 33.0, 41.6, 47.8, 53.4, 58.0 },
        new[] { 0.5, 3.3, 7.8, 13.6, 19.9, 27.9, 37.1 })]
    [InlineData(
        Jaw.Lower, new[] { 5.0, 15.0, 25.5, 34.8, 41.7, 47.8, 53.0 },
        new[] { 0.2, 1.7, 5.1, 10.2, 16.3, 24.8, 35.2 })]
    public void Crown_centres_lie_where_the_table_has_them(Jaw jaw, double[] widths, double[] depths)
    {
        PolynomialArch arch = DefaultArches.Of(jaw);
        IReadOnlyList<double> arcs = CrownRow.ArcsFromMidline(jaw);
        for (int i = 0; i < 7; i++)
        {
            Assert.Equal(widths[i], 2 * arch.AcrossAt(arcs[i]), 0.06);
            Assert.Equal(depths[i], arch.DepthAt(arch.AcrossAt(arcs[i])), 0.06);
        }
    }

    /// <summary>Sums of the textbook widths, 7 to 7: 111 mm upper, 106 mm lower.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(Jaw.Upper, 111)]
    [InlineData(Jaw.Lower, 106)]
    public void The_default_arch_is_as_long_as_its_crowns(Jaw jaw, double sum)
    {
        Assert.Equal(sum, 2 * CrownRow.HalfLength(jaw), 1e-9);
        Assert.Equal(sum, DefaultArches.Of(jaw).Perimeter, 1e-6);
    }

    [Fact, Trait("basis", "law")]
    public void An_arch_through_given_depths_passes_there()
    {
        PolynomialArch arch = PolynomialArch.ThroughDepths(34, 8, 60, 38);

        Assert.Equal(8, arch.DepthAt(17), 1e-9);
        Assert.Equal(38, arch.DepthAt(30), 1e-9);
        Assert.Equal(38, arch.Depth, 1e-9);
    }

    [Fact, Trait("basis", "law")]
    public void An_arch_with_given_lengths_has_them() => Gen.Select(
        Gen.Double[30, 37], Gen.Double[54, 62], Gen.Double[1.10, 1.16], Gen.Double[1.7, 1.85]).Sample(
        (canine, molar, canineStretch, molarStretch) =>
        {
            PolynomialArch arch = PolynomialArch.WithLengths(
                canine, canine / 2 * canineStretch, molar, molar / 2 * molarStretch);

            Assert.Equal(canine / 2 * canineStretch, arch.ArcTo(canine / 2), 1e-6);
            Assert.Equal(molar / 2 * molarStretch, arch.ArcTo(molar / 2), 1e-6);
        }, iter: 20);

    [Fact, Trait("basis", "law")]
    public void Lengths_that_no_arch_has_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PolynomialArch.WithLengths(33, 16, 58, 51));
        Assert.Throws<ArgumentOutOfRangeException>(() => PolynomialArch.WithLengths(33, 40, 58, 51));
        Assert.Throws<ArgumentOutOfRangeException>(() => PolynomialArch.WithLengths(60, 18, 58, 51));
        Assert.Throws<ArgumentOutOfRangeException>(() => PolynomialArch.ThroughDepths(34, 8, 60, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PolynomialArch(double.NaN, 0.03, 58));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BetaArch(5, 40));
        Assert.Throws<ArgumentOutOfRangeException>(() => DefaultArches.Of(Jaw.Upper).FrameAt(60));
    }

    [Theory, Trait("basis", "law")]
    [InlineData(0)]
    [InlineData(3.3)]
    public void Frames_run_from_right_to_left_outward_and_third_down(double offset)
    {
        ArchForm arch = DefaultArches.Of(Jaw.Upper);
        SlotFrame front = arch.FrameAt(0, offset, front: 37);
        SlotFrame right = arch.FrameAt(30, offset, front: 37);
        SlotFrame left = arch.FrameAt(-30, offset, front: 37);

        Assert.Equal(37 + offset, front.Centre.Y, 1e-9);
        Assert.Equal(-1, front.Along.X, 1e-12);
        Assert.Equal(1, front.Outward.Y, 1e-12);
        Assert.True(right.Centre.X > 0 && right.Outward.X > 0 && right.Along.Y > 0);
        // The left is the mirror of the right: along reverses its y, outward its x.
        Assert.Equal(-right.Centre.X, left.Centre.X, 1e-9);
        Assert.Equal(right.Centre.Y, left.Centre.Y, 1e-9);
        Assert.Equal(-right.Along.Y, left.Along.Y, 1e-12);
        Assert.Equal(-right.Outward.X, left.Outward.X, 1e-12);
        Assert.All([front, right, left], frame => Assert.Equal(-1, frame.Third.Z, 1e-12));
    }

    /// <summary>A parallel of a curve has its normals, and its length between two normals is longer by the offset
    /// times the turn between them.</summary>
    [Fact, Trait("basis", "law")]
    public void Slots_on_the_parallel_are_farther_apart_by_offset_times_turn()
    {
        ArchForm arch = DefaultArches.Of(Jaw.Lower);
        const double offset = 3;
        double length = 0;
        const int pieces = 4000;
        for (int i = 0; i < pieces; i++)
        {
            SlotFrame from = arch.FrameAt(40.0 * i / pieces, offset);
            SlotFrame to = arch.FrameAt(40.0 * (i + 1) / pieces, offset);
            length += (to.Centre - from.Centre).Length;
        }

        SlotFrame start = arch.FrameAt(0);
        SlotFrame end = arch.FrameAt(40);
        double turn = Math.Acos(Mechanics.Numerics.Vector3.Dot(start.Along, end.Along));
        Assert.Equal(40 + offset * turn, length, 1e-4);
    }
}
