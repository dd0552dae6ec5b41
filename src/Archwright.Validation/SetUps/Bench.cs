using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Validation.SetUps;

/// <summary>A straight wire along x in slots that stand along it, y outward.</summary>
internal static class Bench
{
    /// <summary>A slot at <paramref name="x"/>, moved by <paramref name="y"/>, turned about the third axis.</summary>
    public static Slot Slot(double x, Hold hold, double y = 0, double turn = 0, double along = 0)
    {
        SlotFrame rest = SlotFrame.Create(new Vector3(x, 0, 0), new Vector3(1, 0, 0), new Vector3(0, 1, 0));
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

    /// <summary>A round elastic wire.</summary>
    public static Wire Round(double young, double diameter) =>
        new(Section.Round(diameter), new LinearElastic(young, 0.3));

    /// <summary>Engages a straight wire.</summary>
    /// <exception cref="InvalidOperationException">No equilibrium was found.</exception>
    public static EngagementResult Engage(Wire wire, params ReadOnlySpan<Slot> slots) =>
        Checked(new Engager(new Arrangement { Wire = wire, Rest = new RestShape.Straight(), Slots = [.. slots] })
            .Engage());

    /// <summary>A result that has converged.</summary>
    /// <exception cref="InvalidOperationException">It has not.</exception>
    public static EngagementResult Checked(EngagementResult result) => result.Converged
        ? result
        : throw new InvalidOperationException("No equilibrium. " + result.Obstacle?.Reason);
}
