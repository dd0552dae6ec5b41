using System.Text.Json.Nodes;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>The three-slot superelastic problem of the reference file on several meshes and strides: what the pages of
/// the theory print, and the tests hold.</summary>
internal static class Convergence
{
    /// <summary>The problem: mechanics-benchmarks.json, superelastic_three_slots; 200 two-node elements on half the
    /// wire and 80 layers of another program, uncertainty 1.3e-3 of the largest force.</summary>
    public const string Problem = "slots-A-016-in-022";

    /// <summary>The middle slot goes out and back.</summary>
    /// <param name="elements">Elements in a usual gap and along a slot, before a wire with memory doubles them.</param>
    /// <param name="strides">Steps in which every stretch between two readings is gone: 1 leaves it to the
    /// engager.</param>
    public static Row Run(int elements, int strides = 1)
    {
        JsonObject problem = BenchmarkFile.Case("superelastic_three_slots", Problem);
        Engager engager = SuperelasticSlotsTests.ThreeSlots(
            problem, new EngagementOptions { ElementsPerGap = elements, ElementsPerSlot = elements });
        EngagementResult result = engager.Engage();
        Assert.True(result.Converged);
        JsonNode[] readings = [.. problem["reference"]!.AsArray()!];
        double largest = readings.Max(row => Math.Abs(row.Number("middle_force_y_N")));
        double error = 0;
        double from = 0;
        int most = 0;
        foreach (JsonNode reading in readings)
        {
            double to = reading.Number("offset_mm");
            for (int k = 1; k <= strides; k++)
            {
                result = engager.Apply(Out(engager, from + (to - from) * k / strides));
                Assert.True(result.Converged, result.Obstacle?.Reason);
            }

            from = to;
            most = Math.Max(most, engager.Rod.Mesh.Nodes);
            error = Math.Max(error, Math.Abs(
                result.Slots[1].OnTooth.Force.Y - reading.Number("middle_force_y_N")));
        }

        return new Row(elements, strides, 8 * most, error / largest);
    }

    private static Step Out(Engager engager, double offset) =>
        new(null, [(1, engager.Arrangement.Slots[1].Rest.Moved(new Vector3(0, offset, 0), default))]);

    /// <summary>One line of a table.</summary>
    /// <param name="Elements">Elements in a gap and a slot, as asked.</param>
    /// <param name="Strides">Steps between two readings.</param>
    /// <param name="Unknowns">Of the finest mesh on the way.</param>
    /// <param name="Error">Largest difference of the middle force from the reference, over its largest.</param>
    internal sealed record Row(int Elements, int Strides, int Unknowns, double Error);
}
