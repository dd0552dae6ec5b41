using System.Text.Json.Nodes;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>A superelastic wire in three slots, the middle one moved out and back.</summary>
public sealed class SuperelasticSlotsTests
{
    /// <summary>Reference: mechanics-benchmarks.json, superelastic_three_slots; two-node elements of another program,
    /// 200 on half the wire with 80 layers, uncertainty 1.3e-3 of the largest force. Its page asks 1 % of a production
    /// solver. The wire's middle is held by symmetry there, and by the pin here.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData(4, 0.01)]
    [InlineData(8, 0.005)]
    public void Force_out_and_back(int elements, double share)
    {
        JsonObject problem = BenchmarkFile.Case("superelastic_three_slots", "slots-A-016-in-022");
        Engager engager = ThreeSlots(problem, new EngagementOptions
        {
            ElementsPerGap = elements,
            ElementsPerSlot = elements,
        });
        Assert.True(engager.Engage().Converged);
        JsonNode[] rows = [.. problem["reference"]!.AsArray()!];
        double largest = rows.Max(row => Math.Abs(row.Number("middle_force_y_N")));
        foreach (JsonNode row in rows)
        {
            EngagementResult result = engager.Apply(Move(engager, row.Number("offset_mm")));

            Assert.True(result.Converged, result.Obstacle?.Reason);
            double force = result.Slots[1].OnTooth.Force.Y;
            TestContext.Current.TestOutputHelper?.WriteLine(
                $"{row.Number("offset_mm")} mm: {force:0.0000} N, {result.Iterations} iterations");
            Assert.Equal(row.Number("middle_force_y_N"), force, share * largest);
            Assert.Equal(row.Number("outer_force_y_N"), result.Slots[0].OnTooth.Force.Y, share * largest);
            Assert.Equal(row.Number("outer_force_y_N"), result.Slots[2].OnTooth.Force.Y, share * largest);
        }
    }

    /// <summary>A step that finds no equilibrium is as if it had not been asked for: what follows has the same bits.
    /// </summary>
    [Fact, Trait("basis", "law")]
    public void A_step_that_fails_leaves_no_trace()
    {
        JsonObject problem = BenchmarkFile.Case("superelastic_three_slots", "slots-A-016-in-022");
        double[] Forces(bool fail)
        {
            Engager engager = ThreeSlots(problem, EngagementOptions.Default);
            engager.Engage();
            Assert.True(engager.Apply(Move(engager, 2)).Converged);
            if (fail)
            {
                SlotFrame away = engager.Arrangement.Slots[1].Rest.Moved(new Vector3(0, 40, 0), default);
                Assert.False(engager.Apply(new Step(5, [(1, away)])).Converged);
            }

            Assert.Equal(36, engager.Arrangement.Temperature);
            EngagementResult after = engager.Apply(Move(engager, 1.5));
            Assert.True(after.Converged);
            return [.. after.Slots.Select(slot => slot.OnTooth.Force.Y), after.TransformedShare];
        }

        Assert.Equal(Forces(fail: false), Forces(fail: true));
    }

    internal static Engager ThreeSlots(JsonObject problem, EngagementOptions options)
    {
        JsonObject inputs = problem["inputs"]!.DeepClone().AsObject();
        inputs["gap_left_mm"] = inputs.Number("gap_each_side_mm");
        inputs["gap_right_mm"] = inputs.Number("gap_each_side_mm");
        inputs["young_MPa"] = 1.0;          // of the elastic wire that is put away
        return new Engager(
            BenchmarkFile.ThreeSlots(inputs, 0, Hold.EdgesOnly) with
            {
                Wire = new Wire(Section.Round(inputs.Number("diameter_mm")), BenchmarkFile.Flag(problem["alloy"])),
                Temperature = problem.Number("temperature_degC"),
            },
            options);
    }

    private static Step Move(Engager engager, double offset) =>
        new(null, [(1, engager.Arrangement.Slots[1].Rest.Moved(new Vector3(0, offset, 0), default))]);
}
