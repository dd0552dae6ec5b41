using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>Bench set-ups: a straight round wire along x in slots that stand along it, y outward.</summary>
internal static class StraightWire
{
    public static readonly EngagementOptions Refined = new() { ElementsPerGap = 16, ElementsPerSlot = 8 };

    /// <summary>Moved out of its rest place by <paramref name="y"/>, and turned about z by <paramref
    /// name="turn"/>.</summary>
    public static Slot Slot(double x, Hold hold, double y = 0, double turn = 0, double along = 0)
    {
        var rest = SlotFrame.Create(new Vector3(x, 0, 0), new Vector3(1, 0, 0), new Vector3(0, 1, 0));
        return new Slot
        {
            Label = $"{x:0.###}",
            Rest = rest,
            Actual = rest.Moved(new Vector3(along, y, 0), new Vector3(0, 0, turn)),
            Width = 1,
            Height = 0.5,
            Depth = 0.5,
            Hold = hold,
        };
    }

    public static Arrangement Of(double young, double diameter, params ReadOnlySpan<Slot> slots) => new()
    {
        Wire = new Wire(Section.Round(diameter), new LinearElastic(young, 0.3)),
        Rest = new RestShape.Straight(),
        Slots = [.. slots],
    };

    public static EngagementResult Engage(Arrangement arrangement, EngagementOptions? options = null)
    {
        EngagementResult result = new Engager(arrangement, options).Engage();
        Assert.True(result.Converged, result.Obstacle?.Reason);
        return result;
    }
}
