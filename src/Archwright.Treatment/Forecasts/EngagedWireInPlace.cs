using System.Collections.Immutable;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Treatment.Forecasts;

/// <summary>A wire engaged by the solver, with its history if its alloy has one.</summary>
/// <remarks>Every try starts from what was kept last: the try before is undone first, so that an alloy with memory
/// sees one road and not the solver's attempts.</remarks>
internal sealed class EngagedWireInPlace : IWireInPlace, IDisposable
{
    // Coarser than usual between the slots, where teeth come out within a hundredth of their way all the same. Along a
    // slot three elements are the fewest: with two, a wire that is nearly spent found two rests at the same places, and
    // no step from one to the other.
    private static readonly EngagementOptions Coarse = new() { ElementsPerGap = 2, ElementsPerSlot = 3 };

    private readonly EngagementOptions _mesh;
    private readonly ImmutableArray<SlotFrame> _today;
    private readonly bool _remembers;
    private readonly ImmutableArray<Tie> _ties;
    private readonly bool _fades;
    private Engager _engager;
    private bool _tried;

    /// <param name="arrangement">Wire and slots as they stand today.</param>
    /// <param name="fitted">Where the slots stood when the wire was fitted; null when that is today.</param>
    /// <param name="mesh">How fine; null for what forecasts usually take.</param>
    public EngagedWireInPlace(
        Arrangement arrangement, ImmutableArray<SlotFrame>? fitted, EngagementOptions? mesh = null)
    {
        _mesh = mesh ?? Coarse;
        _today = [.. arrangement.Slots.Select(slot => slot.Actual)];
        _ties = [.. arrangement.Slots.Select(slot => slot.Tie)];
        _fades = _ties.Any(tie => tie.Loss > 0);
        _remembers = arrangement.Wire.Alloy is not LinearElastic;
        _engager = new Engager(
            fitted is { } then && _remembers ? arrangement.At(then) : arrangement, _mesh);
    }

    public void Dispose() => _engager.Dispose();

    public EngagementResult Engage(CancellationToken cancellation)
    {
        EngagementResult result = _engager.Engage(cancellation);
        return result.Converged && !_engager.Arrangement.Slots.Select(slot => slot.Actual).SequenceEqual(_today)
            ? _engager.Apply(StepTo(_today.AsSpan()), cancellation)
            : result;
    }

    public void GoTo(double day)
    {
        if (!_fades)
            return;

        TakeBack();
        _engager.Retie([.. _ties.Select(tie => tie.After(day))]);
    }

    public EngagementResult MoveTo(ReadOnlySpan<SlotFrame> places, CancellationToken cancellation)
    {
        TakeBack();
        EngagementResult result = _engager.Apply(StepTo(places), cancellation);
        _tried = result.Converged;
        if (result.Converged || _remembers)
            return result;

        // Without memory there is another road: from nothing, at the new places.
        Arrangement placed = _engager.Arrangement.At(places.ToArray());
        _engager.Dispose();
        _engager = new Engager(placed, _mesh);
        return _engager.Engage(cancellation);
    }

    public void ReadStiffness(Span<double> stiffness)
    {
        if (!_engager.TryTouchedStiffness(stiffness))
            ReadHeldStiffness(stiffness);
    }

    public void ReadHeldStiffness(Span<double> stiffness)
    {
        Arrangement arrangement = _engager.Arrangement;
        BeamChain.Stiffness(arrangement, [.. arrangement.Slots.Select(slot => slot.Actual)]).CopyTo(stiffness);
    }

    public bool TryForesee(
        ReadOnlySpan<double> motions, IGivingSlots teeth, Span<double> stiffness, Span<Wrench> loads) =>
        _engager.TryForesee(motions, teeth, stiffness, loads);

    public void Keep() => _tried = false;

    public void TakeBack()
    {
        if (_tried)
            _engager.Undo();
        _tried = false;
    }

    private static Step StepTo(ReadOnlySpan<SlotFrame> places) =>
        new(null, [.. places.ToArray().Select((place, i) => (i, place))]);
}
