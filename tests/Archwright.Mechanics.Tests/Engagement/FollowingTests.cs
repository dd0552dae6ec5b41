using Archwright.Mechanics.Engagement;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>A wire with memory that follows its teeth answers places that are near each other alike: what forecasts
/// move teeth by may not jump where the wire begins to slide.</summary>
/// <remarks>Two random arches where it jumped by 2.6 and 12 times the largest force as long as a wire slid to where
/// nothing was left of the force along it. Of the arches up to #40 with memory that are engaged, #31 still jumps by 4.2
/// times it, #22 by half, #2 by a third.</remarks>
[Trait("basis", "law")]
public sealed class FollowingTests
{
    private const double FirstShare = 0.02;
    private const double LastShare = 0.4;
    private const double Stride = 0.005;

    /// <summary>Teeth a two-hundredth of their way nearer to rest: no load on a tooth changes by more than a quarter of
    /// the largest.</summary>
    [Theory]
    [InlineData(14)]
    [InlineData(17)]
    public void A_wire_with_memory_answers_near_places_alike(int number)
    {
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        Arrangement arrangement = RandomAlloy.Into(new RandomArch(number).Arrangement, number);
        var engager = new Engager(arrangement);
        Assert.True(engager.Engage(cancellation).Converged);
        EngagementResult? before = null;
        double worst = 0;
        int compared = 0;
        for (double share = FirstShare; share < LastShare; share += Stride)
        {
            EngagementResult now = engager.Apply(Engager.Relieving(arrangement, share), cancellation);
            if (now.Converged)
                engager.Undo();
            if (before is not null && now.Converged)
            {
                worst = Math.Max(worst, Jump(before, now));
                compared++;
            }

            before = now.Converged ? now : null;
        }

        Assert.True(compared > 60, $"Only {compared} pairs were compared.");
        Assert.InRange(worst, 0, 0.25);
    }

    private static double Jump(EngagementResult before, EngagementResult now) =>
        before.Slots.Zip(now.Slots).Max(pair => (pair.First.OnTooth.Force - pair.Second.OnTooth.Force).Length)
        / before.Slots.Max(slot => slot.OnTooth.Force.Length);
}
