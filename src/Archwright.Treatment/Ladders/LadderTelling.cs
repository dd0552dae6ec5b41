using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Ladders;

/// <summary>From a sequence of wires to an answer: followed in the usual patient and among patients.</summary>
internal sealed class LadderTelling(
    LadderSpace space, LadderRules plain, LadderPatients patients, ImmutableArray<ToothNumber> teeth,
    WirePrices? prices)
{
    /// <summary>The answer of a sequence.</summary>
    /// <param name="kind">What it is good for.</param>
    /// <param name="first">The first wire as it goes in, or is in place.</param>
    /// <param name="others">The wires after it.</param>
    /// <param name="insists">Whether a wire that goes in goes in, whatever else speaks against it.</param>
    /// <param name="gentlerThan">Comfort index below which a wire is waited for.</param>
    public LadderAnswer Of(
        LadderKind kind, LadderFit first, IReadOnlyList<CatalogueWire> others, bool insists = false,
        double gentlerThan = double.PositiveInfinity)
    {
        FollowedSequence usual = LadderFollower.Follow(space, first, others, space.Rate, insists, gentlerThan);
        ImmutableArray<FollowedSequence> all = patients.Follow(space, first, others, insists, gentlerThan);
        ImmutableArray<LadderStep> steps = [.. usual.Wires.Select((_, i) => Step(i, usual, all))];
        LadderStep[] fresh = [.. steps.Where(step => !step.IsInPlace)];
        return new LadderAnswer
        {
            Kind = kind,
            Steps = steps,
            Stop = usual.Stop,
            Visits = patients.Range(all.Select(one => one.IsWhole ? one.Wires[^1].Visit : double.PositiveInfinity)),
            TotalWeeks = patients.Range(all.Select(one => one.IsWhole ? one.Wires[^1].Week : double.PositiveInfinity)),
            ComfortIndex = fresh.Length == 0 ? 0 : fresh.Max(step => step.ComfortIndex),
            LargestForce = fresh.Length == 0 ? 0 : fresh.Max(step => step.Figures.LargestForce),
            Cost = prices is null || fresh.Any(step => step.Price is null) ? null : fresh.Sum(step => step.Price),
        };
    }

    private LadderStep Step(int i, FollowedSequence usual, ImmutableArray<FollowedSequence> all)
    {
        WornWire worn = usual.Wires[i];
        LadderFit fit = worn.Fit;
        bool isInPlace = fit.Figures.IsPresent;
        bool isLast = i == usual.Wires.Length - 1;
        LadderFit? before = i == 0 ? space.Present : usual.Wires[i - 1].Fit;
        return new LadderStep
        {
            Wire = fit.Wire,
            IsInPlace = isInPlace,
            AtVisit = worn.Visit,
            Waited = worn.Waited,
            FromWeek = patients.Range(all.Select(one => From(one, i))),
            Weeks = isLast ? Percentiles.Exactly(0)
                : patients.Range(all.Select(one => From(one, i + 1) - (one.Wires.Length > i ? one.Wires[i].Week : 0))),
            Interval = isLast ? 0 : worn.Interval,
            Figures = fit.Figures,
            LargestForceTooth = fit.Figures.LargestForceSlot >= 0 ? teeth[fit.Figures.LargestForceSlot] : null,
            ComfortIndex = fit.ComfortIndex,
            PartialTies = [.. fit.Figures.TiedAtDistance.Select(slot => teeth[slot])],
            Twins = Twins(fit),
            Against = worn.Arch.Judge(fit.Figures, before, plain).Against,
            Price = isInPlace ? 0 : prices?.Of(fit.Wire),
        };
    }

    private static double From(FollowedSequence one, int i) =>
        one.Wires.Length > i ? one.Wires[i].Week : double.PositiveInfinity;

    // Where the elastic answer holds, wires of one modulus and section are the same wire.
    private ImmutableArray<CatalogueWire> Twins(LadderFit fit)
    {
        if (fit.Figures.IsWholeLaw || fit.Figures.IsUpperBound)
            return [];

        LadderWire? one = space.Wires.FirstOrDefault(wire =>
            wire.Wire.Id == fit.Wire.Id || wire.Twins.Any(twin => twin.Id == fit.Wire.Id));
        return one is null ? [] : [.. one.Twins.Prepend(one.Wire).Where(wire => wire.Id != fit.Wire.Id)];
    }
}
