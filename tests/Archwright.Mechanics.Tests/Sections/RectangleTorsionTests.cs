using System.Diagnostics;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Sections;
using CsCheck;

namespace Archwright.Mechanics.Tests.Sections;

public sealed class RectangleTorsionTests
{
    /// <summary>
    /// J / (a b³) of sharp-edged rectangles, a ≥ b. S. P. Timoshenko, J. N. Goodier, Theory of Elasticity, chapter on
    /// torsion: the table prints three digits (0.1406 for the square), known from memory; the five digits here were
    /// computed from the series of the same book by a separate program.
    /// </summary>
    [Theory, Trait("basis", "published")]
    [InlineData(1, 0.14058)]
    [InlineData(1.2, 0.16612)]
    [InlineData(1.5, 0.19576)]
    [InlineData(2, 0.22868)]
    [InlineData(2.5, 0.24937)]
    [InlineData(3, 0.26332)]
    [InlineData(4, 0.28081)]
    [InlineData(5, 0.29132)]
    [InlineData(10, 0.31233)]
    public void Sharp_edges_give_the_table_of_Saint_Venant(double ratio, double expected)
    {
        const double Shorter = 0.4;

        double constant = RectangleTorsion.Constant(Shorter, ratio * Shorter, 0);

        Assert.Equal(expected, constant / (ratio * Math.Pow(Shorter, 4)), tolerance: 0.5e-5);
    }

    /// <summary>
    /// The approximate formula for a solid rectangle in W. C. Young, R. G. Budynas, Roark's Formulas for Stress and
    /// Strain, table of torsion (from memory): J = a b³ (16/3 − 3.36 (b/a) (1 − b⁴/(12 a⁴))), a ≥ b the half sides.
    /// It lies within 0.5 % of the series (worst near a/b = 1.14).
    /// </summary>
    [Fact, Trait("basis", "published")]
    public void Sharp_edges_stay_within_half_a_percent_of_the_formula_of_Roark()
    {
        for (double ratio = 1; ratio <= 10; ratio += 0.01)
        {
            double roark = ratio * (16.0 / 3 - 3.36 / ratio * (1 - 1 / (12 * Math.Pow(ratio, 4))));

            double constant = RectangleTorsion.Constant(2, 2 * ratio, 0);

            Assert.InRange(constant / roark, 0.995, 1.005);
        }
    }

    /// <summary>The series summed to ten thousand terms as it stands, without the known sum of its slow part.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData(1)]
    [InlineData(1.3)]
    [InlineData(4)]
    [InlineData(40)]
    public void Sharp_edges_give_the_series_to_rounding(double ratio)
    {
        double sum = 0;
        for (int n = 19_999; n > 0; n -= 2)
            sum += Math.Tanh(n * Math.PI * ratio / 2) / Math.Pow(n, 5);

        double expected = ratio / 3 - 64 / Math.Pow(Math.PI, 5) * sum;

        Assert.Equal(1, RectangleTorsion.Constant(ratio, 1, 0) / expected, tolerance: 2e-15);
    }

    /// <summary>
    /// The bounds are the theorems of two energy principles, evaluated by Ritz's method with a general library
    /// (<see cref="TorsionBounds"/>). They lie closer together than the gap stated here, mostly below 1e-7 of J; for
    /// edges next to sharp that is closer than the accuracy claimed, which is then allowed for.
    /// </summary>
    [Theory, Trait("basis", "independent")]
    [InlineData(1, 2e-7)]
    [InlineData(1.4, 2e-7)]
    [InlineData(3, 6e-7)]
    public void Rounded_edges_lie_between_the_bounds_of_the_two_energy_principles(double ratio, double gap)
    {
        foreach (double radius in (double[])[0.002, 0.01, 0.05, 0.1, 0.2, 0.35, 0.45, 0.499])
        {
            (double lower, double upper) = TorsionBounds.Of(ratio, 1, radius);

            double constant = RectangleTorsion.Constant(1, ratio, radius);

            double claimed = radius < 0.01 ? 1e-7 * constant : 0;
            Assert.InRange(constant, lower - claimed, upper + claimed);
            Assert.InRange((upper - lower) / constant, 0, gap);
        }
    }

    /// <summary>The accuracy that <see cref="RectangleTorsion"/> claims, against twice as many points and neither of
    /// the short cuts. The finer rule itself is good to 2e-9 next to sharp edges and to rounding elsewhere.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData(0.05, 4, 5e-10)]
    [InlineData(0.01, 4, 5e-9)]
    [InlineData(1e-5, 6, 1e-7)]
    public void Rounded_edges_are_as_accurate_as_claimed(double smallestRadius, double largestRatio, double accuracy)
    {
        double[] radii = [1e-5, 1e-3, 0.00199, 0.00201, 0.003, 0.005, 0.01, 0.02, 0.05, 0.1, 0.25, 0.45, 0.49, 0.4999,
            0.5 - 1e-9, Math.BitDecrement(0.5)];
        (double[] Points, double[] Weights) rule = GaussRule.Legendre(32);

        foreach (double ratio in ((double[])[1, 1.05, 1.4, 2, 4, 5, 6]).Where(x => x <= largestRatio))
        {
            foreach (double radius in radii.Where(x => x >= smallestRadius))
            {
                var outline = new RoundedOutline(ratio / 2, 0.5, radius, rule);
                double fine = RectangleTorsion.RoundedEdges(outline, ratio, radius);

                double constant = RectangleTorsion.Constant(ratio, 1, radius);

                Assert.Equal(1, constant / fine, tolerance: accuracy);
            }
        }
    }

    /// <summary>Closed form: the limit is a circle of diameter d, J = π d⁴ / 32. A square 1e-10 short of it
    /// differs by as little.</summary>
    [Fact, Trait("basis", "independent")]
    public void A_square_rounded_to_the_limit_is_a_round_wire()
    {
        double round = Section.Round(0.5).Torsion;

        Assert.Equal(1, RectangleTorsion.Constant(0.5, 0.5, Math.BitDecrement(0.25)) / round, tolerance: 1e-13);
        Assert.Equal(1, RectangleTorsion.Constant(0.5, 0.5, 0.25 - 1e-10) / round, tolerance: 1e-8);
    }

    [Theory, Trait("basis", "law")]
    [InlineData(1)]
    [InlineData(1.5)]
    [InlineData(7)]
    public void Without_rounding_and_with_hardly_any_the_constant_is_the_same(double ratio)
    {
        double sharp = RectangleTorsion.Constant(1, ratio, 0);

        // rounding takes away about r⁴
        Assert.Equal(1, RectangleTorsion.Constant(1, ratio, 1e-9) / sharp, tolerance: 1e-15);
        Assert.Equal(1, RectangleTorsion.Constant(1, ratio, 0.0021) / sharp, tolerance: 1e-7);
    }

    /// <summary>The section within a section is the more flexible in torsion, the larger one the stiffer (J grows with
    /// the domain: the trial functions of Prandtl's principle for the smaller one serve for the larger).</summary>
    [Fact, Trait("basis", "law")]
    public void More_rounding_never_stiffens_and_more_metal_never_softens() =>
        Gen.Select(Gen.Double[0.2, 0.8], Gen.Double[0.2, 0.8], Gen.Double[0.005, 0.98], Gen.Double[0.005, 0.98])
            .Sample((thickness, width, one, other) =>
            {
                double half = Math.Min(thickness, width) / 2;
                (double less, double more) = (Math.Min(one, other) * half, Math.Max(one, other) * half);
                double constant = RectangleTorsion.Constant(thickness, width, less);

                return RectangleTorsion.Constant(thickness, width, more) <= constant * (1 + 1e-7)
                    && RectangleTorsion.Constant(thickness * 1.001, width, less) > constant
                    && RectangleTorsion.Constant(thickness, width * 1.001, less) > constant;
            });

    /// <summary>
    /// J ≤ A²/(2π), with equality for the circle alone: conjectured by Saint-Venant, proved by G. Pólya, "Torsional
    /// rigidity, principal frequency, electrostatic capacity and symmetrization", Q. Appl. Math. 6 (1948) 267–277 (from
    /// memory); and J ≤ ∫ x² + y² dA, the warping principle without warping.
    /// </summary>
    [Fact, Trait("basis", "law")]
    public void No_section_is_stiffer_in_torsion_than_the_circle_of_its_area_or_its_own_polar_moment() =>
        Gen.Select(Gen.Double[0.2, 0.8], Gen.Double[0.2, 0.8], Gen.Double[0, 0.999])
            .Sample((thickness, width, rounding) =>
            {
                var wire = Section.Rectangular(thickness, width, rounding * Math.Min(thickness, width) / 2);

                return wire.Torsion < wire.Area * wire.Area / (2 * Math.PI)
                    && wire.Torsion < wire.BendingOverThickness + wire.BendingOverWidth;
            });

    [Fact, Trait("basis", "law")]
    public void Lying_or_standing_it_is_the_same_and_it_grows_with_the_fourth_power_of_the_size() =>
        Gen.Select(Gen.Double[0.1, 2], Gen.Double[0.1, 2], Gen.Double[0.01, 0.999], Gen.Double[0.01, 100])
            .Sample((thickness, width, rounding, scale) =>
            {
                double radius = rounding * Math.Min(thickness, width) / 2;
                double constant = RectangleTorsion.Constant(thickness, width, radius);
                double turned = RectangleTorsion.Constant(width, thickness, radius);
                double scaled = RectangleTorsion.Constant(thickness * scale, width * scale, radius * scale);

                Assert.Equal(constant, turned);
                Assert.Equal(1, scaled / (constant * Math.Pow(scale, 4)), tolerance: 1e-12);
            });

    /// <summary>The fastest of fifty, so that a busy machine does not matter; an unoptimised build stays below it
    /// too.</summary>
    [Fact, Trait("basis", "ours")]
    public void It_takes_less_than_two_milliseconds()
    {
        var fastest = TimeSpan.MaxValue;
        for (int i = 0; i < 50; i++)
        {
            long start = Stopwatch.GetTimestamp();
            RectangleTorsion.Constant(0.4826, 0.635, 0.03 + i * 1e-4);
            TimeSpan taken = Stopwatch.GetElapsedTime(start);
            fastest = taken < fastest ? taken : fastest;
        }

        Assert.InRange(fastest, TimeSpan.Zero, TimeSpan.FromMilliseconds(2));
    }
}
