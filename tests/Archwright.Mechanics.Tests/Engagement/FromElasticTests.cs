using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>A wire that starts where another of its section rests ends where it would have ended by itself.</summary>
public sealed class FromElasticTests
{
    /// <summary>Forces of elastic wires are as their moduli where no tie presses: law. Where one does they are not, and
    /// the wire still comes to rest where it would alone. Of places of rest along the arch some wires have more than
    /// one, a few micrometres apart, so that it is asked of four in five, as of other pairs of ways.</summary>
    [Fact, Trait("basis", "law")]
    public void An_elastic_wire_started_from_another_rests_as_it_would_alone()
    {
        int compared = 0;
        int alike = 0;
        for (int number = 1; number <= 40; number++)
        {
            Arrangement arch = new RandomArch(number).Arrangement;
            using var soft = new Engager(With(arch, 0.3 * arch.Wire.Alloy.Young, 0.3 * arch.Wire.Alloy.Shear));
            using var alone = new Engager(arch);
            EngagementResult expected = alone.Engage();
            if (!soft.Engage().Converged || !expected.Converged || expected.HeldAlong > 1e-4)
                continue;

            using var engager = new Engager(arch);
            EngagementResult found = engager.EngageFrom(soft);
            Assert.True(found.Converged, $"#{number}");
            if (!RestsAlike(expected, found))
                continue;

            compared++;
            double error = Error(found, expected);
            alike += error < 0.006 ? 1 : 0;
            TestContext.Current.TestOutputHelper?.WriteLine($"#{number} {error:0.0000} in {found.Iterations}");
        }

        Assert.True(compared >= 20, $"Only {compared} wires were compared.");
        Assert.True(alike >= 0.8 * compared, $"Only {alike} of {compared} wires rest alike.");
    }

    /// <summary>Wires that transform or yield, relieved a tenth of their way: led there by an elastic wire they come to
    /// rest where they come by themselves, with the same history.</summary>
    [Fact, Trait("basis", "law")]
    public void A_wire_with_memory_led_to_its_next_rest_rests_as_it_would_alone()
    {
        int compared = 0;
        int alike = 0;
        for (int number = 1; number <= 60; number++)
        {
            Arrangement arch = RandomAlloy.Into(new RandomArch(number).Arrangement, number);
            if (arch.Wire.Alloy is LinearElastic)
                continue;

            Step step = Engager.Relieving(arch, 0.1);
            using var alone = new Engager(arch, Few);
            using var led = new Engager(arch, Few);
            using var leader = new Engager(With(Moved(arch, step), arch.Wire.Alloy.Young, arch.Wire.Alloy.Shear), Few);
            if (!leader.Engage().Converged || !alone.Engage().Converged || !led.Engage().Converged)
                continue;

            EngagementResult expected = alone.Apply(step);
            EngagementResult found = led.ApplyFrom(step, leader);
            if (!expected.Converged)
                continue;

            Assert.True(found.Converged, $"#{number}");
            compared++;
            double error = Error(found, expected);
            alike += error < 0.02 ? 1 : 0;
            TestContext.Current.TestOutputHelper?.WriteLine(
                $"#{number} {error:0.0000} in {found.Iterations} for {expected.Iterations}");
        }

        Assert.True(compared >= 15, $"Only {compared} wires were compared.");
        Assert.True(alike >= 0.8 * compared, $"Only {alike} of {compared} wires rest alike.");
    }

    private static readonly EngagementOptions Few = new() { MostIterations = 100 };

    private static Arrangement Moved(Arrangement arch, Step step)
    {
        var slots = arch.Slots.ToBuilder();
        foreach ((int slot, SlotFrame place) in step.Moves)
            slots[slot] = slots[slot] with { Actual = place };
        return arch with { Slots = slots.MoveToImmutable() };
    }

    [Fact, Trait("basis", "docs")]
    public void Other_slots_another_section_or_a_memory_are_refused()
    {
        Arrangement arch = new RandomArch(1).Arrangement;
        using var engager = new Engager(arch);
        using var other = new Engager(new RandomArch(2).Arrangement);
        using var remembers = new Engager(RandomAlloy.Into(arch, 1));
        other.Engage();
        remembers.Engage();

        Assert.Throws<ArgumentException>(() => engager.EngageFrom(other));
        Assert.Throws<ArgumentException>(() => engager.EngageFrom(remembers));
        Assert.Throws<ArgumentNullException>(() => engager.EngageFrom(null!));
        other.Dispose();
        Assert.Throws<ObjectDisposedException>(() => engager.EngageFrom(other));
    }

    [Fact, Trait("basis", "docs")]
    public void From_one_that_was_never_engaged_a_wire_is_engaged_as_ever()
    {
        Arrangement arch = new RandomArch(1).Arrangement;
        using var idle = new Engager(arch);
        using var engager = new Engager(arch);
        using var alone = new Engager(arch);

        Assert.Equal(
            alone.Engage().Slots.Select(slot => slot.OnTooth),
            engager.EngageFrom(idle).Slots.Select(slot => slot.OnTooth));
    }

    private static Arrangement With(Arrangement arch, double young, double shear) =>
        arch with { Wire = arch.Wire with { Alloy = LinearElastic.WithShear(young, shear) } };

    // A wire between its walls may have more than one rest, drawn in by other lengths.
    private static bool RestsAlike(EngagementResult a, EngagementResult b)
    {
        for (int i = 0; i < a.Slots.Length; i++)
        {
            if (Math.Abs(a.Slots[i].Drawn - b.Slots[i].Drawn) > 0.02)
                return false;
        }

        return true;
    }

    private static double Error(EngagementResult found, EngagementResult expected) =>
        found.Slots.Zip(expected.Slots, (a, b) => (a.OnTooth.Force - b.OnTooth.Force).Length).Max()
            / (expected.Slots.Max(slot => slot.OnTooth.Force.Length) + 0.01);
}
