using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Ladders;

/// <summary>The patients over whom a ladder is told: by chance, or a slow, a usual and a quick one.</summary>
internal sealed class LadderPatients(PatientRate rate, int draws, long seed)
{
    private readonly double[] _rates = draws == 0
        ? [rate.At(-Delivery.Ninetieth), rate.Median, rate.At(Delivery.Ninetieth)]
        : [.. Enumerable.Range(0, draws).Select(i => rate.At(new Chance(seed, i).Normal()))];

    /// <summary>The same sequence in each of them.</summary>
    public ImmutableArray<FollowedSequence> Follow(
        LadderSpace space, LadderFit first, IReadOnlyList<CatalogueWire> others, bool insists, double gentlerThan)
    {
        var found = new FollowedSequence[_rates.Length];
        LadderThreads.Each(space, found.Length, i =>
            found[i] = LadderFollower.Follow(space, first, others, _rates[i], insists, gentlerThan));
        return [.. found];
    }

    /// <summary>The range of a figure among them; three patients stand for themselves.</summary>
    public Percentiles Range(IEnumerable<double> figures)
    {
        double[] all = [.. figures.Order()];
        return draws == 0 ? new Percentiles(all[0], all[1], all[2]) : Percentiles.Of(all);
    }
}
