using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Treatment.Forecasts;

/// <summary>A wire without memory: its loads depend on where the slots are, not on how they came there.</summary>
internal sealed class ElasticWireInPlace(Arrangement arrangement) : IWireInPlace
{
    private Engager _engager = new(arrangement);

    public EngagementResult Engage(CancellationToken cancellation) => _engager.Engage(cancellation);

    // Warm from the last solution; where that road is blocked, from nothing at the new places.
    public EngagementResult MoveTo(ReadOnlySpan<SlotFrame> places, CancellationToken cancellation)
    {
        EngagementResult warm = _engager.Apply(
            new Step(null, [.. places.ToArray().Select((place, i) => (i, place))]), cancellation);
        if (warm.Converged)
            return warm;

        Arrangement there = _engager.Arrangement;
        SlotFrame[] wanted = places.ToArray();
        _engager = new Engager(there with
        {
            Slots = [.. there.Slots.Select((slot, i) => slot with { Actual = wanted[i] })],
        });
        return _engager.Engage(cancellation);
    }

    public double[] TangentStiffness() => BeamChain.Stiffness(
        _engager.Arrangement, [.. _engager.Arrangement.Slots.Select(slot => slot.Actual)]);

    public void Keep()
    {
    }

    // Nothing is remembered, so there is nothing to take back: the next move starts from wherever it stands.
    public void TakeBack()
    {
    }
}
