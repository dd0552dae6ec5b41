using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

public sealed class TouchedStiffnessTests
{
    /// <summary>Against the stiffness that turns the forces along with the slots, which itself is held against
    /// differences: they differ by forces times arms over the stiffness, which is small where the load is small.
    /// </summary>
    [Theory, Trait("basis", "independent")]
    [InlineData("arch-edges-13-high", Hold.EdgesOnly)]
    [InlineData("arch-edges-22-all", Hold.EdgePoints)]
    [InlineData("arch-point-13-labial", Hold.Point)]
    public void It_is_the_stiffness_of_a_wire_that_carries_little(string id, Hold hold)
    {
        Arrangement arch = BenchmarkFile.Arch(BenchmarkFile.Case("arch", id)).Each(s => s with { Hold = hold });
        Engager engager = Engaged(NearlyAtRest(LawCases.Held(arch with { Slots = arch.Slots[2..7] })));
        double[] whole = engager.TangentStiffness();
        double[] touched = Stiffness(engager);

        double scale = whole.Max(Math.Abs);
        double worst = whole.Zip(touched).Max(pair => Math.Abs(pair.First - pair.Second));
        Assert.True(worst < 0.01 * scale, $"{worst / scale:e2}");
    }

    [Theory, Trait("basis", "law")]
    [InlineData("arch-edges-13-high", Hold.EdgesOnly)]
    [InlineData("arch-edges-22-all", Hold.Walls)]
    public void A_wire_resists_every_motion_of_its_slots(string id, Hold hold)
    {
        Engager engager = Engaged(
            BenchmarkFile.Arch(BenchmarkFile.Case("arch", id)).Each(s => s with { Hold = hold }));
        double[] stiffness = Stiffness(engager);
        int size = 6 * engager.Arrangement.Slots.Length;
        double scale = stiffness.Max(Math.Abs);
        var random = new Random(5);
        for (int n = 0; n < 200; n++)
        {
            double[] motion = [.. Enumerable.Range(0, size).Select(_ => random.NextDouble() - 0.5)];
            double work = 0;
            for (int i = 0; i < size; i++)
            {
                for (int j = 0; j < size; j++)
                    work += motion[i] * stiffness[i * size + j] * motion[j];
            }

            Assert.True(work <= 1e-6 * scale, $"{work}");
        }
    }

    [Fact, Trait("basis", "law")]
    public void Slots_that_move_together_meet_no_resistance()
    {
        Arrangement arch = BenchmarkFile.Arch(BenchmarkFile.Case("arch", "arch-edges-22-all"))
            .Each(s => s with { Hold = Hold.EdgesOnly });
        Engager engager = Engaged(NearlyAtRest(LawCases.Held(arch)));
        double[] stiffness = Stiffness(engager);
        int size = 6 * arch.Slots.Length;
        double scale = stiffness.Max(Math.Abs);
        for (int axis = 0; axis < 3; axis++)
        {
            for (int i = 0; i < size; i++)
            {
                double sum = 0;
                for (int slot = 0; slot < arch.Slots.Length; slot++)
                    sum += stiffness[i * size + 6 * slot + axis];
                Assert.True(Math.Abs(sum) < 1e-4 * scale, $"axis {axis}, load {i}: {sum / scale:e1}");
            }
        }
    }

    // So that what turns with the slots is small against what resists.
    private static Arrangement NearlyAtRest(Arrangement arch) => arch.Each(s => s with
    {
        Actual = s.Rest.Moved((s.Actual.Centre - s.Rest.Centre) * 0.002, default),
    });

    private static Engager Engaged(Arrangement arch)
    {
        var engager = new Engager(arch);
        EngagementResult result = engager.Engage();
        Assert.True(result.Converged, result.Obstacle?.Reason);
        return engager;
    }

    private static double[] Stiffness(Engager engager)
    {
        int size = 6 * engager.Arrangement.Slots.Length;
        var stiffness = new double[size * size];
        Assert.True(engager.TryTouchedStiffness(stiffness));
        return stiffness;
    }
}
