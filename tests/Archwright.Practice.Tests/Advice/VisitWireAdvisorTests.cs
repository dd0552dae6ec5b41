using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
using Archwright.Practice.People;
using Archwright.Practice.Values;
using Archwright.Treatment.Policies;

namespace Archwright.Practice.Tests.Advice;

/// <summary>The advice for the chair. Rests on the decision of a visit, which has tests of its own, and on the record:
/// what is given to it arrives there, and what it answers is kept.</summary>
[Trait("basis", "law")]
public sealed class VisitWireAdvisorTests
{
    private static readonly VisitWireAdvisor Advisor = new(VisitPolicy.Default, new FixedClock());

    [Fact]
    public void A_spent_wire_on_a_straight_arch_steps_up_and_everything_is_kept_with_it()
    {
        AdviceInputs inputs = Straight() with { Stock = Listing<string>.Of(["niti-016", "our own wire", "niti-016"]) };

        Recommendation advice = Advisor.Advise(inputs);

        Assert.Equal(AdviceKind.StepUp, advice.Kind);
        Assert.Equal("niti-016", advice.WireId);
        Assert.Equal(
            ["niti-014", "niti-016"], advice.Options.Select(option => option.WireId).Order(StringComparer.Ordinal));
        Assert.Equal(WireFitness.Fits, advice.Of("niti-016")!.Fitness);
        Assert.NotEmpty(advice.Of("niti-016")!.Findings);
        Assert.NotEmpty(advice.Because);
        Assert.InRange(advice.Interval!.UsualWeeks, advice.Interval.LowWeeks, advice.Interval.HighWeeks);
        Assert.Equal(inputs, advice.Inputs);
        Assert.Equal(VisitPolicy.Default.Version, advice.PolicyVersion);
        Assert.NotEmpty(advice.ProgramVersion);
        Assert.Equal(Samples.Now, advice.GivenAt);
    }

    [Fact]
    public void A_sore_patient_keeps_the_wire() => Assert.Equal(
        AdviceKind.Keep,
        Advisor.Advise(Straight() with { Discomfort = 9, Stock = Listing<string>.Of(["niti-016"]) }).Kind);

    [Fact]
    public void On_bonding_day_there_is_a_first_wire_and_where_nobody_noted_the_wire_somebody_looks_first()
    {
        AdviceInputs bonding = Straight() with { PresentWire = "", PresentWeeks = 0 };

        Assert.Equal(AdviceKind.StepUp, Advisor.Advise(bonding).Kind);
        Recommendation unknown = Advisor.Advise(bonding with { PresentIsKnown = false });
        Assert.Equal(AdviceKind.LookFirst, unknown.Kind);
        Assert.Contains(unknown.Missing, question => question.StartsWith("Which wire", StringComparison.Ordinal));
        Assert.Equal(AdviceKind.LookFirst, Advisor.Advise(bonding with { PresentWire = "our own wire" }).Kind);
    }

    [Fact]
    public void Where_a_ceiling_keeps_every_wire_out_what_binds_and_what_might_be_considered_is_kept()
    {
        AdviceInputs inputs = Samples.Inputs() with
        {
            // More teeth than could be tied at a distance.
            Positions = ToothMap<ToothOffset>.Of(Samples.UpperTeeth.Select((tooth, i) => KeyValuePair.Create(
                tooth, new ToothOffset(OcclusalMm: i % 2 == 0 ? 0.8 : -0.8)))),
            Stock = Listing<string>.Of(["niti-014", "niti-016"]),
        };

        Recommendation advice = new VisitWireAdvisor(Samples.Narrow, new FixedClock()).Advise(inputs);

        Assert.Equal(AdviceKind.LookFirst, advice.Kind);
        Assert.StartsWith("What binds: ", advice.Considerations[0], StringComparison.Ordinal);
        Assert.Contains(advice.Considerations, one => one.Contains("mm off its place", StringComparison.Ordinal));
        Assert.StartsWith("If the upper ", advice.Considerations[2], StringComparison.Ordinal); // named, not numbered
        Assert.Empty(Advisor.Advise(Straight()).Considerations);
    }

    [Fact]
    public void A_wire_that_stays_since_a_ceiling_keeps_the_next_one_out_says_what_binds()
    {
        Recommendation advice = Advisor.Advise(Straight() with
        {
            Positions = ToothMap<ToothOffset>.Empty.With(ToothNumber.FromIso(13), new ToothOffset(OcclusalMm: -0.3)),
            PresentWire = "niti-012",
            PresentWeeks = 12,
            Stock = Listing<string>.Of(["niti-012", "ss-018"]),
        });

        Assert.Equal((AdviceKind.Keep, "niti-012"), (advice.Kind, advice.WireId));
        Assert.Contains("Nothing heavier may go in", advice.Because, StringComparison.Ordinal);
        Assert.Matches("^What binds: .* under ss-018", advice.Considerations[0]);
    }

    [Fact]
    public void Nickel_rules_out_nickel_titanium_and_leaves_titanium()
    {
        Recommendation advice = Advisor.Advise(Straight(AlertKind.Nickel));

        Assert.Equal(WireFitness.AgainstAnAlert, advice.Of("niti-014")!.Fitness);
        Assert.NotEqual(WireFitness.AgainstAnAlert, advice.Of("bti-016")!.Fitness);
        Assert.Contains(advice.Cautions, caution => caution.Contains("nickel", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(AlertKind.RootShortening)]
    [InlineData(AlertKind.Medicine)]
    public void Some_alerts_send_the_question_back_to_the_clinician(AlertKind alert) =>
        Assert.Equal(AdviceKind.LookFirst, Advisor.Advise(Straight(alert)).Kind);

    [Theory]
    [InlineData(AlertKind.Hygiene)]
    [InlineData(AlertKind.ReducedSupport)]
    public void Every_alert_that_matters_to_the_wire_stands_in_the_cautions(AlertKind alert) =>
        Assert.True(Advisor.Advise(Straight(alert)).Cautions.Count > Advisor.Advise(Straight()).Cautions.Count);

    [Fact]
    public void An_empty_drawer_gives_no_wire_and_says_so()
    {
        Recommendation advice = Advisor.Advise(Straight() with
        {
            PresentWire = "", PresentWeeks = 0, Stock = Listing<string>.Empty,
        });

        Assert.Equal(AdviceKind.LookFirst, advice.Kind);
        Assert.Empty(advice.WireId);
        Assert.StartsWith("No wire in stock", advice.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void Sentences_are_in_the_unit_and_the_numbers_of_the_practice()
    {
        var gentle = new VisitWireAdvisor(
            VisitPolicy.Default, new FixedClock(),
            () => new SentenceStyle(_ => "so many cN", _ => "so many cN·mm", ToothNotation.Palmer));

        Recommendation advice = gentle.Advise(Straight());

        Assert.Contains("so many cN", string.Concat(advice.Options[0].Findings), StringComparison.Ordinal);
        Assert.DoesNotContain(" N", string.Concat(advice.Options[0].Findings), StringComparison.Ordinal);
    }

    [Fact]
    public void Progress_is_told_up_to_the_end()
    {
        var seen = new Seen();

        Advisor.Advise(Straight(), seen);

        Assert.NotEmpty(seen.All);
        Assert.All(seen.All, step => Assert.InRange(step.Done, 1, step.Of));
    }

    [Fact]
    public void A_cancelled_advice_gives_nothing() => Assert.ThrowsAny<OperationCanceledException>(
        () => Advisor.Advise(Straight(), cancellation: new CancellationToken(canceled: true)));

    private static AdviceInputs Straight(params AlertKind[] alerts) => Samples.Inputs(alerts) with
    {
        Positions = ToothMap<ToothOffset>.Empty,
        PresentWire = "niti-014",
        PresentWeeks = 8,
        WorkingWire = "ss-019x025",
        Discomfort = 2,
        AgeYears = 14,
    };

    private sealed class Seen : IProgress<AdviceProgress>
    {
        private readonly Lock gate = new();
        private readonly List<AdviceProgress> all = [];

        public IReadOnlyList<AdviceProgress> All
        {
            get
            {
                lock (gate)
                    return [.. all];
            }
        }

        public void Report(AdviceProgress value)
        {
            lock (gate)
                all.Add(value);
        }
    }
}
