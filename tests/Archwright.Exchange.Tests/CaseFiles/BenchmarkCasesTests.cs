using System.Globalization;
using System.Text.Json.Nodes;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.Tests.CaseFiles;

/// <summary>
/// Every three-slot, arch and torsion problem of the reference set <c>mechanics-benchmarks.json</c> can be said as a
/// case file and reads without a problem. Solving them is the business of the mechanics' own tests.
/// </summary>
/// <remarks>As files: three slots are a bench with a straight rest shape, the middle slot offset across the wire; an
/// arch held at points has "hold": "point"; an arch held at edges has slots exactly as high and deep as the wire, and
/// contact at their edges alone.</remarks>
[Trait("basis", "independent")]
public sealed class BenchmarkCasesTests
{
    private static readonly JsonNode Set = JsonNode.Parse(
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "mechanics-benchmarks.json")))!;

    public static TheoryData<string> ThreeSlots => Ids("three_slots");

    public static TheoryData<string> Arches => Ids("arch");

    public static TheoryData<string> Torsions => Ids("torsion");

    [Theory, MemberData(nameof(ThreeSlots))]
    public void A_straight_wire_in_three_slots_reads_as_a_bench(string id)
    {
        JsonNode inputs = Of("three_slots", id)["inputs"]!;
        foreach (JsonNode? offset in inputs["offsets_mm"]!.AsArray())
        {
            double across = offset!.GetValue<double>();
            JsonObject wire = Wire(LinearElastic(inputs), Round(inputs["diameter_mm"]!));
            wire["rest"] = Texts.Json("""{ "shape": "straight" }""");

            CaseFile read = Texts.Good(ThreeSlotText(inputs, wire, across).ToJsonString());

            Assert.IsType<RestShape.Straight>(read.Arrangement.Rest);
            Assert.Equal([Hold.EdgesOnly, Hold.EdgesOnly, Hold.EdgesOnly], read.Arrangement.Slots.Select(s => s.Hold));
            Assert.Equal(across,
                (read.Arrangement.Slots[1].Actual.Centre - read.Arrangement.Slots[1].Rest.Centre).Length, 1e-12);
            Assert.All(read.Arrangement.Slots, s => Assert.True(s.Height >= read.Arrangement.Wire.Section.Thickness));
            AssertWritesBack(read);
        }
    }

    [Fact]
    public void A_superelastic_wire_in_three_slots_reads_and_answers_as_the_reference()
    {
        JsonNode problem = Set["superelastic_three_slots"]![0]!;
        JsonNode inputs = problem["inputs"]!;
        JsonObject wire = Wire(problem["alloy"]!.DeepClone().AsObject(), Round(inputs["diameter_mm"]!));
        wire["rest"] = Texts.Json("""{ "shape": "straight" }""");
        JsonObject text = ThreeSlotText(inputs, wire, 1);
        text["then"] = new JsonArray(
            [.. inputs["offset_path_mm"]!.AsArray().Select(o => (JsonNode)Texts.Json(
                $$"""{ "slots": [ { "tooth": "middle", "offset": { "labial_mm": {{o!.ToJsonString()}} } } ] }"""))]);

        CaseFile read = Texts.Good(text.ToJsonString());

        AssertWritesBack(read);
        var engager = new Engager(read.Arrangement);
        engager.Engage();
        JsonArray reference = problem["reference"]!.AsArray();
        Assert.Equal(reference.Count, read.Then.Length);
        double largest = reference.Max(row => Math.Abs(row!["middle_force_y_N"]!.GetValue<double>()));
        foreach ((Step step, JsonNode? row) in read.Then.Zip(reference))
        {
            EngagementResult result = engager.Apply(step);
            Assert.True(result.Converged);

            // 1 % is what the page of the reference asks of a production solver.
            double expected = Math.Abs(row!["middle_force_y_N"]!.GetValue<double>());
            Assert.Equal(expected, result.Slots[1].OnTooth.Force.Length, 0.01 * largest);
        }
    }

    [Theory, MemberData(nameof(Arches))]
    public void An_arch_reads_with_its_rest_points_holds_and_offset(string id)
    {
        JsonNode problem = Of("arch", id);
        JsonNode inputs = problem["inputs"]!;

        CaseFile read = Texts.Good(ArchText(problem).ToJsonString());

        string moved = inputs["tooth"]!.GetValue<string>();
        Assert.Equal(14, read.Arrangement.Slots.Length);
        Assert.Equal(LinearElasticOf(inputs), read.Arrangement.Wire.Alloy);
        Assert.All(
            read.Arrangement.Slots,
            slot => Assert.Equal(slot.Label == moved, slot.Actual != slot.Rest));
        Hold expected = inputs["hold"]!.GetValue<string>() == "point" ? Hold.Point : Hold.EdgesOnly;
        Assert.All(read.Arrangement.Slots, slot => Assert.Equal(expected, slot.Hold));
        AssertWritesBack(read);
    }

    [Theory, MemberData(nameof(Torsions))]
    public void A_torsion_problem_reads_as_a_twist_case(string id)
    {
        JsonNode inputs = Of("torsion", id)["inputs"]!;
        var text = new JsonObject
        {
            ["format"] = TwistCaseReader.Format,
            ["wire"] = Wire(LinearElastic(inputs), new JsonObject
            {
                ["shape"] = "rectangular",
                ["thickness_mm"] = inputs["thickness_mm"]!.DeepClone(),
                ["width_mm"] = inputs["width_mm"]!.DeepClone(),
                ["edge_radius_mm"] = inputs["edge_radius_mm"]!.DeepClone(),
            }),
            ["slot_height_mm"] = inputs["slot_height_mm"]!.DeepClone(),
            ["slot_depth_mm"] = inputs["slot_depth_mm"]!.DeepClone(),
            ["edge_gap_mm"] = inputs["edge_gap_mm"]!.DeepClone(),
            ["twists_deg"] = inputs["twists_deg"]!.DeepClone(),
        };

        var read = Texts.ReadTwist(text.ToJsonString());

        Assert.Empty(read.Problems);
        Assert.Equal(inputs["twists_deg"]!.AsArray().Select(t => t!.GetValue<double>()), read.Value!.TwistsDegrees);
        Assert.Equal(inputs["thickness_mm"]!.GetValue<double>(), read.Value.Wire.Section.Thickness);
    }

    [Fact]
    public void The_set_has_the_problems_that_these_tests_turn_into_files()
    {
        Assert.Equal(7, Set["three_slots"]!.AsArray().Count);
        Assert.Equal(6, Set["arch"]!.AsArray().Count);
        Assert.Equal(3, Set["torsion"]!.AsArray().Count);
        Assert.Single(Set["superelastic_three_slots"]!.AsArray());
    }

    internal static JsonObject ArchText(JsonNode problem)
    {
        JsonNode inputs = problem["inputs"]!;
        JsonNode geometry = Set["arch_geometry"]![problem["geometry"]!.GetValue<string>()]!;
        bool isPoint = inputs["hold"]!.GetValue<string>() == "point";
        JsonNode diameter = inputs["section"]!["diameter_mm"]!;
        JsonObject wire = Wire(LinearElastic(inputs), inputs["section"]!.DeepClone().AsObject());
        wire["rest"] = new JsonObject { ["shape"] = "points", ["points_mm"] = geometry["rest_points_mm"]!.DeepClone() };

        var slots = new JsonArray();
        foreach (JsonNode? frame in geometry[isPoint ? "slots_point" : "slots_edges"]!.AsArray())
        {
            var slot = new JsonObject { ["tooth"] = frame!["tooth"]!.DeepClone() };
            if (isPoint)
            {
                slot["hold"] = "point";
            }
            else
            {
                slot["width_mm"] = frame["width_mm"]!.DeepClone();
                slot["height_mm"] = diameter.DeepClone();
                slot["depth_mm"] = diameter.DeepClone();
                slot["tie"] = Texts.Json("""{ "kind": "closed" }""");
                slot["contact"] = "edges";
            }

            slot["friction"] = 0;
            slot["rest"] = new JsonObject
            {
                ["centre_mm"] = frame["centre_mm"]!.DeepClone(),
                ["along"] = frame["along"]!.DeepClone(),
                ["outward"] = frame["outward"]!.DeepClone(),
            };
            if (frame["tooth"]!.GetValue<string>() == inputs["tooth"]!.GetValue<string>())
                slot["offset"] = inputs["offset"]!.DeepClone();
            slots.Add((JsonNode)slot);
        }

        return new JsonObject
        {
            ["format"] = CaseReader.Format, ["arch"] = geometry["jaw"]!.DeepClone(), ["wire"] = wire, ["slots"] = slots,
        };
    }

    private static JsonObject ThreeSlotText(JsonNode inputs, JsonObject wire, double across)
    {
        double left = (inputs["gap_left_mm"] ?? inputs["gap_each_side_mm"])!.GetValue<double>();
        double right = (inputs["gap_right_mm"] ?? inputs["gap_each_side_mm"])!.GetValue<double>();
        JsonArray slots = [BenchSlot("right", right), BenchSlot("middle", 0), BenchSlot("left", -left)];
        slots[1]!["offset"] = new JsonObject { ["labial_mm"] = across };
        return new JsonObject
        {
            ["format"] = CaseReader.Format, ["arch"] = "bench", ["wire"] = wire, ["slots"] = slots,
        };

        JsonNode BenchSlot(string label, double x) => new JsonObject
        {
            ["tooth"] = label,
            ["width_mm"] = inputs["slot_width_mm"]!.DeepClone(),
            ["height_mm"] = inputs["slot_height_mm"]!.DeepClone(),
            ["depth_mm"] = inputs["slot_height_mm"]!.DeepClone(),
            ["tie"] = Texts.Json("""{ "kind": "closed" }"""),
            ["contact"] = "edges",
            ["rest"] = Texts.Json(string.Create(
                CultureInfo.InvariantCulture,
                $$"""{ "centre_mm": [{{x}}, 0, 0], "along": [-1, 0, 0], "outward": [0, 1, 0] }""")),
        };
    }

    private static void AssertWritesBack(CaseFile read) =>
        CaseFileComparison.AssertSame(read, CaseFileComparison.WrittenAndRead(read));

    private static TheoryData<string> Ids(string group) =>
        [.. Set[group]!.AsArray().Select(problem => problem!["id"]!.GetValue<string>())];

    private static JsonNode Of(string group, string id) =>
        Set[group]!.AsArray().Single(problem => problem!["id"]!.GetValue<string>() == id)!;

    private static JsonObject Wire(JsonObject alloy, JsonObject section) =>
        new() { ["alloy"] = alloy, ["section"] = section };

    private static JsonObject Round(JsonNode diameter) =>
        new() { ["shape"] = "round", ["diameter_mm"] = diameter.DeepClone() };

    // The planar problems give no ratio: nothing twists in them.
    private static JsonObject LinearElastic(JsonNode inputs) => new()
    {
        ["law"] = "linear-elastic",
        ["young_MPa"] = inputs["young_MPa"]!.DeepClone(),
        ["poisson"] = inputs["poisson"]?.DeepClone() ?? 0.3,
    };

    private static LinearElastic LinearElasticOf(JsonNode inputs) =>
        new(inputs["young_MPa"]!.GetValue<double>(), inputs["poisson"]!.GetValue<double>());
}
