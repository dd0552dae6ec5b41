using Archwright.Practice.Ladders;
using Archwright.Practice.People;
using Archwright.Practice.Tests;
using Archwright.Practice.Tests.Ladders;
using Archwright.Practice.Values;
using Archwright.Web.Parts;
using Archwright.Web.Sessions;
using Bunit;

namespace Archwright.Web.Tests.Parts;

/// <summary>The ladder of an arch as the course shows it. Rests on what it is given.</summary>
[Trait("basis", "law")]
public sealed class LadderCardTests : BunitContext
{
    private static readonly Patient Mira = Samples.Patient();
    private static readonly KeptLadder Ladder = KeptSamples.Ladder(LadderBasis.Of(
        Mira, Samples.Upper(Mira.Id), [Samples.Visit(Mira.Id)], [], Samples.Today));

    [Fact]
    public void What_was_kept_stands_there_at_once_with_its_day_its_positions_ranges_and_ties()
    {
        var card = Show(Ladder);

        string words = card.Find("section").TextContent;
        foreach (string said in new[]
                 {
                     "on the positions of 2 Mar 2026. In place: superelastic NiTi 0.014 in, for 6 weeks.",
                     "It stays bent.",
                     "Fewest visits and fastest", "2 (1 to …) visits more",
                     "12 (6 to …) weeks", "No difference from gentlest", "a better one may exist", "in place",
                     "week 12 (6 to …), about 25 May 2026", "upper right canine (13, ISO)", "150 cN",
                     "A plan to talk about", "test-1", "the clinician decides", "Which alerts are there?",
                     "Loads a tooth above its ceiling.",
                 })
        {
            Assert.Contains(said, words, StringComparison.Ordinal);
        }

        Assert.Empty(card.FindAll(".told")); // nothing has changed: it is not stale
        Assert.Contains("Compute anew", card.Find("button").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void What_might_be_considered_stands_over_the_sequences_and_nowhere_without_cause()
    {
        var card = Show(Ladder with
        {
            Considerations = Listing<string>.Of(["What binds: a force under ss-016.", "A wire between presses less."]),
        });

        Assert.Equal(
            "What binds: a force under stainless steel 0.016 in.", card.Find(".considered > p").TextContent);
        Assert.Equal(
            ["A wire between presses less."], card.FindAll(".considered li").Select(one => one.TextContent));
        Assert.NotNull(card.Find(".considered ~ .sequence"));
        Assert.Empty(Show(Ladder).FindAll(".considered"));
    }

    [Fact]
    public void What_is_stale_is_said_to_be_so_with_all_that_changed()
    {
        var card = Show(Ladder, Listing<LadderChange>.Of(Enum.GetValues<LadderChange>()));

        string stale = card.Find(".told").TextContent;
        Assert.Contains("Stale: since then teeth were seen again", stale, StringComparison.Ordinal);
        Assert.Contains("the policy has changed and the program has changed", stale, StringComparison.Ordinal);
        Assert.NotEmpty(card.FindAll(".rungs li"));
    }

    [Fact]
    public void Where_there_is_none_it_is_offered_and_one_under_way_shows_how_far_and_can_be_stopped()
    {
        (int asked, int stopped) = (0, 0);
        var none = Show(null, onAsk: () => asked++);
        none.Find("button").Click();
        var going = Show(Ladder, task: new LadderTask(LadderStanding.Running, 17, ""), onStop: () => stopped++);
        going.Find(".progress button").Click();

        Assert.Equal((1, 1), (asked, stopped));
        Assert.Contains("No ladder was computed yet", none.Markup, StringComparison.Ordinal);
        Assert.Contains("17 forecasts made", going.Find(".progress").TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(going.FindAll(".rungs li")); // what was kept stays in view
        Assert.Single(going.FindAll("button")); // no second computation
    }

    [Fact]
    public void A_computation_that_came_to_nothing_says_why_and_may_be_tried_again()
    {
        var card = Show(null, task: new LadderTask(LadderStanding.Failed, 0, "A slot is too small."));

        Assert.Contains("A slot is too small.", card.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Contains("Compute the ladder", card.Find("button").TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<LadderCard> Show(
        KeptLadder? ladder, Listing<LadderChange>? changes = null, LadderTask? task = null, Action? onAsk = null,
        Action? onStop = null) => Render<LadderCard>(parts => parts
            .Add(part => part.Treatment, Samples.Upper(Mira.Id))
            .Add(part => part.Ladder, ladder)
            .Add(part => part.Changes, changes ?? Listing<LadderChange>.Empty)
            .Add(part => part.Task, task)
            .Add(part => part.OnAsk, () => onAsk?.Invoke())
            .Add(part => part.OnStop, () => onStop?.Invoke()));
}
