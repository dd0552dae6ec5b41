using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
using Archwright.Practice.People;
using Archwright.Practice.Values;

namespace Archwright.Practice.Tests.Advice;

/// <summary>The advice from the comparison of wires. Rests on the comparison itself, which has tests of its own, and
/// on the alerts.</summary>
[Trait("basis", "law")]
public sealed class ComparisonAdvisorTests
{
    private static readonly ComparisonAdvisor Advisor = new(ForceCeilings.Default, new FixedClock());

    [Fact]
    public void Every_known_wire_of_the_stock_is_looked_at_and_the_first_is_advised()
    {
        Recommendation advice = Advisor.Advise(Samples.Inputs() with
        {
            Positions = ToothMap<ToothOffset>.Empty.With(ToothNumber.FromIso(13), new ToothOffset(OcclusalMm: -0.1)),
            Stock = Listing<string>.Of(["ss-019x025", "our own wire", "niti-014", "niti-014"]),
        });

        Assert.Equal(
            ["niti-014", "ss-019x025"], advice.Options.Select(option => option.WireId).Order(StringComparer.Ordinal));
        Assert.Equal("niti-014", advice.WireId);
        Assert.Equal(AdviceKind.Ranking, advice.Kind);
        Assert.Equal(Samples.Now, advice.GivenAt);
    }

    [Fact]
    public void The_advice_keeps_what_it_rests_on()
    {
        AdviceInputs inputs = Samples.Inputs();

        Recommendation advice = Advisor.Advise(inputs);

        Assert.Equal(inputs, advice.Inputs);
        Assert.NotEmpty(advice.PolicyVersion);
        Assert.NotEmpty(advice.ProgramVersion);
    }

    [Fact]
    public void Nickel_rules_out_nickel_titanium_whatever_its_rank_and_leaves_titanium()
    {
        Recommendation advice = Advisor.Advise(Samples.Inputs(AlertKind.Nickel));

        Assert.Equal(WireFitness.AgainstAnAlert, advice.Of("niti-014")!.Fitness);
        Assert.Equal("niti-014", advice.Options[^1].WireId);
        Assert.NotEqual(WireFitness.AgainstAnAlert, advice.Of("bti-016")!.Fitness);
        Assert.Contains(advice.Cautions, caution => caution.Contains("nickel", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(AlertKind.RootShortening)]
    [InlineData(AlertKind.Medicine)]
    public void Some_alerts_send_the_question_back_to_the_clinician(AlertKind alert) =>
        Assert.Equal(AdviceKind.LookFirst, Advisor.Advise(Samples.Inputs(alert)).Kind);

    [Theory]
    [InlineData(AlertKind.Nickel)]
    [InlineData(AlertKind.RootShortening)]
    [InlineData(AlertKind.Medicine)]
    [InlineData(AlertKind.Hygiene)]
    [InlineData(AlertKind.ReducedSupport)]
    public void Every_alert_that_matters_to_the_wire_stands_in_the_cautions(AlertKind alert) =>
        Assert.True(
            Advisor.Advise(Samples.Inputs(alert)).Cautions.Count > Advisor.Advise(Samples.Inputs()).Cautions.Count);

    [Fact]
    public void An_empty_drawer_gives_no_wire_and_says_so()
    {
        Recommendation advice = Advisor.Advise(Samples.Inputs() with { Stock = Listing<string>.Empty });

        Assert.Equal(AdviceKind.LookFirst, advice.Kind);
        Assert.Empty(advice.WireId);
        Assert.Contains(advice.Cautions, caution => caution.StartsWith("No wire in stock", StringComparison.Ordinal));
    }

    [Fact]
    public void A_cancelled_advice_gives_nothing() => Assert.ThrowsAny<OperationCanceledException>(
        () => Advisor.Advise(Samples.Inputs(), cancellation: new CancellationToken(canceled: true)));

    private sealed class FixedClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Samples.Now;
    }
}
