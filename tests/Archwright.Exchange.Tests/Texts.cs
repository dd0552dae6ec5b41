using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Tests;

/// <summary>Texts of files that are in order, and ways to spoil them.</summary>
internal static class Texts
{
    /// <summary>Four upper slots on a rough arch, one tooth high, everything written out.</summary>
    public const string Arch = """
        {
          "format": "archwright-case/1",
          "title": "Upper right canine 2 mm high",
          "arch": "upper",
          "temperature_degC": 36.0, "soft_tissue": 1.5,
          "wire": {
            "alloy":   { "law": "linear-elastic", "young_MPa": 180000, "poisson": 0.3 },
            "section": { "shape": "round", "diameter_mm": 0.3556 },
            "rest":    { "shape": "through-rest-slots" },
            "ends":    "free"
          },
          "slots": [
            { "tooth": "13", "width_mm": 3.0, "height_mm": 0.5588, "depth_mm": 0.7112,
              "tie": { "kind": "closed" }, "friction": 0.0,
              "rest":   { "centre_mm": [17, 17, 0], "along": [-0.6, 0.8, 0], "outward": [0.8, 0.6, 0] },
              "offset": { "labial_mm": 0, "occlusal_mm": -2, "mesial_mm": 0,
                          "rotation_deg": 20, "tip_deg": 0, "torque_deg": 0 } },
            { "tooth": "12", "width_mm": 2.5, "height_mm": 0.5588, "depth_mm": 0.7112,
              "tie": { "kind": "steel" },
              "rest":   { "centre_mm": [11, 23, 0], "along": [-0.8, 0.6, 0], "outward": [0.6, 0.8, 0] } },
            { "tooth": "11", "width_mm": 3.0, "height_mm": 0.5588, "depth_mm": 0.7112,
              "rest":   { "centre_mm": [4.25, 26, 0], "along": [-0.96, 0.28, 0], "outward": [0.28, 0.96, 0] } },
            { "tooth": "21", "width_mm": 3.0, "height_mm": 0.5588, "depth_mm": 0.7112,
              "rest":   { "centre_mm": [-4.25, 26, 0], "along": [-0.96, -0.28, 0], "outward": [-0.28, 0.96, 0] } }
          ],
          "then": [ { "temperature_degC": 10 }, { "slots": [ { "tooth": "13", "offset": { "occlusal_mm": -1 } } ] } ],
          "visit": { "present": { "catalogue": "niti-014", "weeks": 6 }, "slot_in": 0.022, "working_wire": "ss-019x025",
                     "stock": ["niti-014", "ss-016"], "alerts": ["nickel"], "discomfort_0_10": 3, "age_years": 14 }
        }
        """;

    /// <summary>Three slots on a bench, with ties, holds and a rest curve of points.</summary>
    public const string Bench = """
        {
          "format": "archwright-case/1",
          "arch": "bench",
          "wire": { "catalogue": "ss-016", "ends": "cinched",
                    "rest": { "shape": "points", "points_mm": [[10, 0, 0], [0, 1, 0], [-10, 0, 0]],
                              "outward": [[0, 1, 0], [0, 1, 0], [0, 1, 0]] } },
          "slots": [
            { "tooth": "right", "hold": "clamped", "width_mm": 3,
              "rest": { "centre_mm": [8, 0, 0], "along": [-1, 0, 0], "outward": [0, 1, 0] } },
            { "tooth": "middle", "width_mm": 3, "height_mm": 0.5588, "depth_mm": 0.7112, "contact": "edges",
              "tie": { "kind": "elastic", "force_N": 1.5, "stiffness_N_per_mm": 0.8, "holds_N": 6,
                "lost_in_3_weeks": 0.4 },
              "rest": { "centre_mm": [0, 0, 0], "along": [-1, 0, 0], "outward": [0, 1, 0] },
              "actual": { "centre_mm": [0, 0.5, -1], "along": [-1, 0, 0.1], "outward": [0, 1, 0] } },
            { "tooth": "left", "hold": "edges", "width_mm": 3,
              "rest": { "centre_mm": [-8, 0, 0], "along": [-1, 0, 0], "outward": [0, 1, 0] } }
          ]
        }
        """;

    /// <summary>A rectangular wire between two slots.</summary>
    public const string Twist = """
        {
          "format": "archwright-twist-case/1",
          "wire": {
            "alloy":   { "law": "linear-elastic", "young_MPa": 200000, "poisson": 0.3 },
            "section": { "shape": "rectangular", "thickness_mm": 0.4826, "width_mm": 0.635, "edge_radius_mm": 0.05 }
          },
          "slot_height_mm": 0.5588, "slot_depth_mm": 0.7112, "edge_gap_mm": 5.0,
          "twists_deg": [5, 10, 20, 30]
        }
        """;

    /// <summary>A three-point bend with a cold drink on the way back.</summary>
    public const string Bend = """
        {
          "format": "archwright-bend-case/1",
          "wire": {
            "alloy": {
              "law": "superelastic", "poisson": 0.33, "reference_temperature_degC": 36, "young_austenite_MPa": 50000,
              "young_martensite_MPa": 30000, "transformation_strain": 0.045, "forward_start_MPa": 430,
              "forward_finish_MPa": 500, "reverse_start_MPa": 240, "reverse_finish_MPa": 160,
              "clausius_clapeyron_MPa_per_K": 6.5, "asymmetry_alpha": 0
            },
            "section": { "shape": "round", "diameter_mm": 0.4064 }
          },
          "span_mm": 10, "temperature_degC": 36,
          "path": [ { "to_mm": 3, "read_mm": [3] }, { "to_mm": 2, "read_mm": [2] }, { "temperature_degC": 10 } ]
        }
        """;

    public const string Stock = "wire,packs\nss-016,3\nss-019x025,1\n";

    public const string Ceilings = """
        tooth,group,movement,force_N,source
        ,incisors,intrusion,0.2,our own rule
        13,,,1.5,our own rule
        """;

    public static Read<CaseFile> ReadCase(string text) => ReadCase(Encoding.UTF8.GetBytes(text));

    public static Read<CaseFile> ReadCase(byte[] text) => CaseReader.Read(new MemoryStream(text));

    public static Read<BendCase> ReadBend(string text) =>
        BendCaseReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));

    public static Read<TwistCase> ReadTwist(string text) =>
        TwistCaseReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));

    /// <summary>The text with something changed in it.</summary>
    public static string Edited(string json, Action<JsonNode> edit)
    {
        JsonNode root = JsonNode.Parse(json)!;
        edit(root);
        return root.ToJsonString();
    }

    /// <summary>The text with a passage replaced, which must be there.</summary>
    public static string Replaced(string text, string passage, string by) =>
        text.Contains(passage, StringComparison.Ordinal)
            ? text.Replace(passage, by, StringComparison.Ordinal)
            : throw new ArgumentException($"“{passage}” is not in the text.", nameof(passage));

    /// <summary>Sets the value at a path as problems write it: <c>slots[3].height_mm</c>.</summary>
    public static void Set(JsonNode root, string path, JsonNode? value)
    {
        string[] parts = path.Replace("[", ".[", StringComparison.Ordinal)
            .Split('.', StringSplitOptions.RemoveEmptyEntries);
        JsonNode node = root;
        foreach (string part in parts[..^1])
            node = part[0] == '[' ? node[Index(part)]! : node[part]!;
        if (parts[^1][0] == '[')
            node[Index(parts[^1])] = value;
        else
            node[parts[^1]] = value;
    }

    private static int Index(string part) => int.Parse(part[1..^1], CultureInfo.InvariantCulture);

    public static JsonNode Json(string text) => JsonNode.Parse(text)!;

    public static CaseFile Good(string text)
    {
        Read<CaseFile> read = ReadCase(text);
        Assert.True(read.Value is not null, string.Join("\n", read.Problems));
        return read.Value!;
    }
}
