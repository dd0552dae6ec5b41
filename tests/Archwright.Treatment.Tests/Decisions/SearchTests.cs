using Archwright.Dentition.Positions;
using Archwright.Treatment.Decisions;

namespace Archwright.Treatment.Tests.Decisions;

/// <summary>The short cuts of the search lose nothing, and threads change nothing. Rests on the full search.</summary>
[Trait("basis", "law")]
public sealed class SearchTests
{
    private static readonly Lazy<VisitAdvice> Brief = new(() => VisitAdvisor.Advise(
        Question(), new VisitOptions { Threads = 4 }));

    [Fact]
    public void The_shortened_search_recommends_what_the_full_one_does_and_refuses_no_wire_that_it_lets_pass()
    {
        VisitAdvice full = VisitAdvisor.Advise(Question(), new VisitOptions { Exhaustive = true });

        Assert.Contains(Brief.Value.Options, option => option.Figures.ThickerThan is not null);
        Assert.All(full.Options, option => Assert.Null(option.Figures.ThickerThan));
        Assert.Equal(full.Step, Brief.Value.Step);
        Assert.Equal(full.Wire?.Figures.Wire.Id, Brief.Value.Wire?.Figures.Wire.Id);
        Assert.Equal(Allowed(full), Allowed(Brief.Value));
    }

    [Fact]
    public void One_thread_and_four_give_the_same_to_the_last_bit()
    {
        VisitAdvice one = VisitAdvisor.Advise(Question(), new VisitOptions { Threads = 1 });

        Assert.Equal(Told(one), Told(Brief.Value));
        Assert.Equal(one.Because, Brief.Value.Because);
        Assert.Equal(one.Interval, Brief.Value.Interval);
    }

    // Steel of 0.016 in is refused here, so that the thicker one need not be computed.
    private static VisitQuestion Question() => VisitSamples.Question(
        "niti-012", choice: ["niti-014", "ss-016", "ss-018"], offsets: [(23, new ClinicalOffset(Labial: 0.8))]);

    private static IEnumerable<string> Allowed(VisitAdvice advice) => advice.Options
        .Where(option => option.Allowed).Select(option => option.Figures.Wire.Id).Order(StringComparer.Ordinal);

    private static IEnumerable<object?> Told(VisitAdvice advice) => advice.Options.Select(option => (object?)(
        option.Figures.Wire.Id, option.Score, option.Figures.LargestForce, option.Figures.LargestGiven,
        option.Figures.FittingForce, option.Figures.Delivery?.Share, option.Figures.Set, option.WhyNotThis));
}
