using System.Collections.Immutable;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Policies;
using Archwright.Treatment.Tests.Decisions;

namespace Archwright.Treatment.Tests.Ladders;

/// <summary>Ladders on a real arch: six front teeth, a short drawer, ceilings high enough that several sequences
/// exist.</summary>
[Trait("basis", "law")]
public sealed class LadderAdvisorTests
{
    private static readonly VisitPolicy Wide = VisitPolicy.Default.WithCeilings(new ForceCeilings(
        VisitPolicy.Default.Ceilings.All.Select(one =>
            one with { Limit = one.Limit with { Value = 8 * one.Limit.Value } })));

    private static readonly ImmutableDictionary<string, decimal> List =
        VisitSamples.Usual.ToImmutableDictionary(id => id, _ => 2.5m);

    private static readonly Lazy<LadderAdvice> Usual = new(() =>
        Find(asked: ["niti-014", "ss-019x025"], prices: new WirePrices(List)));

    // The same, one thread; the same sequence as one's own; chance; a price that is missing.
    private static readonly Lazy<LadderAdvice> Other = new(() => Find(
        options => options with { Draws = 30, Seed = 7, Threads = 1 },
        asked: [.. Of(Usual.Value, LadderKind.FewestVisits).Steps.Select(step => step.Wire.Id)],
        prices: new WirePrices(List.Remove("ss-019x025"))));

    [Fact]
    public void Each_answer_is_the_best_in_its_own_respect()
    {
        LadderAdvice advice = Usual.Value;
        LadderAnswer fewest = Of(advice, LadderKind.FewestVisits);
        LadderAnswer gentlest = Of(advice, LadderKind.Gentlest);
        LadderAnswer fastest = Of(advice, LadderKind.Fastest);

        Assert.All(advice.Answers, one => Assert.True(fewest.Visits.P50 <= one.Visits.P50));
        Assert.All(advice.Answers, one => Assert.True(fastest.TotalWeeks.P50 <= one.TotalWeeks.P50));
        Assert.All(advice.Answers, one => Assert.True(
            gentlest.ComfortIndex <= one.ComfortIndex / (1 - VisitPolicy.Default.ForceAccuracy)));
        Assert.True(gentlest.Visits.P50 <= fewest.Visits.P50 + 2);
        Assert.All(advice.Answers, one => Assert.True(one.IsProven));
    }

    [Fact]
    public void Every_ladder_climbs_to_the_working_wire_within_the_rules()
    {
        Assert.All(Usual.Value.Answers, answer =>
        {
            Assert.Null(answer.Stop);
            Assert.Equal("ss-019x025", answer.Steps[^1].Wire.Id);
            Assert.Equal(0, answer.Steps[0].AtVisit);
            Assert.All(answer.Steps, step => Assert.Empty(step.Against));
            Assert.All(answer.Steps.Zip(answer.Steps.Skip(1)), pair =>
            {
                Assert.True(WireSize.Compare(pair.First.Wire, pair.Second.Wire) > 0 || !pair.First.PartialTies.IsEmpty);
                Assert.True(pair.First.AtVisit < pair.Second.AtVisit);
            });
        });
    }

    [Fact]
    public void Intervals_are_those_of_the_policy()
    {
        Assert.All(Usual.Value.Answers.SelectMany(answer => answer.Steps.SkipLast(1)), step =>
        {
            PolicyInterval interval = Wide.Interval(Intervals.KindOf(step.Wire));
            Assert.InRange(step.Interval, interval.Low, interval.Usual);
            Assert.Equal(0, step.Weeks.P50 % step.Interval);
        });
    }

    [Fact]
    public void Weeks_of_slow_patients_are_no_fewer_than_those_of_quick_ones() =>
        Assert.All(Usual.Value.Answers, answer =>
        {
            Assert.True(answer.TotalWeeks.P10 <= answer.TotalWeeks.P50);
            Assert.True(answer.TotalWeeks.P50 <= answer.TotalWeeks.P90);
        });

    [Fact]
    public void The_same_sequence_is_called_the_same() => Assert.All(Usual.Value.Answers, one =>
        Assert.All(Usual.Value.Answers.Where(other => other.Kind != one.Kind), other =>
        {
            Assert.Equal(one.SameAs.Contains(other.Kind), Wires(one) == Wires(other));
            Assert.True(!one.SameAs.Contains(other.Kind) || one.TiesWith.Contains(other.Kind));
        }));

    [Fact]
    public void Threads_and_repetition_change_nothing() => Assert.Equal(
        Usual.Value.Answers.Select(Whole),
        Find(options => options with { Threads = 1 }, asked: ["niti-014", "ss-019x025"]).Answers.Select(Whole));

    [Fact]
    public void The_sequence_that_was_found_differs_in_nothing_when_asked_about()
    {
        LadderAdvice advice = Other.Value;

        Assert.Contains(LadderKind.FewestVisits, advice.Asked!.SameAs);
        Assert.Equal(Of(advice, LadderKind.FewestVisits).TotalWeeks, advice.Asked.TotalWeeks);
        Assert.Equal(
            "Against fewest visits: the same wires.",
            Assert.Single(advice.Differences, one => one.From == LadderKind.FewestVisits).Sentence);
    }

    [Fact]
    public void Too_long_a_step_of_the_clinicians_own_is_told_and_not_forbidden()
    {
        LadderAnswer asked = Usual.Value.Asked!;

        Assert.Null(asked.Stop);
        Assert.Contains(asked.Steps[1].Against, finding => finding.Rule == "step");
    }

    [Fact]
    public void Patients_by_chance_change_the_ranges_and_not_the_sequences()
    {
        Assert.Equal(Usual.Value.Answers.Select(Wires), Other.Value.Answers.Select(Wires));
        Assert.All(Other.Value.Answers, one => Assert.True(one.TotalWeeks.P10 <= one.TotalWeeks.P90));
    }

    [Fact]
    public void Where_no_sequence_keeps_to_the_ceilings_the_one_that_passes_them_least_is_told()
    {
        VisitPolicy narrow = VisitPolicy.Default.WithCeilings(VisitPolicy.Default.CeilingsTimes(0.25));

        LadderAdvice advice = Find(policy: narrow);

        Assert.Empty(advice.Answers);
        Assert.NotNull(advice.Because);
        Assert.NotNull(advice.Nearest);
        Assert.Contains("What binds: ", advice.Considerations[0], StringComparison.Ordinal);
        Assert.Matches(@"\(\d\d\) under .* times the ceiling of ", advice.Considerations[0]);
        Assert.All(advice.Considerations, one => Assert.DoesNotMatch("(?i)must|have to", one)); // they order nothing
        Assert.True(advice.CeilingFactor > 1);
        Assert.Contains(advice.Nearest.Steps, step => !step.Against.IsEmpty);
    }

    [Fact]
    public void Costs_are_those_of_the_list_and_unknown_where_a_price_is_missing()
    {
        Assert.All(Usual.Value.Answers, one => Assert.Equal(2.5m * one.Steps.Length, one.Cost));
        Assert.All(Other.Value.Answers, one => Assert.Null(one.Cost));
    }

    [Fact]
    public void An_arch_that_has_its_working_wire_needs_no_ladder()
    {
        LadderQuestion question = Question() with
        {
            Today = Question().Today with
            {
                Arch = VisitSamples.Question(null).Arch,
                Present = new PresentWire(VisitSamples.Wire("ss-019x025"), 6),
            },
        };
        LadderAdvice advice = LadderAdvisor.Find(question, new LadderOptions { Policy = Wide });

        Assert.Empty(advice.Answers);
        Assert.True(advice.IsAtWorkingWire);
        Assert.False(Usual.Value.IsAtWorkingWire);
        Assert.Contains("is in place", advice.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ladder_can_be_given_up()
    {
        using var given = new CancellationTokenSource();
        given.Cancel();

        Assert.ThrowsAny<OperationCanceledException>(() =>
            LadderAdvisor.Find(Question(), cancellation: given.Token));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(3000)]
    public void Options_that_make_no_sense_are_refused(int draws) =>
        Assert.Throws<ArgumentException>(() => LadderAdvisor.Find(Question(), new LadderOptions { Draws = draws }));

    [Fact]
    public void The_policy_says_how_many_visits_a_ladder_may_take_and_how_long_is_searched()
    {
        LadderAdvice usual = Usual.Value;
        LadderAdvice one = Find(policy: Wide.With("ladder_visits", 1));
        LadderAdvice hasty = Find(policy: Wide.With("ladder_forecasts", 1));

        LadderAnswer fewest = Of(usual, LadderKind.FewestVisits);
        Assert.InRange(fewest.Visits.P50, 2, 12);
        Assert.Empty(one.Answers); // it takes two at least
        Assert.True(hasty.Forecasts < usual.Forecasts, $"{hasty.Forecasts} against {usual.Forecasts}");
        Assert.True(fewest.IsProven && hasty.Answers.All(answer => !answer.IsProven));
        // An answer quotes what it was judged by, and a star says that a figure is another.
        Assert.Equal(VisitPolicy.Default.Version + "*", usual.PolicyVersion);
        Assert.Equal(VisitPolicy.Default.Version, LadderAdvisor.Find(
            Question() with { To = VisitSamples.Wires("niti-014")[0] }).PolicyVersion);
    }

    private static LadderAnswer Of(LadderAdvice advice, LadderKind kind) =>
        Assert.Single(advice.Answers, one => one.Kind == kind);

    private static string Wires(LadderAnswer answer) => string.Join(",", answer.Steps.Select(step => step.Wire.Id));

    private static string Whole(LadderAnswer one) => FormattableString.Invariant(
        $"{one.Kind} {one.Visits} {one.TotalWeeks} {one.ComfortIndex:R} {one.LargestForce:R} ")
        + string.Join(" ", one.Steps.Select(step => $"{step.Wire.Id} {step.AtVisit} {step.Weeks} {step.Interval}"));

    private static LadderQuestion Question()
    {
        ArchSetup arch = Samples.Front(0.5, 0.3, 0.4, 0.6, 0.3);
        return new LadderQuestion
        {
            Today = VisitSamples.Question(null, choice: ["niti-014", "niti-018", "niti-016x022", "niti-019x025"])
                with { Arch = ArchToday.Of(arch), ChoiceIsStock = true },
        };
    }

    private static LadderAdvice Find(
        Func<LadderOptions, LadderOptions>? with = null, VisitPolicy? policy = null, string[]? asked = null,
        WirePrices? prices = null)
    {
        var options = new LadderOptions { Policy = policy ?? Wide };
        return LadderAdvisor.Find(
            Question() with { Asked = VisitSamples.Wires(asked ?? []), Prices = prices },
            with is null ? options : with(options), cancellation: TestContext.Current.CancellationToken);
    }
}
