using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Decisions.Tracing;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Tests.Decisions;

/// <summary>What would turn a recommendation does turn it, and nothing nearer does. Rests on asking again.</summary>
[Trait("basis", "law")]
public sealed class SensitivityTests
{
    private static readonly Lazy<(VisitAdvice Advice, ImmutableArray<InputSensitivity> Inputs)> Straight = new(() =>
    {
        VisitAdvice advice = VisitAdvisor.Advise(
            VisitSamples.Question("niti-014", contacts: VisitSamples.Straight, choice: ["niti-016", "ss-016"]));
        return (advice, Sensitivity.OfJudgement(advice, VisitPolicy.Default));
    });

    [Fact]
    public void The_discomfort_that_turns_a_step_up_is_the_policys_and_turns_it()
    {
        (VisitAdvice advice, ImmutableArray<InputSensitivity> inputs) = Straight.Value;
        Assert.Equal(AdvisedStep.StepUp, advice.Step);

        InputSensitivity pain = inputs.Single(one => one.Input == "worst discomfort");

        Assert.Equal(VisitPolicy.Default.HighDiscomfort, pain.Flips);
        for (int score = 0; score <= 10; score++)
        {
            VisitAdvice then = VisitJudge.Judge(
                advice.Question with { Discomfort = score }, advice.Figures, VisitPolicy.Default);
            if (score < pain.Flips)
                Assert.Equal(Sensitivity.Words(advice), Sensitivity.Words(then));
            if (score == (int)pain.Flips!.Value)
                Assert.Equal(pain.Then, Sensitivity.Words(then));
        }
    }

    [Fact]
    public void Every_threshold_that_is_said_to_turn_it_turns_it()
    {
        (VisitAdvice advice, ImmutableArray<InputSensitivity> inputs) = Straight.Value;

        foreach (PolicyFigure figure in VisitPolicy.Default.Figures)
        {
            if (inputs.FirstOrDefault(one => one.Input == figure.Name) is not { Flips: { } at } said)
                continue;

            VisitAdvice then = VisitJudge.Judge(
                advice.Question, advice.Figures, VisitPolicy.Default.With(figure.Name, at));
            Assert.Equal(said.Then, Sensitivity.Words(then));
            Assert.NotEqual(Sensitivity.Words(advice), said.Then);
        }
    }

    [Fact]
    public void Alerts_and_stock_are_told()
    {
        (VisitAdvice advice, ImmutableArray<InputSensitivity> inputs) = Straight.Value;

        Assert.Equal("look-first", inputs.Single(one => one.Input == "alert resorption").Then);
        InputSensitivity stock = inputs.Single(one => one.Input.EndsWith("not at hand", StringComparison.Ordinal));
        Assert.StartsWith(advice.Wire!.Figures.Wire.Id, stock.Input, StringComparison.Ordinal);
        Assert.NotEqual(Sensitivity.Words(advice), stock.Then);
        Assert.DoesNotContain(inputs, one => one.IsComputedAnew);
    }

    [Fact]
    public void The_working_wire_that_turns_it_is_told_and_turns_it_and_one_that_is_in_place_ends_the_steps()
    {
        (VisitAdvice advice, ImmutableArray<InputSensitivity> inputs) = Straight.Value;

        InputSensitivity working = inputs.Single(one => one.Input.StartsWith("working wire", StringComparison.Ordinal));

        Assert.NotNull(working.Flips);
        Assert.Equal(WireSize.Stiffness(advice.Question.WorkingWire!), working.Now);
        string id = working.Then[(working.Then.LastIndexOf(' ') + 1)..];
        CatalogueWire wire = VisitSamples.Wires(id)[0];
        Assert.Equal(working.Flips, WireSize.Stiffness(wire));
        string then = Sensitivity.Words(VisitJudge.Judge(
            advice.Question with { WorkingWire = wire }, advice.Figures, VisitPolicy.Default));
        Assert.Equal(working.Then, $"{then}, on the way to {id}");
        Assert.NotEqual(Sensitivity.Words(advice), then);
    }

    [Theory]
    [InlineData(14.0)]
    [InlineData(40.0)]
    [InlineData(null)]
    public void The_age_is_tried_on_the_other_side_of_growth_and_turns_what_it_is_said_to(double? age)
    {
        VisitQuestion question = VisitSamples.Question("niti-014", choice: ["niti-016"]) with { AgeYears = age };
        VisitAdvice advice = VisitAdvisor.Advise(question);

        InputSensitivity said = Sensitivity.Of(
            advice, new VisitOptions(), TestContext.Current.CancellationToken).Single(one => one.Input == "age");

        Assert.True(said.IsComputedAnew);
        Assert.Equal((age, "years"), (said.Now, said.Unit));
        string young = At(15);
        string grown = At(16);
        Assert.Equal(
            age is null ? Turns(young) ?? Turns(grown) : age < 16 ? Turns(grown) : Turns(young),
            said.Flips is null ? null : said.Then);

        string At(double years) => Sensitivity.Words(VisitAdvisor.Advise(question with { AgeYears = years }));
        string? Turns(string then) => then == Sensitivity.Words(advice) ? null : then;
    }

    [Fact]
    public void An_age_at_which_the_wire_in_place_delivers_too_little_is_told()
    {
        VisitQuestion question = VisitSamples.Question(
            "niti-014", contacts: [1.2, 1.2, 1.2, 1.2, 1.2], choice: ["niti-016"]);
        VisitPolicy wide = VisitPolicy.Default.WithCeilings(VisitPolicy.Default.CeilingsTimes(8));
        VisitOptions options = new() { Policy = wide }; // so that a heavier wire may go in
        double young = Share(14);
        double grown = Share(40);
        Assert.True(young > 1.02 * grown, $"{young} and {grown} of what is left");
        options = options with { Policy = wide.With("keep_share", (young + grown) / 2) };
        VisitAdvice advice = VisitAdvisor.Advise(question with { AgeYears = 14 }, options);
        Assert.Equal(AdvisedStep.Keep, advice.Step);

        InputSensitivity said = Sensitivity.Of(advice, options, TestContext.Current.CancellationToken)
            .Single(one => one.Input == "age");

        Assert.Equal((14.0, 16.0, "step-up niti-016"), (said.Now, said.Flips, said.Then));

        double Share(double years) => VisitAdvisor.Compute(question with { AgeYears = years }, options)
            .Present!.Delivery!.Share.P50;
    }

    [Fact]
    public void Where_the_rate_was_learnt_the_age_turns_nothing()
    {
        VisitQuestion question = VisitSamples.Question("niti-014", choice: ["niti-016"]) with
        {
            LearntRate = PatientRate.ForAge(40),
        };

        InputSensitivity said = Sensitivity.Of(
            VisitAdvisor.Advise(question), new VisitOptions(), TestContext.Current.CancellationToken)
            .Single(one => one.Input == "age");

        Assert.Null(said.Flips);
        Assert.Contains("learnt", said.Then, StringComparison.Ordinal);
    }
}
