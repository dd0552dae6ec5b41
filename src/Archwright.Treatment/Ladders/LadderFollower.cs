using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;

namespace Archwright.Treatment.Ladders;

/// <summary>A wire of a sequence as it was worn by one patient.</summary>
/// <param name="Fit">As it went in.</param>
/// <param name="Visit">At which visit, 0 being today.</param>
/// <param name="Week">In which week.</param>
/// <param name="Interval">Weeks from visit to visit while it is in; 0 for the last.</param>
/// <param name="Arch">The arch when it went in.</param>
/// <param name="Waited">Visits since the first at which it might have gone in: the wire before stayed on
/// purpose.</param>
internal sealed record WornWire(LadderFit Fit, int Visit, int Week, int Interval, ILadderArch Arch, int Waited = 0);

/// <summary>A sequence in one patient.</summary>
/// <param name="Wires">The wires that went in.</param>
/// <param name="Stop">Why the next could not; null where the last is in.</param>
internal sealed record FollowedSequence(ImmutableArray<WornWire> Wires, string? Stop)
{
    /// <summary>The wire that could not go in, and the arch where it was tried; null where the last is in, or visits
    /// ran out.</summary>
    public (LadderFit Fit, ILadderArch Arch)? Refused { get; init; }

    public bool IsWhole => Stop is null;
}

/// <summary>Takes a given sequence through the visits of one patient.</summary>
/// <remarks>Each wire goes in at the first visit at which the mechanics lets it: it goes in, takes no set and keeps
/// to the ceilings. Where the wire in place is spent and the next still bends for good or passes a ceiling, the
/// clinician's own sequence goes on all the same and says so; others end there. Rules that waiting does not change,
/// such as the length of a step, are told and do not hold a sequence up. Where a gentle ladder is followed, a wire that
/// may go in is waited for until its comfort index is low enough, or nothing changes any more.</remarks>
internal static class LadderFollower
{
    /// <summary>Follows a sequence.</summary>
    /// <param name="space">Arch and rules.</param>
    /// <param name="first">The first wire as it goes in today, or is in place.</param>
    /// <param name="others">The wires after it.</param>
    /// <param name="rate">Of the patient.</param>
    /// <param name="insists">Whether a wire that goes in goes in, whatever else speaks against it.</param>
    /// <param name="gentlerThan">Comfort index below which a wire is waited for.</param>
    public static FollowedSequence Follow(
        LadderSpace space, LadderFit first, IReadOnlyList<CatalogueWire> others, double rate, bool insists,
        double gentlerThan = double.PositiveInfinity)
    {
        if (!CanGoIn(first, insists))
            return new FollowedSequence([], Refused(first)) { Refused = (first, space.Today) };

        var worn = ImmutableArray.CreateBuilder<WornWire>();
        ILadderArch arch = space.Today;
        LadderFit fit = first;
        int visit = 0;
        int week = 0;
        int waited = 0;
        foreach (CatalogueWire next in others)
        {
            ILadderCourse course = arch.Wear(fit);
            worn.Add(new WornWire(fit, visit, week, course.Interval, arch, waited));
            (int looks, LadderFit found, ILadderArch there, waited) = Change(
                space, course, fit, next, rate, gentlerThan);
            if (visit + looks > space.MostVisits)
            {
                return new FollowedSequence(
                    worn.ToImmutable(),
                    FormattableString.Invariant($"{next.Id} would go in after more than {space.MostVisits} visits."));
            }

            if (!CanGoIn(found, insists))
                return new FollowedSequence(worn.ToImmutable(), Refused(found)) { Refused = (found, there) };

            visit += looks;
            week += looks * course.Interval;
            fit = found;
            arch = there;
        }

        worn.Add(new WornWire(fit, visit, week, 0, arch, waited));
        return new FollowedSequence(worn.ToImmutable(), null);
    }

    // The first visit at which it may go in and is gentle enough, or the last at which anything changes.
    private static (int Looks, LadderFit Fit, ILadderArch Arch, int Waited) Change(
        LadderSpace space, ILadderCourse course, LadderFit present, CatalogueWire next, double rate,
        double gentlerThan)
    {
        int? might = null;
        for (int look = 1; ; look++)
        {
            space.Cancellation.ThrowIfCancellationRequested();
            ILadderArch arch = course.At(look, rate);
            LadderFit fit = arch.Fit(next, present, space.Rules);
            if (!fit.IsRuledOut)
                might ??= look;
            bool goesIn = !fit.IsRuledOut && fit.ComfortIndex < gentlerThan;
            if (goesIn || course.IsLast(look, rate) || look > space.MostVisits)
                return (look, fit, arch, look - (might ?? look));
        }
    }

    private static bool CanGoIn(LadderFit fit, bool insists) =>
        !fit.IsRuledOut || fit.Figures.IsPresent || insists && fit.Figures.Engaged;

    private static string Refused(LadderFit fit) => $"{fit.Wire.Id}: {fit.Against[0].Sentence}";
}
