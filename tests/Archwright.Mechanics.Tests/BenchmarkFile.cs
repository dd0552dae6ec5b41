using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests;

/// <summary>The file of mechanics problems with reference solutions, by independent codes (collocation, other
/// elements), and how its problems become arrangements.</summary>
internal static class BenchmarkFile
{
    public static JsonObject Root { get; } =
        JsonNode.Parse(File.ReadAllText(
            Path.Combine(AppContext.BaseDirectory, "mechanics-benchmarks.json")))!.AsObject();

    public static JsonObject Case(string kind, string id) =>
        Root[kind]!.AsArray().Select(n => n!.AsObject()).Single(n => (string)n["id"]! == id);

    public static IEnumerable<string> Ids(string kind) => Root[kind]!.AsArray().Select(n => (string)n!["id"]!);

    public static double Number(this JsonNode? node, string key) => (double)node![key]!;

    public static Vector3 Vector(JsonNode? node)
    {
        JsonArray array = node!.AsArray();
        return new Vector3((double)array[0]!, (double)array[1]!, (double)array[2]!);
    }

    /// <summary>A superelastic alloy as the file writes it.</summary>
    public static Superelastic Flag(JsonNode? alloy) => new(new SuperelasticFigures
    {
        Poisson = alloy.Number("poisson"),
        ReferenceTemperature = alloy.Number("reference_temperature_degC"),
        YoungAustenite = alloy.Number("young_austenite_MPa"),
        YoungMartensite = alloy.Number("young_martensite_MPa"),
        TransformationStrain = alloy.Number("transformation_strain"),
        ForwardStart = alloy.Number("forward_start_MPa"),
        ForwardFinish = alloy.Number("forward_finish_MPa"),
        ReverseStart = alloy.Number("reverse_start_MPa"),
        ReverseFinish = alloy.Number("reverse_finish_MPa"),
        ClausiusClapeyron = alloy.Number("clausius_clapeyron_MPa_per_K"),
        Asymmetry = alloy.Number("asymmetry_alpha"),
    });

    /// <summary>A section as the file writes it.</summary>
    public static Section SectionOf(JsonNode? section) => (string)section!["shape"]! == "round"
        ? Section.Round(section.Number("diameter_mm"))
        : Section.Rectangular(
            section.Number("thickness_mm"), section.Number("width_mm"),
            section["edge_radius_mm"] is { } radius ? (double)radius : 0);

    /// <summary>Three slots on a straight wire along x, y up: outward is y, so a positive offset is labial.</summary>
    public static Arrangement ThreeSlots(JsonObject inputs, double offset, Hold hold)
    {
        double width = inputs.Number("slot_width_mm");
        double height = inputs.Number("slot_height_mm");
        double left = inputs.Number("gap_left_mm");
        double right = inputs.Number("gap_right_mm");
        double[] x = [-left, 0, right];
        var slots = ImmutableArray.CreateBuilder<Slot>();
        for (int i = 0; i < 3; i++)
        {
            var rest = SlotFrame.Create(new Vector3(x[i], 0, 0), new Vector3(1, 0, 0), new Vector3(0, 1, 0));
            slots.Add(new Slot
            {
                Label = $"{i}",
                Rest = rest,
                Actual = i == 1 ? rest.Moved(new Vector3(0, offset, 0), default) : rest,
                Width = width,
                Height = height,
                Depth = height,
                Hold = hold,
            });
        }

        return new Arrangement
        {
            Wire = new Wire(
                Section.Round(inputs.Number("diameter_mm")), new LinearElastic(inputs.Number("young_MPa"), 0.3)),
            Rest = new RestShape.Straight(),
            Slots = slots.ToImmutable(),
        };
    }

    /// <summary>The arch of the file, with one tooth displaced.</summary>
    public static Arrangement Arch(JsonObject problem)
    {
        JsonObject geometry = Root["arch_geometry"]![(string)problem["geometry"]!]!.AsObject();
        JsonNode inputs = problem["inputs"]!;
        bool edges = (string)inputs["hold"]! == "edges";
        double diameter = inputs["section"].Number("diameter_mm");
        var slots = ImmutableArray.CreateBuilder<Slot>();
        foreach (JsonNode? entry in geometry[edges ? "slots_edges" : "slots_point"]!.AsArray())
        {
            var rest = SlotFrame.Create(Vector(entry!["centre_mm"]), Vector(entry["along"]), Vector(entry["outward"]));
            string tooth = (string)entry["tooth"]!;
            slots.Add(new Slot
            {
                Label = tooth,
                Rest = rest,
                Actual = tooth == (string)inputs["tooth"]! ? Displaced(rest, tooth, inputs["offset"]!) : rest,
                Width = edges ? entry.Number("width_mm") : 3,
                Height = diameter,
                Depth = diameter,
                Hold = edges ? Hold.EdgesOnly : Hold.Point,
            });
        }

        return new Arrangement
        {
            Wire = new Wire(
                Section.Round(diameter), new LinearElastic(inputs.Number("young_MPa"), inputs.Number("poisson"))),
            Rest = new RestShape.Points(
                [.. geometry["rest_points_mm"]!.AsArray().Select(Vector)], []),
            Slots = slots.ToImmutable(),
        };
    }

    // Upper teeth: occlusal is the slot's third axis; mesial is along on the right, against it on the left.
    private static SlotFrame Displaced(SlotFrame rest, string tooth, JsonNode offset)
    {
        double side = tooth[0] == '1' ? 1 : -1;
        double Value(string key) => offset[key] is { } node ? (double)node : 0;
        return rest.Moved(
            rest.Outward * Value("labial_mm") + rest.Third * Value("occlusal_mm")
                + rest.Along * (side * Value("mesial_mm")),
            rest.Third * (side * Value("rotation_deg") * Math.PI / 180));
    }
}
