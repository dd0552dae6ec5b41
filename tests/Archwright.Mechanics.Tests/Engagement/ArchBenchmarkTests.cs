using System.Text.Json.Nodes;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>
/// A round wire in fourteen slots on half an ellipse, one tooth displaced: mechanics-benchmarks.json, arch. Reference
/// by collocation of the rod equations with unknown lengths and forces; checked by an element code. Stated uncertainty
/// 5e-4 of the largest force. Differences are shares of the largest force, or moment, of the case; all fourteen slots
/// count.
/// </summary>
[Trait("basis", "independent")]
public sealed class ArchBenchmarkTests
{
    private const double DefaultShare = 0.003;

    private const double RefinedShare = 5e-4;

    /// <summary>Energy is printed to five digits. The drawn length is soft: with some 0.02 N/mm against sliding, 1e-4
    /// N, that is 4e-6 of the forces here, move it by 5 µm.</summary>
    private const double EnergyShare = 1e-3;
    private const double DrawnTolerance = 5e-3;

    private static readonly EngagementOptions Refined = new() { ElementsPerGap = 16, ElementsPerSlot = 8 };

    public static TheoryData<string> Ids => [.. BenchmarkFile.Ids("arch")];

    [Fact]
    public void All_cases_of_the_file_are_checked() => Assert.Equal(6, Ids.Count);

    [Theory]
    [MemberData(nameof(Ids))]
    public void Forces_moments_and_energy_by_default(string id)
    {
        JsonObject problem = BenchmarkFile.Case("arch", id);
        EngagementResult result = Engage(problem, EngagementOptions.Default);

        CompareLoads(problem, result, DefaultShare);
        Assert.Equal(1, result.StoredEnergy / problem.Number("stored_energy_N_mm"), tolerance: DefaultShare);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Forces_moments_energy_and_drawn_length_refined(string id)
    {
        JsonObject problem = BenchmarkFile.Case("arch", id);
        EngagementResult result = Engage(problem, Refined);

        CompareLoads(problem, result, RefinedShare);
        Assert.Equal(1, result.StoredEnergy / problem.Number("stored_energy_N_mm"), tolerance: EnergyShare);
        double drawn = result.Slots.Single(s => s.Label == (string)problem["inputs"]!["tooth"]!).Drawn;
        double expected = problem.Number("drawn_at_displaced_tooth_mm");
        TestContext.Current.TestOutputHelper?.WriteLine($"drawn {drawn:0.0000}, expected {expected:0.0000}");
        Assert.Equal(expected, drawn, tolerance: DrawnTolerance);
    }

    private static EngagementResult Engage(JsonObject problem, EngagementOptions options)
    {
        EngagementResult result = new Engager(BenchmarkFile.Arch(problem), options).Engage();
        Assert.True(result.Converged, result.Obstacle?.Reason);
        return result;
    }

    private static void CompareLoads(JsonObject problem, EngagementResult actual, double share)
    {
        JsonArray expected = problem["reference"]!.AsArray();
        double force = expected.Max(row => BenchmarkFile.Vector(row!["force_N"]).Length);
        double moment = expected.Max(row => BenchmarkFile.Vector(row!["moment_N_mm"]).Length);
        double forceError = 0;
        double momentError = 0;
        foreach ((JsonNode? row, SlotLoad load) in expected.Zip(actual.Slots))
        {
            Assert.Equal((string)row!["tooth"]!, load.Label);
            Vector3 f = load.OnTooth.Force - BenchmarkFile.Vector(row["force_N"]);
            Vector3 m = load.OnTooth.Moment - BenchmarkFile.Vector(row["moment_N_mm"]);
            forceError = Math.Max(forceError, f.Length / force);
            momentError = Math.Max(momentError, m.Length / Math.Max(moment, force));
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            $"force {forceError:e1}, moment {momentError:e1}, energy "
            + $"{actual.StoredEnergy / problem.Number("stored_energy_N_mm") - 1:e1}; {actual.Iterations} iterations");
        Assert.True(forceError <= share, $"force {forceError:e2} of the largest");
        Assert.True(momentError <= share, $"moment {momentError:e2} of the largest");
    }
}
