using System.Collections.Immutable;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Benchmarks;

/// <summary>One wire in one arch, and a small motion of the slots for the warm solve.</summary>
/// <param name="Name">What the table calls it.</param>
/// <param name="Arrangement">Wire and slots.</param>
internal sealed record Problem(string Name, Arrangement Arrangement)
{
    /// <summary>Share of every slot's way home that the warm solve goes, there and back: about what teeth move in a day
    /// or two, and one step of a forecast.</summary>
    private const double WarmShare = 0.02;

    /// <summary>Two steps in turn: every displaced slot a little nearer to rest, and back again.</summary>
    public (Step Near, Step Back) WarmSteps()
    {
        ImmutableArray<Slot> slots = Arrangement.Slots;
        var moved = slots.Index().Where(entry => entry.Item.Actual != entry.Item.Rest).ToArray();
        return (
            new Step(null, [.. moved.Select(entry => (entry.Index, Nearer(entry.Item)))]),
            new Step(null, [.. moved.Select(entry => (entry.Index, entry.Item.Actual))]));
    }

    private static SlotFrame Nearer(Slot slot)
    {
        Vector3 home = slot.Rest.Centre - slot.Actual.Centre;
        return SlotFrame.Create(
            slot.Actual.Centre + home * WarmShare,
            slot.Actual.Along * (1 - WarmShare) + slot.Rest.Along * WarmShare,
            slot.Actual.Outward * (1 - WarmShare) + slot.Rest.Outward * WarmShare);
    }
}
