using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Results;
using Archwright.Exchange.Tests.CaseFiles;
using Archwright.Exchange.Tests.Schemas;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.Tests.Results;

/// <summary>The result of a solve, as a file.</summary>
public sealed class ForcesJsonTests
{
    private static readonly JsonNode Set = JsonNode.Parse(
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "mechanics-benchmarks.json")))!;

    public static TheoryData<string> Arches =>
        [.. Set["arch"]!.AsArray().Select(problem => problem!["id"]!.GetValue<string>())];

    /// <summary>The reference set gives loads in the patient's frame and, resolved by another program, in clinical
    /// components of the displaced slot. Five digits of the largest are printed: half a unit of the fifth.</summary>
    [Theory, MemberData(nameof(Arches)), Trait("basis", "independent")]
    public void Loads_of_the_reference_set_resolve_into_its_clinical_components(string id)
    {
        JsonNode problem = Set["arch"]!.AsArray().Single(p => p!["id"]!.GetValue<string>() == id)!;
        CaseFile caseFile = Texts.Good(BenchmarkCasesTests.ArchText(problem).ToJsonString());
        JsonArray reference = problem["reference"]!.AsArray();
        var loads = caseFile.Arrangement.Slots.Select((slot, i) => new SlotLoad(
            slot.Label,
            new Wrench(Vector(reference[i]!["force_N"]!), Vector(reference[i]!["moment_N_mm"]!), slot.Actual.Centre),
            ContactState.BothEdges, 0, 0));

        JsonNode written = Written(new ForcesReport
        {
            Case = caseFile, Engaged = Result([.. loads]), Time = new SolveTime.Once(1),
        });

        double largestForce = loads.Max(load => load.OnTooth.Force.Length);
        double largestMoment = Math.Max(1, loads.Max(load => load.OnTooth.Moment.Length));
        foreach ((JsonNode? expected, JsonNode? actual) in reference.Zip(written["slots"]!.AsArray()))
        {
            Assert.Equal(expected!["tooth"]!.GetValue<string>(), actual!["tooth"]!.GetValue<string>());
            foreach (string key in (string[])["labial_N", "occlusal_N", "mesial_N"])
                AssertNear(expected, actual, key, 5e-5 * largestForce);
            foreach (string key in (string[])["rotation_N_mm", "tip_N_mm", "torque_N_mm"])
                AssertNear(expected, actual, key, 5e-5 * largestMoment);
        }
    }

    [Fact, Trait("basis", "docs")]
    public void A_result_follows_its_schema_with_steps_and_an_obstacle_and_with_either_time()
    {
        CaseFile caseFile = Texts.Good(Texts.Arch);
        EngagementResult good = Result(caseFile);
        EngagementResult blocked = good with { Obstacle = new Obstacle(1, 7.5, 5, "The tie at tooth 12 opens.") };
        EngagementResult lost = good with { Converged = false,
            Obstacle = new Obstacle(-1, double.NaN, double.NaN, "No equilibrium.") };
        Schema schema = Schema.Load("archwright-forces-1");

        foreach (ForcesReport report in (ForcesReport[])
        [
            new() { Case = caseFile, Engaged = good, Steps = [good, good], Time = new SolveTime.Once(1.5) },
            new() { Case = caseFile, Engaged = blocked, Time = new SolveTime.Once(1.5) },
            new() { Case = caseFile, Engaged = good, Steps = [lost], Time = new SolveTime.Repeated(1.5, 0.3) },
            new() { Case = Texts.Good(Texts.Bench), Engaged = Result(Texts.Good(Texts.Bench)),
                Time = new SolveTime.Once(0) },
        ])
        {
            Assert.Empty(schema.Errors(Written(report)));
        }
    }

    [Fact, Trait("basis", "docs")]
    public void The_keys_are_those_of_the_contract()
    {
        CaseFile caseFile = Texts.Good(Texts.Arch);
        EngagementResult result = Result(caseFile);

        JsonNode once = Written(new ForcesReport
        {
            Case = caseFile, Engaged = result, Steps = [result, result], Time = new SolveTime.Once(1),
        });
        JsonNode repeated = Written(new ForcesReport
        {
            Case = caseFile, Engaged = result, Steps = [result, result], Time = new SolveTime.Repeated(2, 1),
        });

        Assert.Equal(
            ["format", "converged", "residual_N", "held_along_N", "elapsed_ms", "wire", "slots", "law", "steps"],
            Keys(once));
        Assert.Equal(
            ["format", "converged", "residual_N", "held_along_N", "cold_ms", "warm_ms", "wire", "slots", "law",
                "steps"],
            Keys(repeated));
        Assert.Equal(["max_strain", "transformed_share", "set_mm", "stored_energy_N_mm"], Keys(once["wire"]!));
        Assert.Equal(
            ["tooth", "force_N", "moment_N_mm", "labial_N", "occlusal_N", "mesial_N", "rotation_N_mm", "tip_N_mm",
                "torque_N_mm",
                "contact", "drawn_mm"],
            Keys(once["slots"]![0]!));
        Assert.Equal(["temperature_degC", "wire", "slots"], Keys(once["steps"]![0]!));
        Assert.Equal("archwright-forces/1", once["format"]!.GetValue<string>());
    }

    [Fact, Trait("basis", "law")]
    public void A_step_keeps_the_temperature_and_the_places_that_it_does_not_change()
    {
        CaseFile caseFile = Texts.Good(Texts.Arch);                  // to 10 °C, then tooth 13 to 1 mm high
        SlotFrame moved = caseFile.Then[1].Moves[0].Actual;
        var load = new Wrench(new Vector3(0, 0, 1), default, caseFile.Arrangement.Slots[0].Actual.Centre);
        EngagementResult result = Result(caseFile) with
        {
            Slots = Result(caseFile).Slots.SetItem(0, new SlotLoad("13", load, ContactState.OneEdge, 0.25, 0)),
        };

        JsonNode written = Written(new ForcesReport
        {
            Case = caseFile, Engaged = result, Steps = [result, result], Time = new SolveTime.Once(1),
        });

        Assert.Equal([10.0, 10.0], written["steps"]!.AsArray().Select(s => s!["temperature_degC"]!.GetValue<double>()));
        Assert.Equal([0, 0, 0], Vector3Of(written["slots"]![0]!["moment_N_mm"]!));
        Assert.Equal([0, 0, 0], Vector3Of(written["steps"]![0]!["slots"]![0]!["moment_N_mm"]!));

        // Moment about the place to which the step has moved the slot: 0 + (about − place) × F.
        Vector3 expected = Vector3.Cross(caseFile.Arrangement.Slots[0].Actual.Centre - moved.Centre, load.Force);
        Assert.Equal([expected.X, expected.Y, expected.Z],
            Vector3Of(written["steps"]![1]!["slots"]![0]!["moment_N_mm"]!));
        Assert.Equal(0.25, written["slots"]![0]!["drawn_mm"]!.GetValue<double>());
    }

    [Fact, Trait("basis", "law")]
    public void A_report_has_converged_when_all_its_steps_have_and_shows_the_largest_residual()
    {
        CaseFile caseFile = Texts.Good(Texts.Arch);
        EngagementResult good = Result(caseFile) with { Residual = 1e-9 };

        JsonNode written = Written(new ForcesReport
        {
            Case = caseFile, Engaged = good, Steps = [good with { Converged = false, Residual = 0.5 }],
                Time = new SolveTime.Once(1),
        });

        Assert.False(written["converged"]!.GetValue<bool>());
        Assert.Equal(0.5, written["residual_N"]!.GetValue<double>());
    }

    [Theory, Trait("basis", "law")]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_figure_that_is_not_finite_is_an_exception_and_nothing_is_written(double figure)
    {
        CaseFile caseFile = Texts.Good(Texts.Arch);
        EngagementResult good = Result(caseFile);
        var badLoad = good.Slots[2] with { OnTooth = new Wrench(new Vector3(0, figure, 0), default, default) };
        using var stream = new MemoryStream();

        foreach (EngagementResult bad in (EngagementResult[])
            [good with { LargestStrain = figure }, good with { Residual = figure },
                good with { Slots = good.Slots.SetItem(2, badLoad) }])
        {
            var report = new ForcesReport { Case = caseFile, Engaged = bad, Time = new SolveTime.Once(1) };
            Assert.Throws<ArgumentOutOfRangeException>(() => ForcesJson.Write(report, stream));
        }

        Assert.Equal(0, stream.Length);
    }

    [Fact, Trait("basis", "law")]
    public void Results_of_another_case_are_refused()
    {
        var report = new ForcesReport
        {
            Case = Texts.Good(Texts.Arch), Engaged = Result(Texts.Good(Texts.Bench)), Time = new SolveTime.Once(1),
        };

        Assert.Throws<ArgumentException>(() => ForcesJson.Write(report, Stream.Null));
    }

    internal static JsonNode Written(ForcesReport report)
    {
        using var stream = new MemoryStream();
        ForcesJson.Write(report, stream);
        return JsonNode.Parse(stream.ToArray())!;
    }

    private static EngagementResult Result(CaseFile caseFile) => Result(
    [
        .. caseFile.Arrangement.Slots.Select(slot => new SlotLoad(
            slot.Label, new Wrench(new Vector3(0.5, -0.25, 0.125), new Vector3(1, 2, 3), slot.Actual.Centre),
                ContactState.None, -0.0, 0)),
    ]);

    private static EngagementResult Result(ImmutableArray<SlotLoad> loads) => new()
    {
        Converged = true,
        Residual = 1e-8,
        Slots = loads,
        LargestStrain = 0.004,
        StoredEnergy = 2.5,
        CentreLine = [],
        Iterations = 12,
    };

    private static void AssertNear(JsonNode expected, JsonNode actual, string key, double tolerance) => Assert.Equal(
        expected[key]!.GetValue<double>(), actual[key]!.GetValue<double>(), tolerance);

    private static string[] Keys(JsonNode node) => [.. node.AsObject().Select(member => member.Key)];

    private static Vector3 Vector(JsonNode node) =>
        new(node[0]!.GetValue<double>(), node[1]!.GetValue<double>(), node[2]!.GetValue<double>());

    private static double[] Vector3Of(JsonNode node) => [.. node.AsArray().Select(n => n!.GetValue<double>())];
}
