using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Ladders;

/// <summary>What one search shares with all arches it makes.</summary>
internal sealed class LadderRun
{
    private int _followed;

    public required VisitPolicy Policy { get; init; }

    /// <summary>Rate of the usual patient, for whom intervals are arranged.</summary>
    public required double UsualRate { get; init; }

    /// <summary>How long the wire in place has been in [weeks].</summary>
    public double WeeksInPlace { get; init; }

    public CancellationToken Cancellation { get; init; }

    public IProgress<LadderProgress>? Progress { get; init; }

    /// <summary>Forecasts made so far.</summary>
    public int Forecasts => Volatile.Read(ref _followed);

    /// <summary>Counts a forecast.</summary>
    public void Followed()
    {
        int followed = Interlocked.Increment(ref _followed);
        Progress?.Report(new LadderProgress(followed));
    }
}

/// <summary>How far the search for ladders has come.</summary>
/// <param name="Followed">Wires followed from visit to visit.</param>
public readonly record struct LadderProgress(int Followed);
