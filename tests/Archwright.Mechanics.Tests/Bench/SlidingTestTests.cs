using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Bench;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Tests.Bench;

/// <summary>A tipped bracket on a straight wire. Rests on the beam formula and on what cannot be otherwise.</summary>
public sealed class SlidingTestTests
{
    private const double Young = 180_000;

    [Fact, Trait("basis", "law")]
    public void Below_the_critical_tip_the_edges_do_not_press_and_beyond_it_they_press_harder_and_harder()
    {
        SlidingTest test = Steel(0.4064);
        double critical = test.CriticalTip;

        Assert.Equal(0, test.EdgeForces(0), 1e-6);
        Assert.Equal(0, test.EdgeForces(0.95 * critical), 1e-6);
        Assert.True(test.EdgeForces(1.3 * critical) > 0.01);
        Assert.True(test.EdgeForces(1.6 * critical) > test.EdgeForces(1.3 * critical));
        Assert.Equal(test.EdgeForces(1.5 * critical), test.EdgeForces(-1.5 * critical), 1e-6);
    }

    /// <summary>The wire turns about the middle of the bracket, so each half is a beam on two supports, from there to
    /// the neighbour at a = b + L, pressed by an edge at b = W/2. Its deflection there is P b² L²/(3 EI a), and it is
    /// b times the tip beyond the critical one: both edges together press with 6 EI a/(b L²) for each radian. Small
    /// tips: the rod is 1 % off at most.</summary>
    [Fact, Trait("basis", "independent")]
    public void Beyond_the_critical_tip_the_edges_press_as_the_beam_formula_says()
    {
        SlidingTest test = Steel(0.4064);
        (double less, double more) = (0.004, 0.012);
        double ei = Young * test.Wire.Section.BendingOverThickness;
        (double b, double l) = (test.BracketWidth / 2, test.Span);

        double slope = (test.EdgeForces(test.CriticalTip + more) - test.EdgeForces(test.CriticalTip + less))
            / (more - less);

        double formula = 6 * ei * (b + l) / (b * l * l);
        Assert.Equal(formula, slope, 0.01 * formula);
    }

    [Fact, Trait("basis", "law")]
    public void A_tip_out_of_range_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Steel(0.4064).EdgeForces(1));

    private static SlidingTest Steel(double diameter) => new()
    {
        Wire = new Wire(Section.Round(diameter), new LinearElastic(Young, 0.3)),
        SlotHeight = 0.5588,
        BracketWidth = 3.556,
        Span = 8,
        Temperature = 36,
    };
}
