using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;

namespace Archwright.Dentition.Comparison;

/// <summary>A wire that was engaged, and can be relieved from there: the teeth come along their way toward rest, and
/// the wire unloads with its history. For one thread.</summary>
internal interface IEngagedWire : IDisposable
{
    /// <summary>On engagement.</summary>
    EngagementResult Result { get; }

    /// <summary>Once every displaced slot has come a share of its whole way toward rest. To be asked in rising order:
    /// a wire with memory does not go back.</summary>
    /// <param name="share">Share of the way, from 0 (as engaged) to 1 (at rest).</param>
    /// <param name="cancellation">Gives up.</param>
    EngagementResult RelievedBy(double share, CancellationToken cancellation);
}

/// <summary>The wire of the mechanics.</summary>
internal sealed class EngagedWire : IEngagedWire
{
    // A wire with memory that is not engaged from its guessed shape is seldom engaged along the path from rest, and
    // that takes a second or two, while the clinician waits for a hundred wires.
    private static readonly EngagementOptions WithMemory = new() { MostIterations = 100 };

    private readonly Arrangement arrangement;
    // The elastic wire that all of the section start from.
    private readonly EngagedWire? first;
    private readonly Engager engager;
    private readonly Dictionary<double, EngagedWire> relieved = [];

    /// <summary>Engages a wire.</summary>
    /// <param name="arrangement">The arch with the wire.</param>
    /// <param name="near">An elastic wire of the same section, engaged in the same slots and not relieved: where to
    /// start. Null for a wire alone.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">The arrangement is impossible.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public EngagedWire(Arrangement arrangement, IEngagedWire? near, CancellationToken cancellation)
    {
        this.arrangement = arrangement;
        var known = near as EngagedWire;
        first = known?.first ?? known;
        engager = new Engager(
            arrangement, arrangement.Wire.Alloy is LinearElastic ? EngagementOptions.Default : WithMemory);
        Result = known is { Result.Converged: true }
            ? engager.EngageFrom(known.engager, cancellation)
            : engager.Engage(cancellation);
    }

    /// <inheritdoc/>
    public EngagementResult Result { get; }

    /// <inheritdoc/>
    public void Dispose()
    {
        engager.Dispose();
        foreach (EngagedWire other in relieved.Values)
            other.Dispose();
    }

    // Without memory and friction the way does not matter, and a wire is engaged faster where the teeth have come to
    // than it follows them there. One with memory follows, but need not look for the shape.
    /// <inheritdoc/>
    public EngagementResult RelievedBy(double share, CancellationToken cancellation)
    {
        Step step = Engager.Relieving(arrangement, share);
        if (first is null || Rubs)
            return engager.Apply(step, cancellation);

        EngagedWire elastic = first.RelievedTo(share, cancellation);
        if (arrangement.Wire.Alloy is not LinearElastic)
            return engager.ApplyFrom(step, elastic.engager, cancellation);

        using var there = new EngagedWire(Relieved(share), elastic, cancellation);
        return there.Result;
    }

    private bool Rubs => arrangement.Slots.Any(slot => slot.Friction > 0);

    private EngagedWire RelievedTo(double share, CancellationToken cancellation)
    {
        if (!relieved.TryGetValue(share, out EngagedWire? there))
            relieved[share] = there = new EngagedWire(Relieved(share), near: null, cancellation);

        return there;
    }

    private Arrangement Relieved(double share) => arrangement.At(WorkingFigures.Places(arrangement, share));
}
