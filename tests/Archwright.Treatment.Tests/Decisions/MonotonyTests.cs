using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Tests.Decisions;

/// <summary>What must not turn round when one input grows. Rests on the rules themselves.</summary>
[Trait("basis", "law")]
public sealed class MonotonyTests
{
    [Theory]
    [InlineData("niti-014", 0.0)]
    [InlineData("ss-018", 0.6)]
    public void More_pain_never_yields_a_heavier_wire(string present, double off)
    {
        VisitQuestion question = VisitSamples.Question(
            present, choice: ["niti-012", "niti-016", "ss-018", "bti-016"],
            offsets: [(13, new ClinicalOffset(Labial: off))]);
        ArchFigures figures = VisitAdvisor.Compute(question, new VisitOptions());
        double lightest = double.PositiveInfinity;
        for (int pain = 0; pain <= 10; pain++)
        {
            VisitAdvice advice = VisitJudge.Judge(question with { Discomfort = pain }, figures, VisitPolicy.Default);
            double stiffness = advice.Wire is { } wire ? WireSize.Stiffness(wire.Figures.Wire) : 0;

            Assert.True(stiffness <= lightest, $"pain {pain}: {advice.Because}");
            lightest = stiffness;
        }
    }

    [Fact]
    public void Raising_the_ceilings_never_refuses_a_wire_that_was_allowed()
    {
        VisitQuestion question = VisitSamples.Question(
            null, choice: ["niti-012", "niti-014", "niti-016", "ss-016"],
            offsets: [(13, new ClinicalOffset(Labial: 0.5))]);
        ArchFigures figures = VisitAdvisor.Compute(question, new VisitOptions { Exhaustive = true });
        HashSet<string> allowed = [];
        foreach (double factor in new[] { 0.25, 0.5, 1, 2, 4, 16 })
        {
            VisitPolicy policy = VisitPolicy.Default.WithCeilings(new ForceCeilings(
                VisitPolicy.Default.Ceilings.All.Select(one =>
                    one with { Limit = one.Limit with { Value = factor * one.Limit.Value } })));
            HashSet<string> now =
            [
                .. VisitJudge.Judge(question, figures, policy).Options.Where(option => option.Allowed)
                    .Select(option => option.Figures.Wire.Id),
            ];

            Assert.Superset(allowed, now);
            allowed = now;
        }

        Assert.NotEmpty(allowed);
    }
}
