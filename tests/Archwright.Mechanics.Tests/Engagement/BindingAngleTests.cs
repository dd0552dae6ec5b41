using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>A straight wire through a slot that is tipped: it passes untouched up to the critical contact angle, and
/// touches the two ends of the slot beyond. R. P. Kusy, J. Q. Whitley, J. Biomed. Mater. Res. 2000: H cos θ − W sin θ =
/// d (found: scribd.com/document/712574363). Found by solving; the formula is used for nothing but the
/// comparison.</summary>
[Trait("basis", "published")]
public sealed class BindingAngleTests
{
    private const double Mil = 0.0254;

    [Theory]
    [InlineData(14, 22, 140)]
    [InlineData(16, 22, 140)]
    [InlineData(18, 22, 140)]
    [InlineData(16, 18, 100)]
    public void Beyond_the_critical_angle_both_edges_touch(double wire, double slot, double width)
    {
        double critical = ContactAngle.CriticalContactAngle(slot * Mil, width * Mil, wire * Mil);

        SlotLoad below = Tipped(wire, slot, width, 0.97 * critical);
        SlotLoad above = Tipped(wire, slot, width, 1.03 * critical);

        // The model takes the section's half height across the slot, not aslant: a share θ²/2 of d, 2 % of the angle at
        // most.
        Assert.Equal(ContactState.None, below.Contact);
        Assert.Equal(0, below.OnTooth.Moment.Length, tolerance: 1e-5);
        Assert.Equal(ContactState.BothEdges, above.Contact);
        Assert.True(above.OnTooth.Moment.Z < -0.01, $"{above.OnTooth.Moment}");
    }

    [Theory]
    [InlineData(14, 22, 140)]
    [InlineData(16, 22, 140)]
    [InlineData(18, 22, 140)]
    [InlineData(16, 18, 100)]
    public void The_moment_rises_in_proportion_to_the_angle_beyond_the_critical_one(
        double wire, double slot, double width)
    {
        double critical = ContactAngle.CriticalContactAngle(slot * Mil, width * Mil, wire * Mil);
        double first = Tipped(wire, slot, width, critical + 0.002).OnTooth.Moment.Z;
        double second = Tipped(wire, slot, width, critical + 0.004).OnTooth.Moment.Z;

        double root = critical + 0.002 - 0.002 * first / (second - first);

        // 0.02°: printed digits of the source's angles are 0.01°.
        Assert.Equal(critical * 180 / Math.PI, root * 180 / Math.PI, tolerance: 0.02);
    }

    private static SlotLoad Tipped(double wire, double slot, double width, double angle) =>
        StraightWire.Engage(StraightWire.Of(
            200_000, wire * Mil, StraightWire.Slot(-15, Hold.Point),
            StraightWire.Slot(0, Hold.Walls, turn: angle) with
            {
                Width = width * Mil, Height = slot * Mil, Depth = slot * Mil,
            },
            StraightWire.Slot(15, Hold.Point))).Slots[1];
}
