using System.Text.Json.Nodes;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>Wires with memory in three slots: energy, springback, working figures.</summary>
public sealed class MemoryTests
{
    private static readonly ElasticPlastic Steel = new(180_000, 0.3, 1_350, 44_000);

    /// <summary>The middle slot goes out and back; the work that the slot does on the wire, by the trapezium rule, is
    /// what the wire has kept. A loop of a wire that transforms is open; no path gives back more than it
    /// took.</summary>
    [Theory, Trait("basis", "law")]
    [InlineData(true)]
    [InlineData(false)]
    public void A_closed_cycle_of_the_slots_takes_more_than_it_returns(bool transforms)
    {
        Engager engager = transforms
            ? SuperelasticSlotsTests.ThreeSlots(Problem, EngagementOptions.Default)
            : SteelWire();
        Assert.True(engager.Engage().Converged);
        double work = 0;
        double taken = 0;
        double force = 0;
        double at = 0;
        foreach (double offset in (double[])[0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.25, 1, 0.75, 0.5, 0.25, 0])
        {
            EngagementResult result = engager.Apply(Move(engager, offset));
            Assert.True(result.Converged);
            double next = -result.Slots[1].OnTooth.Force.Y;
            double part = (force + next) / 2 * (offset - at);
            work += part;
            taken += Math.Max(part, 0);
            (force, at) = (next, offset);
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"taken {taken:0.000}, kept {work:0.000} N·mm");
        Assert.InRange(work, 0.1 * taken, taken);
    }

    /// <summary>Far below its yield strength a wire that could yield is an elastic one.</summary>
    [Fact, Trait("basis", "law")]
    public void Below_its_limit_a_wire_with_memory_answers_as_an_elastic_one()
    {
        EngagementResult elastic = Engaged(new LinearElastic(180_000, 0.3), 0.3);
        EngagementResult steel = Engaged(Steel, 0.3);

        // The mesh of a wire with memory is twice as fine.
        Assert.Equal(elastic.Slots[1].OnTooth.Force.Y, steel.Slots[1].OnTooth.Force.Y, tolerance: 0.004);
        Assert.Equal(0, steel.Set);
    }

    /// <summary>Bent beyond its limit and taken out: the rest shape from the strain that is left in its sections,
    /// against the offset at which the middle slot, led back, no longer feels the wire. With play of 0.076 mm on
    /// either side the two agree to that.</summary>
    [Fact, Trait("basis", "independent")]
    public void The_set_of_an_overbent_wire_is_where_the_slot_loses_it_on_the_way_back()
    {
        Engager engager = SteelWire();
        engager.Engage();
        EngagementResult bent = engager.Apply(Move(engager, 2.5));
        Assert.True(bent.Converged);
        Assert.True(bent.Set > 0.3, $"{bent.Set}");

        double left = 2.5;
        while (left > 0 && engager.Apply(Move(engager, left - 0.05)) is { Converged: true } result
            && result.Slots[1].OnTooth.Force.Y < -1e-3)
        {
            left -= 0.05;
        }

        // A hat of height h laid on its rest shape as closely as can be shows about half of h at its top and half at
        // its ends; a rounder bow shows more at the top.
        TestContext.Current.TestOutputHelper?.WriteLine($"set {bent.Set:0.000}, lost at {left:0.00}");
        Assert.InRange(bent.Set, 0.5 * left, 0.7 * left);
    }

    [Fact, Trait("basis", "law")]
    public void The_working_force_is_lower_and_the_engaged_state_is_put_back()
    {
        Engager engager = SuperelasticSlotsTests.ThreeSlots(Problem, EngagementOptions.Default);
        engager.Engage();
        EngagementResult engaged = engager.Apply(Move(engager, 2));
        EngagementResult working = engager.Working();
        EngagementResult again = engager.Apply(new Step(null, []));

        Assert.True(working.Converged);
        double on = -engaged.Slots[1].OnTooth.Force.Y;
        Assert.InRange(-working.Slots[1].OnTooth.Force.Y, 0.4 * on, 0.75 * on);
        Assert.Equal(on, -again.Slots[1].OnTooth.Force.Y, tolerance: 1e-3);
    }

    [Fact, Trait("basis", "law")]
    public void An_iteration_and_a_commit_of_a_wire_with_memory_allocate_nothing()
    {
        Engager engager = SuperelasticSlotsTests.ThreeSlots(Problem, EngagementOptions.Default);
        engager.Engage();
        Assert.True(engager.Apply(Move(engager, 1.5)).Converged);
        MoveAndCommit(engager, 0.01);
        int before = engager.Rod.Iterations;

        long bytes = GC.GetAllocatedBytesForCurrentThread();
        SearchEnd end = MoveAndCommit(engager, -0.02);
        bytes = GC.GetAllocatedBytesForCurrentThread() - bytes;

        Assert.Equal(SearchEnd.Converged, end);
        Assert.True(engager.Rod.Iterations > before + 1, "Nothing was iterated, so nothing is shown.");
        Assert.Equal(0, bytes);
    }

    private static SearchEnd MoveAndCommit(Engager engager, double by)
    {
        Equilibrium rod = engager.Rod;
        rod.Frames[1] = rod.Frames[1].Moved(rod.Frames[1].Outward * by, default);
        SearchEnd end = rod.SearchNear(80, loose: true, TestContext.Current.CancellationToken);
        rod.Law.Commit(rod.Mesh, rod.State);
        return end;
    }

    private static JsonObject Problem => BenchmarkFile.Case("superelastic_three_slots", "slots-A-016-in-022");

    private static Step Move(Engager engager, double offset) =>
        new(null, [(1, engager.Arrangement.Slots[1].Rest.Moved(new Vector3(0, offset, 0), default))]);

    private static Engager SteelWire() => new(Arrangement(Steel, 0));

    private static EngagementResult Engaged(Alloy alloy, double offset)
    {
        EngagementResult result = new Engager(Arrangement(alloy, offset)).Engage();
        Assert.True(result.Converged);
        return result;
    }

    private static Arrangement Arrangement(Alloy alloy, double offset)
    {
        JsonObject inputs = BenchmarkFile.Case("three_slots", "three-slots-016-in-022")["inputs"]!.AsObject();
        return BenchmarkFile.ThreeSlots(inputs, offset, Hold.EdgesOnly) with
        {
            Wire = new Wire(Section.Round(inputs.Number("diameter_mm")), alloy),
        };
    }
}
