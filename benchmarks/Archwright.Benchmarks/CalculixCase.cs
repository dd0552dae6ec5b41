using System.Text.Json;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Benchmarks;

/// <summary>Our side of <c>benchmarks/calculix</c>: the wire glides at one point in each slot.</summary>
internal static class CalculixCase
{
    /// <summary>Solves the case and prints times and forces as one JSON document.</summary>
    public static void Print(string id, bool once, TextWriter output)
    {
        Arrangement arch = Problems.Gliding(id);
        EngagementResult result = new Engager(arch).Engage();
        if (!result.Converged)
            throw new UnsolvedException(result.Obstacle?.Reason ?? "It did not converge.");

        double? cold = once ? null : Timing.Cold(arch).Milliseconds;
        double? warm = once ? null : Timing.Warm(new Problem(id, arch)).Milliseconds;
        output.WriteLine(JsonSerializer.Serialize(new
        {
            cold_ms = cold,
            warm_ms = warm,
            residual_N = result.Residual,
            slots = result.Slots.Zip(arch.Slots, Components),
        }));
    }

    // Upper arch: the third axis points occlusally.
    private static object Components(SlotLoad load, Slot slot) => new
    {
        tooth = load.Label,
        labial_N = Vector3.Dot(load.OnTooth.Force, slot.Actual.Outward),
        occlusal_N = Vector3.Dot(load.OnTooth.Force, slot.Actual.Third),
        along_N = Vector3.Dot(load.OnTooth.Force, slot.Actual.Along),
    };
}
