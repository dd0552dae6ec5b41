using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;
using Archwright.Mechanics.Tests.Engagement;

namespace Archwright.Mechanics.Tests.Slots;

/// <summary>Ties that fade.</summary>
public sealed class TieTests
{
    private static readonly Tie Elastic = Tie.Seating(TieKind.Elastic, 4, 2).Losing(0.56);

    /// <summary>Buchmann et al., Angle Orthod 82 (2012) 529–535: 37 to 75 % in three weeks, most of it on the first
    /// day.</summary>
    [Fact, Trait("basis", "published")]
    public void An_elastic_tie_loses_its_share_in_three_weeks_and_most_of_that_on_the_first_day()
    {
        Assert.Equal(4, Elastic.After(0).SeatingForce, 1e-12);
        Assert.Equal(0.44 * 4, Elastic.After(21).SeatingForce, 1e-12);
        Assert.Equal(0.44 * 2, Elastic.After(21).Stiffness, 1e-12);
        Assert.InRange((4 - Elastic.After(1).SeatingForce) / (0.56 * 4), 0.5, 0.75);
    }

    [Fact, Trait("basis", "law")]
    public void It_never_grows_again_and_never_pulls_the_other_way()
    {
        double[] pulls = [.. Enumerable.Range(0, 1000).Select(day => Elastic.After(day).SeatingForce)];

        Assert.All(pulls.Zip(pulls.Skip(1)), pair => Assert.True(pair.Second <= pair.First));
        Assert.True(pulls[^1] > 0);
    }

    [Fact, Trait("basis", "law")]
    public void Other_ties_do_not_fade() =>
        Assert.Throws<InvalidOperationException>(() => Tie.Seating(TieKind.Steel, 3, 1000).Losing(0.5));

    /// <summary>A wire that was held down follows a tie that gives way as if it had always been so.</summary>
    [Fact, Trait("basis", "law")]
    public void A_wire_under_a_tie_that_has_faded_is_the_one_under_the_weaker_tie()
    {
        Arrangement Of(Tie tie) => StraightWire.Of(
            180_000, 0.4064, StraightWire.Slot(0, Hold.Clamped),
            StraightWire.Slot(10, Hold.Walls, y: 0.6) with { Width = 3, Tie = tie },
            StraightWire.Slot(20, Hold.Clamped));
        var engager = new Engager(Of(Elastic));
        Assert.True(engager.Engage().Converged);

        engager.Retie([.. engager.Arrangement.Slots.Select(slot => slot.Tie.After(21))]);
        EngagementResult faded = engager.Apply(new Step(null, []));

        EngagementResult weak = StraightWire.Engage(Of(Elastic.After(21)));
        Assert.True(faded.Converged, faded.Obstacle?.Reason);
        Assert.Equal(weak.Slots[1].OnTooth.Force.Y, faded.Slots[1].OnTooth.Force.Y, 1e-4);
        Assert.True(faded.Slots[1].PullOnTie < 0.6 * StraightWire.Engage(Of(Elastic)).Slots[1].PullOnTie);
    }

    [Fact, Trait("basis", "law")]
    public void A_tie_of_another_kind_is_refused()
    {
        var engager = new Engager(StraightWire.Of(
            180_000, 0.4064, StraightWire.Slot(0, Hold.Clamped),
            StraightWire.Slot(10, Hold.Walls) with { Tie = Elastic }));

        Assert.Throws<ArgumentException>(() => engager.Retie([Tie.Closed(), Tie.Closed()]));
        Assert.Throws<ArgumentException>(() => engager.Retie([Elastic]));
    }
}
