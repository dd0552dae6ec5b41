using System.Text.Json;
using System.Text.Json.Nodes;
using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Archwright.Exchange.Tests.Schemas;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

/// <summary>The chain of figures of a visit, computed again from what is printed, as a colleague would by hand. Rests
/// on the formulas of the documentation, written here anew.</summary>
[Trait("basis", "independent")]
public sealed class VisitTraceTests
{
    private const double Digits = 1e-9;

    private static readonly Lazy<Task<Run>> Asked = new(async () =>
    {
        using var folder = new Folder();
        return await Run.Of(
            "visit", Case(folder), "--explain", "33", "--why-not", "niti-014", "--sensitivity", "--json");
    });

    [Fact]
    public async Task Where_the_tooth_stands_follows_from_its_offsets_and_its_width()
    {
        JsonElement chain = (await Of()).GetProperty("explain");

        Assert.Equal("33", chain.GetProperty("tooth").GetString());
        Assert.Equal("niti-014", chain.GetProperty("wire").GetString());
        Assert.Equal(chain.GetProperty("distance_mm").GetDouble(), Distance(chain), Digits);
    }

    [Fact]
    public async Task Stress_and_speed_follow_from_the_load_at_the_root()
    {
        JsonElement given = (await Of()).GetProperty("explain").GetProperty("once_given");
        double[] force = Three(given, "force_at_resistance_N");
        double[] moment = Three(given, "moment_at_resistance_N_mm");
        double[] arms = Three(given, "turning_arms_mm");

        double stress = 1000 * Math.Sqrt(force.Sum(f => f * f) + moment.Zip(arms, (m, t) => m / t * (m / t)).Sum())
            / Number(given, "stressed_area_mm2");
        double mean = stress < 1 ? 0.0129 * stress : 0.0129 + 0.0109 * Math.Log(Math.Min(stress, 100));

        Assert.Equal(stress, Number(given, "stress_kPa"), Digits * (1 + stress));
        Assert.Equal(mean, Number(given, "mean_speed_mm_per_day"), Digits);
        Assert.Equal(7 * Number(given, "rate") * mean, Number(given, "speed_mm_per_week"), Digits);
    }

    [Fact]
    public async Task Every_ceiling_is_held_against_the_load_once_given()
    {
        JsonElement chain = (await Of()).GetProperty("explain");
        JsonElement load = chain.GetProperty("once_given").GetProperty("from_wire");

        JsonElement[] ceilings = [.. chain.GetProperty("ceilings").EnumerateArray()];
        Assert.NotEmpty(ceilings);
        foreach (JsonElement held in ceilings)
        {
            double expected = held.GetProperty("kind").GetString() switch
            {
                "labiolingual_force" => Math.Abs(Number(load, "labial_N")),
                "mesiodistal_force" => Math.Abs(Number(load, "mesial_N")),
                "extrusion_force" => Math.Max(0, Number(load, "occlusal_N")),
                "intrusion_force" => Math.Max(0, -Number(load, "occlusal_N")),
                "rotation_moment" => Math.Abs(Number(load, "rotation_N_mm")),
                "tip_moment" => Math.Abs(Number(load, "tip_N_mm")),
                "torque_moment" => Math.Abs(Number(load, "torque_N_mm")),
                var other => throw new InvalidOperationException($"No such kind: {other}."),
            };
            Assert.Equal(expected, Number(held, "judged"), Digits);
            Assert.Equal(Number(held, "judged") <= Number(held, "ceiling"), held.GetProperty("within").GetBoolean());
        }
    }

    [Fact]
    public async Task The_score_follows_from_movement_progress_and_comfort()
    {
        JsonElement why = (await Of()).GetProperty("why_not");
        double force = Number(why, "fitting_force_N");
        double index = 10 * force / (force + Number(why, "half_force_N"));
        double progress = Math.Clamp(
            Math.Log(Number(why, "stiffness_N_mm2") / Number(why, "softest_N_mm2"))
            / Math.Log(Number(why, "working_N_mm2") / Number(why, "softest_N_mm2")), 0, 1);

        Assert.Equal(index, Number(why, "comfort_index"), Digits);
        Assert.Equal(progress, Number(why, "progress"), Digits);
        if (why.GetProperty("score").ValueKind == JsonValueKind.Number)
        {
            Assert.Equal(
                Number(why, "weight_delivered") * Number(why, "delivered_share")
                + Number(why, "weight_progress") * progress - Number(why, "weight_comfort") * index / 10,
                Number(why, "score"), Digits);
        }

        Assert.Equal(
            why.GetProperty("allowed").GetBoolean(),
            why.GetProperty("findings").EnumerateArray().All(one => one.GetProperty("kind").GetString() != "against"));
    }

    [Fact]
    public async Task The_age_and_the_place_of_the_tooth_that_limits_are_tried_with_the_mechanics()
    {
        JsonElement[] tried =
        [
            .. (await Of()).GetProperty("sensitivity").EnumerateArray()
                .Where(one => one.GetProperty("computed_anew").GetBoolean()),
        ];

        Assert.Equal(["years", "mm"], tried.Select(one => one.GetProperty("unit").GetString()));
    }

    [Fact]
    public async Task The_document_keeps_to_its_schema()
    {
        Run run = await Asked.Value;

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Empty(Schema.Load("archwright-visit-1").Errors(JsonNode.Parse(run.Output)));
    }

    [Fact]
    public async Task The_report_tells_the_same_chain_and_what_would_turn_it()
    {
        using var folder = new Folder();

        Run run = await Run.Of("visit", Case(folder), "--explain", "33", "--why-not", "niti-014", "--sensitivity");

        Assert.Equal(ExitCode.Done, run.Code);
        foreach (string said in new[]
                 {
                     "How it comes about: niti-014 on the lower left canine (33)", "Once given", "kPa", "Why niti-014",
                     "Score", "What would turn it", "worst discomfort",
                 })
        {
            Assert.Contains(said, run.Output, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("--explain", "18", "no tooth '18' to explain", "33")]
    [InlineData("--explain", "canine", "no tooth 'canine' to explain", "33")]
    [InlineData("--why-not", "ss-018", "ss-018 is not among the wires", "Add it to the stock")]
    public async Task What_cannot_be_told_is_refused_with_a_remedy(
        string option, string value, string reason, string mend)
    {
        using var folder = new Folder();

        Run run = await Run.Of("visit", Case(folder), option, value);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains(reason, run.Error, StringComparison.Ordinal);
        Assert.Contains(mend, run.Error, StringComparison.Ordinal);
    }

    private static async Task<JsonElement> Of() => (await Asked.Value).Json();

    /// <summary>Six front teeth, one wire in place and one in the drawer: a visit that is quick to compute.</summary>
    internal static string Case(Folder folder)
    {
        JsonNode arch = JsonNode.Parse(File.ReadAllText(folder.Arch()))!; // written by the folder
        arch["visit"] = JsonNode.Parse(
            """
            { "present": { "catalogue": "niti-012", "weeks": 6 }, "slot_in": 0.022, "working_wire": "ss-019x025",
              "stock": [ "niti-014" ], "alerts": [], "discomfort_0_10": 2, "age_years": 15 }
            """);
        return folder.Text("visit.json", arch.ToJsonString());
    }

    private static double Distance(JsonElement chain)
    {
        JsonElement offset = chain.GetProperty("offset");
        double shift = new[] { "labial_mm", "occlusal_mm", "mesial_mm" }.Sum(key => Math.Pow(Number(offset, key), 2));
        double turn = new[] { "rotation_deg", "tip_deg", "torque_deg" }
            .Sum(key => Math.Pow(double.DegreesToRadians(Number(offset, key)), 2));
        return Math.Sqrt(shift + Math.Pow(Number(chain, "crown_width_mm") / 2, 2) * turn);
    }

    private static double Number(JsonElement group, string key) => group.GetProperty(key).GetDouble();

    private static double[] Three(JsonElement group, string key) =>
        [.. group.GetProperty(key).EnumerateArray().Select(one => one.GetDouble())];
}
