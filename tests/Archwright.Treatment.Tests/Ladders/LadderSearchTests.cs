using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Policies;
using Archwright.Treatment.Tests.Decisions;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Tests.Ladders;

/// <summary>Holds the search against every sequence of wires, followed one by one.</summary>
[Trait("basis", "independent")]
public sealed class LadderSearchTests
{
    private const int Most = 12;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void No_sequence_of_all_is_better_than_the_one_that_is_found(bool byWeeks)
    {
        int found = 0;
        for (int number = 0; number < 150; number++)
        {
            LadderSpace space = Space(number);
            FollowedSequence? best = Best(space, byWeeks, double.PositiveInfinity);
            LadderFinding finding = new LadderSearch(space, new LadderAim(byWeeks, Most), () => false).Run();

            Assert.True(finding.IsProven);
            Assert.Equal(best is null, finding.Path is null);
            if (best is null)
                continue;

            found++;
            Assert.True(
                Cost(best, byWeeks) == (byWeeks ? finding.Path!.Weeks : finding.Path!.Visits),
                $"arch {number}: {finding.Path.Key} in {finding.Path.Visits} visits and {finding.Path.Weeks} weeks; "
                + $"best {Cost(best, byWeeks)}: {string.Join(",", best.Wires.Select(one => one.Fit.Wire.Id))}");
        }

        Assert.InRange(found, 50, 149); // both outcomes are met
    }

    [Fact]
    public void Arches_taken_for_alike_never_lose_the_ladder_and_cost_one_visit_at_most()
    {
        int longer = 0;
        for (int number = 0; number < 150; number++)
        {
            LadderSpace space = Space(number, alike: 0.05);
            FollowedSequence? best = Best(space, byWeeks: false, double.PositiveInfinity);
            LadderPath? path = new LadderSearch(space, new LadderAim(false, Most), () => false).Run().Path;

            Assert.Equal(best is null, path is null);
            if (path is not null)
            {
                Assert.InRange(path.Visits, best!.Wires[^1].Visit, best.Wires[^1].Visit + 1);
                longer += path.Visits - best.Wires[^1].Visit;
            }
        }

        Assert.InRange(longer, 0, 15);
    }

    /// <summary>Held against every sequence with every choice of visits, waiting on purpose included.</summary>
    [Fact]
    public void A_gentler_one_is_found_wherever_there_is_one_however_long_it_has_to_wait()
    {
        int found = 0;
        int byWaiting = 0;
        for (int number = 0; number < 150; number++)
        {
            LadderSpace space = Space(number);
            if (new LadderSearch(space, new LadderAim(false, Most), () => false).Run().Path is not { } fewest)
                continue;

            double below = 0.85 * fewest.ComfortIndex;
            int most = fewest.Visits + 2;
            LadderPath? gentler = new LadderSearch(space, new LadderAim(false, most, below), () => false).Run().Path;
            (int Visits, int Weeks)? best = BestOfAllVisits(space, byWeeks: false, below, most);

            Assert.Equal(best?.Visits, gentler?.Visits);
            Assert.True(gentler is null || gentler.ComfortIndex < below);
            found += gentler is null ? 0 : 1;
            bool atOnce = Best(space, byWeeks: false, below) is { } first && first.Wires[^1].Visit <= most;
            byWaiting += gentler is not null && !atOnce ? 1 : 0;
        }

        Assert.InRange(found, 10, 140);
        Assert.InRange(byWaiting, 5, found); // without waiting these are lost
    }

    /// <summary>What is not looked at: waiting to be quicker. Measured against every sequence with every choice of
    /// visits.</summary>
    [Fact]
    public void Waiting_hardly_ever_makes_a_ladder_shorter()
    {
        int ladders = 0;
        int visitsSaved = 0;
        int weeksSaved = 0;
        for (int number = 0; number < 100; number++)
        {
            LadderSpace space = Space(number);
            if (new LadderSearch(space, new LadderAim(false, Most), () => false).Run().Path is not { } fewest)
                continue;

            LadderPath fastest = new LadderSearch(space, new LadderAim(true, Most), () => false).Run().Path!;
            (int Visits, int Weeks) visits = BestOfAllVisits(
                space, byWeeks: false, double.PositiveInfinity, fewest.Visits)!.Value; // the one found is among them
            (int Visits, int Weeks) weeks = BestOfAllVisits(
                space, byWeeks: true, double.PositiveInfinity, fastest.Visits + 1)!.Value;
            ladders++;
            visitsSaved += visits.Visits < fewest.Visits ? 1 : 0;
            weeksSaved += weeks.Weeks < fastest.Weeks ? 1 : 0;
        }

        Assert.True(ladders > 30);
        Assert.Equal(0, visitsSaved);
        Assert.InRange(weeksSaved, 0, 3); // 2 of 93: a shorter interval happens to fit
    }

    [Fact]
    public void A_gentle_ladder_that_waits_is_followed_with_the_same_waiting_and_says_how_long()
    {
        int waited = 0;
        for (int number = 0; number < 150; number++)
        {
            LadderSpace space = Space(number);
            if (new LadderSearch(space, new LadderAim(false, Most), () => false).Run().Path is not { } fewest)
                continue;

            var aim = new LadderAim(false, fewest.Visits + 2, 0.85 * fewest.ComfortIndex);
            if (new LadderSearch(space, aim, () => false).Run().Path is not { } path)
                continue;

            FollowedSequence followed = LadderFollower.Follow(
                space, path.Fits[0], [.. path.Fits.Skip(1).Select(fit => fit.Wire)], space.Rate, insists: false,
                path.GentlerThan);

            Assert.Null(followed.Stop);
            Assert.Equal((path.Visits, path.Weeks), (followed.Wires[^1].Visit, followed.Wires[^1].Week));
            waited += followed.Wires.Sum(one => one.Waited);
        }

        Assert.True(waited > 0);
    }

    [Fact]
    public void Following_the_sequence_that_was_found_costs_what_the_search_said()
    {
        for (int number = 0; number < 100; number++)
        {
            LadderSpace space = Space(number);
            if (new LadderSearch(space, new LadderAim(true, Most), () => false).Run().Path is not { } path)
                continue;

            FollowedSequence followed = LadderFollower.Follow(
                space, path.Fits[0], [.. path.Fits.Skip(1).Select(fit => fit.Wire)], space.Rate, insists: false);

            Assert.Null(followed.Stop);
            Assert.Equal((path.Visits, path.Weeks), (followed.Wires[^1].Visit, followed.Wires[^1].Week));
            Assert.Equal(path.ComfortIndex, followed.Wires.Max(one => one.Fit.ComfortIndex));
        }
    }

    [Fact]
    public void A_search_that_is_stopped_says_that_better_ones_may_exist()
    {
        int asked = 0;
        LadderFinding finding = new LadderSearch(
            Space(number: 3), new LadderAim(false, Most), () => asked++ >= 1).Run();

        Assert.False(finding.IsProven);
    }

    [Fact]
    public void The_number_of_threads_changes_nothing()
    {
        for (int number = 0; number < 40; number++)
        {
            LadderPath? one = new LadderSearch(Space(number, 1), new LadderAim(false, Most), () => false).Run().Path;
            LadderPath? many = new LadderSearch(Space(number, 4), new LadderAim(false, Most), () => false).Run().Path;

            Assert.Equal(one?.Key, many?.Key);
            Assert.Equal(one?.Weeks, many?.Weeks);
        }
    }

    [Fact]
    public void No_bound_is_above_what_a_ladder_costs()
    {
        for (int number = 0; number < 60; number++)
        {
            LadderSpace space = Space(number);
            var bounds = new LadderBounds(space.Wires, space.Working, space.Rules);
            foreach (FollowedSequence whole in All(space).Where(one => one.IsWhole && one.Wires.Length > 1))
            {
                WornWire first = whole.Wires[0];

                Assert.True(bounds.Changes(first.Fit.Wire) <= whole.Wires[^1].Visit);
                Assert.True(bounds.Weeks(first.Fit.Wire) <= whole.Wires[^1].Week - whole.Wires[1].Week);
            }
        }
    }

    private static double Cost(FollowedSequence one, bool byWeeks) =>
        byWeeks ? one.Wires[^1].Week : one.Wires[^1].Visit;

    private static FollowedSequence? Best(LadderSpace space, bool byWeeks, double below) => All(space)
        .Where(one => one.IsWhole && one.Wires.All(worn => worn.Fit.ComfortIndex < below))
        .MinBy(one => Cost(one, byWeeks));

    // Every way from a first wire upward to the working wire, followed by itself.
    private static IEnumerable<FollowedSequence> All(LadderSpace space)
    {
        foreach (LadderWire first in space.Wires)
        {
            LadderFit fit = space.Today.Fit(first.Wire, null, space.Rules);
            if (!fit.Allowed)
                continue;

            foreach (ImmutableArray<CatalogueWire> others in Ways(first.Wire, space))
                yield return LadderFollower.Follow(space, fit, others, space.Rate, insists: false);
        }
    }

    private static IEnumerable<ImmutableArray<CatalogueWire>> Ways(CatalogueWire from, LadderSpace space)
    {
        if (from.Id == space.Working.Id)
        {
            yield return [];
            yield break;
        }

        foreach (LadderWire next in space.Wires.Where(one => space.Rules.IsStep(from, one.Wire, space.Working)))
        {
            foreach (ImmutableArray<CatalogueWire> rest in Ways(next.Wire, space))
                yield return [next.Wire, .. rest];
        }
    }

    // Every way from a first wire upward to the working wire, and every visit at which the next wire may go in.
    private static (int Visits, int Weeks)? BestOfAllVisits(LadderSpace space, bool byWeeks, double below, int most)
    {
        (int Visits, int Weeks)? best = null;
        foreach (LadderWire first in space.Wires)
        {
            LadderFit fit = space.Today.Fit(first.Wire, null, space.Rules);
            if (fit.Allowed && fit.ComfortIndex < below)
                Go(fit, space.Today, 0, 0);
        }

        return best;

        void Go(LadderFit fit, ILadderArch arch, int visits, int weeks)
        {
            if (fit.Wire.Id == space.Working.Id)
            {
                if (best is not { } sofar || (byWeeks ? weeks < sofar.Weeks : visits < sofar.Visits))
                    best = (visits, weeks);
                return;
            }

            ILadderCourse course = arch.Wear(fit);
            for (int look = 1; visits + look <= most; look++)
            {
                // What cannot be better than the best any more need not be gone through.
                if (best is { } known && (byWeeks ? weeks + look * course.Interval >= known.Weeks
                    : visits + look >= known.Visits))
                {
                    return;
                }

                ILadderArch there = course.At(look, space.Rate);
                foreach (LadderWire next in space.Above(fit))
                {
                    LadderFit found = there.Fit(next.Wire, fit, space.Rules);
                    if (found.Allowed && found.ComfortIndex < below)
                        Go(found, there, visits + look, weeks + look * course.Interval);
                }

                if (course.IsLast(look, space.Rate))
                    return;
            }
        }
    }

    private static LadderSpace Space(int number, int? threads = null, double alike = 0)
    {
        var chance = new Chance(2026, number);
        CatalogueWire working = VisitSamples.Wire("ss-019x025");
        CatalogueWire[] all =
        [
            .. WireCatalogue.Default.Wires.Where(wire => wire.Id != working.Id)
                .OrderBy(_ => chance.Uniform()).Take(7),
        ];
        return new LadderSpace
        {
            Today = new ToyArch([.. Enumerable.Range(0, 4).Select(_ => 1.6 * chance.Uniform())]),
            Wires = LadderChoice.Of(all, working),
            Working = working,
            Rules = new LadderRules(
                VisitSamples.Question(null), VisitPolicy.Default.With("largest_step", 6 + 20 * chance.Uniform()),
                SentenceStyle.Default, 0.5 + 4 * chance.Uniform()),
            Rate = 0.6 + chance.Uniform(),
            MostVisits = Most,
            Threads = threads,
            Alike = alike,
        };
    }
}
