using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

public sealed class CondensationTests
{
    /// <summary>The condensed stiffness against differences: each slot is moved a little both ways and the wire settled
    /// anew. Steps of 10⁻⁴ mm and rad: contacts stay as they are, the formula errs by the square of them, and forces
    /// are found to 10⁻⁷. The first slot clamps the wire, so that the settling has no sliding to find, which is not
    /// found as nearly.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData("arch-edges-13-high", Hold.EdgesOnly)]
    [InlineData("arch-edges-22-all", Hold.EdgePoints)]
    [InlineData("arch-point-13-labial", Hold.Point)]
    public void The_stiffness_is_the_change_of_the_loads(string id, Hold hold)
    {
        Arrangement arch = BenchmarkFile.Arch(BenchmarkFile.Case("arch", id)).Each(s => s with { Hold = hold });
        arch = LawCases.Held(arch with { Slots = arch.Slots[2..7] });
        var engager = new Engager(arch);
        Assert.True(engager.Engage().Converged);
        double[] stiffness = engager.TangentStiffness();
        int size = 6 * arch.Slots.Length;
        Assert.Equal(size * size, stiffness.Length);
        double scale = stiffness.Max(Math.Abs);
        double worst = 0;
        for (int j = 0; j < size; j++)
        {
            double[] plus = Loads(engager, arch, j, 1e-4);
            double[] minus = Loads(engager, arch, j, -1e-4);
            for (int i = 0; i < size; i++)
                worst = Math.Max(worst, Math.Abs((plus[i] - minus[i]) / 2e-4 - stiffness[i * size + j]));
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"worst {worst / scale:e1} of the largest");

        // Where the wire is loaded, settling also moves nodes along to the touching places; the condensed answer keeps
        // them.
        Assert.True(worst < 2e-3 * scale, $"{worst / scale:e2}");
    }

    private static double[] Loads(Engager engager, Arrangement arch, int motion, double by)
    {
        int slot = motion / 6;
        Vector3 unit = new(motion % 3 == 0 ? by : 0, motion % 3 == 1 ? by : 0, motion % 3 == 2 ? by : 0);
        SlotFrame home = arch.Slots[slot].Actual;
        SlotFrame there = motion % 6 < 3 ? home.Moved(unit, default) : home.Moved(default, unit);
        EngagementResult result = engager.Apply(new Step(null, [(slot, there)]));
        Assert.True(result.Converged, result.Obstacle?.Reason);
        Assert.True(engager.Apply(new Step(null, [(slot, home)])).Converged);
        return [.. result.Slots.SelectMany(s => (double[])
        [
            s.OnTooth.Force.X, s.OnTooth.Force.Y, s.OnTooth.Force.Z,
            s.OnTooth.Moment.X, s.OnTooth.Moment.Y, s.OnTooth.Moment.Z,
        ])];
    }
}
