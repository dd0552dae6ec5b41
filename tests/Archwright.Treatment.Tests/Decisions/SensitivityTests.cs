using System.Collections.Immutable;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Decisions.Tracing;
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
}
