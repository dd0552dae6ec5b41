using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Mechanics.Tests.Numerics;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>
/// Small deflection: the closed forms of the Euler–Bernoulli beam (any handbook, such as W. C. Young, R. G. Budynas,
/// Roark's Formulas for Stress and Strain; from memory), found here by engaging a wire in slots that hold it.
/// </summary>
[Trait("basis", "published")]
public sealed class BeamFormulaTests
{
    private const double Young = 180_000;
    private const double Offset = 1e-3;
    private const double Length = 8;

    /// <summary>Held wires cannot slide, so an offset of 10⁻³ stretches them: EA d²/EI of it, 10⁻⁴ here.</summary>
    private const double Share = 1e-3;

    private static double Stiffness(double diameter) => Young * Math.PI * Math.Pow(diameter, 4) / 64;

    /// <summary>48 EI/L³ over a span of 10 mm; the figures in N/mm computed from the definition, four digits.</summary>
    [Theory]
    [InlineData(0.014, 6.782)]
    [InlineData(0.016, 11.569)]
    [InlineData(0.018, 18.531)]
    public void Three_point_stiffness(double inches, double newtonsPerMillimetre)
    {
        Vector3 force = Middle(
            inches * 25.4, StraightWire.Slot(-5, Hold.Point), StraightWire.Slot(0, Hold.Point, Offset),
            StraightWire.Slot(5, Hold.Point)).Force;

        Assert.Equal(-newtonsPerMillimetre, force.Y / Offset, tolerance: 1e-4 * newtonsPerMillimetre);
    }

    [Fact]
    public void Both_ends_clamped_resist_four_times_as_much_as_both_resting() => AssertForce(
        192, StraightWire.Slot(0, Hold.Clamped), StraightWire.Slot(Length / 2, Hold.Point, Offset),
        StraightWire.Slot(Length, Hold.Clamped));

    [Fact]
    public void A_cantilever_resists_three() => AssertForce(
        3, StraightWire.Slot(0, Hold.Clamped), StraightWire.Slot(Length, Hold.Point, Offset));

    [Fact]
    public void A_step_between_two_clamps_resists_twelve_with_moments_of_six()
    {
        SlotLoad[] loads = AssertForce(
            12, StraightWire.Slot(0, Hold.Clamped), StraightWire.Slot(Length, Hold.Clamped, Offset));

        double moment = 6 * Stiffness(0.4) * Offset / (Length * Length);
        Assert.All(loads, load => Assert.Equal(moment, Math.Abs(load.OnTooth.Moment.Z), tolerance: Share * moment));
    }

    [Fact]
    public void A_high_bracket_between_two_clamped_spans_resists_twice_that() => AssertForce(
        24, StraightWire.Slot(-Length, Hold.Clamped), StraightWire.Slot(0, Hold.Clamped, Offset),
        StraightWire.Slot(Length, Hold.Clamped));

    private static SlotLoad[] AssertForce(double factor, params ReadOnlySpan<Slot> slots)
    {
        EngagementResult result = StraightWire.Engage(StraightWire.Of(Young, 0.4, slots));
        double expected = factor * Stiffness(0.4) * Offset / Math.Pow(Length, 3);
        double force = result.Slots[slots.Length / 2].OnTooth.Force.Y;
        Assert.Equal(-expected, force, tolerance: Share * expected);
        return [.. result.Slots];
    }

    private static Wrench Middle(double diameter, params ReadOnlySpan<Slot> slots) =>
        StraightWire.Engage(StraightWire.Of(Young, diameter, slots)).Slots[slots.Length / 2].OnTooth;
}
