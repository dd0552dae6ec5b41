using Archwright.Mechanics.Sections;
using CsCheck;

namespace Archwright.Mechanics.Tests.Sections;

public sealed class TorquePlayTests
{
    /// <summary>
    /// Play in one direction from nominal sizes and edge radius, all in 0.001 in; degrees, printed to 0.1. The
    /// condition (h − 2r) cos α + (w − 2r) sin α + 2r = H is geometry; the values were computed from it by a separate
    /// program. </summary>
    [Theory, Trait("basis", "independent")]
    [InlineData(16, 22, 18, 5.4, 6.6)]
    [InlineData(17, 25, 18, 2.3, 2.8)]
    [InlineData(16, 22, 22, 17.9, 22.6)]
    [InlineData(17, 25, 22, 12.5, 15.0)]
    [InlineData(18, 25, 22, 9.8, 11.8)]
    [InlineData(19, 25, 22, 7.2, 8.7)]
    [InlineData(20, 25, 22, 4.7, 5.7)]
    [InlineData(21, 25, 22, 2.3, 2.8)]
    public void Play_of_the_usual_wires_and_slots(
        double thickness, double width, double slot, double sharp, double rounded)
    {
        const double Mil = 0.0254;

        double playSharp = Section.Rectangular(thickness * Mil, width * Mil).TorquePlay(slot * Mil);
        double playRounded = Section.Rectangular(thickness * Mil, width * Mil, 2 * Mil).TorquePlay(slot * Mil);

        Assert.Equal(sharp, double.RadiansToDegrees(playSharp), tolerance: 0.05);
        Assert.Equal(rounded, double.RadiansToDegrees(playRounded), tolerance: 0.05);
    }

    /// <summary>
    /// Measured sizes of wires and slots give 4.5° of torque loss for 0.020 × 0.025 in and 11.7° for 0.019 × 0.025
    /// in, both in the 0.022 in slot, the smallest and the largest of a survey: A. Joch, M. Pichelmayer, F. Weiland,
    /// "Bracket slot and archwire dimensions: manufacturing precision and third order clearance", J. Orthod. 2010
    /// (found, abstract: acemap.info/paper/75727371). Nominal sizes with edges between sharp and 0.003 in must fall
    /// between the two: real wires are a little thinner and real slots a little higher.
    /// </summary>
    [Theory, Trait("basis", "published")]
    [InlineData(20, 0)]
    [InlineData(20, 3)]
    [InlineData(19, 0)]
    [InlineData(19, 3)]
    public void Play_lies_within_the_survey_of_real_wires_and_slots(double thickness, double radius)
    {
        const double Mil = 0.0254;

        double play = Section.Rectangular(thickness * Mil, 25 * Mil, radius * Mil).TorquePlay(22 * Mil);

        Assert.InRange(double.RadiansToDegrees(play), 4.5, 11.7);
    }

    /// <summary>The wire is turned in small steps until it no longer fits.</summary>
    [Fact, Trait("basis", "independent")]
    public void Play_is_the_first_twist_at_which_the_wire_no_longer_fits() =>
        Gen.Select(Gen.Double[0.2, 0.8], Gen.Double[0.2, 0.8], Gen.Double[0, 0.999], Gen.Double[1, 2])
            .Sample((thickness, width, rounding, room) =>
            {
                var wire = Section.Rectangular(thickness, width, rounding * Math.Min(thickness, width) / 2);
                double slot = thickness * room;
                const double Step = 1e-4;
                double? first = null;
                for (double twist = 0; twist < Math.PI / 2 + Step && first is null; twist += Step)
                {
                    if (wire.HalfHeight(twist) > slot / 2 + 1e-12)
                        first = twist;
                }

                double play = wire.TorquePlay(slot);

                // a wire that only just does not pass may slip between two steps: the section needs at most
                // Step² / 8 of the diagonal less at a step than at the diagonal itself
                bool scarcely = wire.HalfHeight(Diagonal(wire)) - slot / 2 < 1e-8;
                return first is null
                    ? double.IsPositiveInfinity(play) || scarcely
                    : play <= first && (play >= first - Step - 1e-9 || scarcely);
            }, iter: 300);

    [Fact, Trait("basis", "law")]
    public void At_the_play_the_wire_touches_both_walls_and_before_it_does_not() =>
        Gen.Select(Gen.Double[0.2, 0.8], Gen.Double[0.2, 0.8], Gen.Double[0, 0.999], Gen.Double[0, 1])
            .Sample((thickness, width, rounding, share) =>
            {
                var wire = Section.Rectangular(thickness, width, rounding * Math.Min(thickness, width) / 2);
                double highest = 2 * wire.HalfHeight(Diagonal(wire));
                double slot = thickness + share * (highest - thickness) * (1 - 1e-9);

                double play = wire.TorquePlay(slot);

                Assert.InRange(play, 0, Diagonal(wire));
                Assert.Equal(slot / 2, wire.HalfHeight(play), tolerance: 1e-14);
                Assert.InRange(wire.HalfHeight(play * 0.99), 0, slot / 2 + 1e-15);
            });

    [Fact, Trait("basis", "law")]
    public void A_wire_that_fills_the_slot_has_no_play_at_all() =>
        Gen.Select(Gen.Double[0.2, 0.8], Gen.Double[0.2, 0.8], Gen.Double[0, 0.999])
            .Sample((thickness, width, rounding) =>
                Section.Rectangular(thickness, width, rounding * Math.Min(thickness, width) / 2)
                    .TorquePlay(thickness) == 0);

    /// <summary>Closed form for little room: the wire pivots about its flat side, φ ≈ clearance / (half width −
    /// radius). A difference of two angles would have lost half of the digits here.</summary>
    [Fact, Trait("basis", "law")]
    public void Tiny_clearance_gives_its_play_to_full_precision()
    {
        Section wire = Section.Rectangular(0.5, 0.625, 0.0625);
        double clearance = Math.ScaleB(1, -41);

        double play = wire.TorquePlay(0.5 + 2 * clearance);

        Assert.Equal(1, play / (clearance / 0.25), tolerance: 1e-11);
    }

    [Theory, Trait("basis", "law")]
    [InlineData(0.4, 0.6, 0)]
    [InlineData(0.4, 0.6, 0.1)]
    [InlineData(0.6, 0.4, 0.1)]
    [InlineData(0.4, 0.4, 0.05)]
    public void A_slot_that_the_diagonal_passes_never_locks_the_wire(double thickness, double width, double radius)
    {
        Section wire = Section.Rectangular(thickness, width, radius);
        double diagonal = 2 * radius + 2 * Math.Sqrt(
            Math.Pow(thickness / 2 - radius, 2) + Math.Pow(width / 2 - radius, 2));

        Assert.Equal(double.PositiveInfinity, wire.TorquePlay(diagonal * (1 + 1e-12)));
        Assert.InRange(wire.TorquePlay(diagonal * (1 - 1e-12)), 0, Math.PI / 2);
        Assert.Equal(double.PositiveInfinity, wire.TorquePlay(double.PositiveInfinity));
    }

    [Fact, Trait("basis", "law")]
    public void A_round_wire_never_locks()
    {
        Assert.Equal(double.PositiveInfinity, Section.Round(0.4).TorquePlay(0.4));
        Assert.Equal(double.PositiveInfinity, Section.Round(0.4).TorquePlay(0.5588));
    }

    [Theory, Trait("basis", "law")]
    [InlineData(0.39)]
    [InlineData(0)]
    [InlineData(double.NaN)]
    public void A_slot_lower_than_the_wire_is_refused(double slot)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Section.Rectangular(0.4, 0.5).TorquePlay(slot));
        Assert.Throws<ArgumentOutOfRangeException>(() => Section.Round(0.4).TorquePlay(slot));
    }

    // The twist at which the diagonal stands upright in the slot
    private static double Diagonal(Section wire) =>
        Math.Atan2(wire.Width / 2 - wire.EdgeRadius, wire.Thickness / 2 - wire.EdgeRadius);
}
