using Archwright.Practice.Ladders;
using Archwright.Practice.Values;
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Policies;

namespace Archwright.Practice.Tests.Ladders;

/// <summary>The ladders of a noted arch. Rests on the search for ladders, which has tests of its own: what was noted
/// arrives there, and what it answers is kept.</summary>
[Trait("basis", "law")]
public sealed class LadderPlannerTests
{
    private static readonly LadderPlanner Planner = new(VisitPolicy.Default, new FixedClock());

    [Fact]
    public void A_wire_that_was_decided_stays_until_the_next_visit_and_all_that_was_found_is_kept()
    {
        KeptLadder ladder = Planner.Find(Straight("niti-014", "niti-014", "niti-016", "niti-018"));

        KeptSequence fewest = ladder.Sequences[0];
        Assert.Contains(LadderKind.FewestVisits, fewest.Kinds);
        Assert.Equal((true, 0), (fewest.Wires[0].IsInPlace, fewest.Wires[0].AtVisit));
        Assert.Equal("niti-014", fewest.Wires[0].WireId);
        Assert.Equal("niti-018", fewest.Wires[^1].WireId);
        Assert.InRange(fewest.Wires[^1].FromWeek.Usual!.Value, 1, 52);
        Assert.Equal(fewest.Wires[^1].FromWeek.Usual, fewest.Weeks.Usual);
        Assert.Equal((VisitPolicy.Default.Version, Samples.Now), (ladder.PolicyVersion, ladder.ComputedAt));
        Assert.Equal(Planner.PolicyVersion, ladder.PolicyVersion);
        Assert.NotEmpty(ladder.ProgramVersion);
        Assert.NotEmpty(ladder.Cautions);
        Assert.Empty(ladder.Because);
        Assert.Equal(ladder, Planner.Find(ladder.Basis)); // the same question, the same answer
    }

    [Fact]
    public void A_wire_that_was_only_found_may_be_changed_on_the_day()
    {
        LadderBasis basis = Straight("niti-014", "niti-014", "niti-016", "niti-018") with { WireStays = false };

        KeptSequence fewest = Planner.Find(basis).Sequences[0];

        Assert.Equal((false, 0), (fewest.Wires[^1].IsInPlace, fewest.Wires[^1].AtVisit));
    }

    [Fact]
    public void A_wire_in_place_that_may_not_stay_is_left_and_why_is_kept()
    {
        LadderBasis basis = Straight("ss-019x025", "niti-014", "niti-018") with { WireStays = false };
        KeptLadder ladder = Planner.Find(basis with
        {
            Inputs = basis.Inputs with { Positions = Samples.HighCanine },
        });

        Assert.NotEmpty(ladder.AgainstPresent);
        Assert.DoesNotContain(ladder.Sequences.SelectMany(one => one.Wires), wire => wire.IsInPlace);
        Assert.Empty(Planner.Find(Straight("niti-014", "niti-018")).AgainstPresent);
    }

    [Fact]
    public void A_working_wire_that_is_in_place_needs_no_ladder_and_says_so()
    {
        KeptLadder ladder = Planner.Find(Straight("niti-018", "niti-018"));

        Assert.Empty(ladder.Sequences);
        Assert.Contains("in place", ladder.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_no_ladder_keeps_to_the_ceilings_what_might_be_considered_is_kept()
    {
        LadderBasis basis = Straight("", "niti-014", "niti-018") with { WireStays = false };

        KeptLadder ladder = new LadderPlanner(Samples.Narrow, new FixedClock()).Find(basis with
        {
            Inputs = basis.Inputs with { Positions = Samples.HighCanine },
        });

        Assert.NotEmpty(ladder.Because);
        Assert.StartsWith("What binds: ", ladder.Considerations[0], StringComparison.Ordinal);
        Assert.Empty(Planner.Find(Straight("niti-014", "niti-018")).Considerations);
    }

    [Fact]
    public void It_can_be_stopped() => Assert.Throws<OperationCanceledException>(() =>
        Planner.Find(Straight("niti-014", "niti-016"), null, new CancellationToken(canceled: true)));

    private static LadderBasis Straight(string present, params string[] stock) => new(
        Samples.Today,
        Samples.Inputs() with
        {
            Positions = ToothMap<ToothOffset>.Empty, PresentWire = present, PresentWeeks = 0, AgeYears = 13,
            WorkingWire = "niti-018", Stock = Listing<string>.Of(stock),
        },
        WireStays: true);
}
