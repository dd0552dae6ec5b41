using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Tests.Schemas;

/// <summary>The published schemas and the readers say the same: keys, limits, and what is a case.</summary>
[Trait("basis", "docs")]
public sealed class SchemaTests
{
    private const string Case = "archwright-case-1";
    private const string TwistCase = "archwright-twist-case-1";
    private const string BendCase = "archwright-bend-case-1";

    // Together these have every key of the contract.
    internal static readonly string[] Cases =
    [
        Texts.Arch,
        Texts.Bench,
        Texts.Edited(Texts.Arch, c =>
            c["wire"] = Texts.Json("""{ "catalogue": "ss-016", "rest": { "shape": "straight" } }""")),
        Texts.Edited(Texts.Arch, c => c["wire"]!["alloy"] = Texts.Json("""{ "catalogue": "ss" }""")),
        Texts.Edited(Texts.Arch, c => c["wire"]!["section"] = Texts.Json(
            """{ "shape": "rectangular", "thickness_mm": 0.4064, "width_mm": 0.5588, "edge_radius_mm": 0.05 }""")),
        Texts.Edited(Texts.Arch, c => c["slots"]![1]!["tie"] = Texts.Json(
            """{ "kind": "spring", "force_N": 3, "stiffness_N_per_mm": 2, "holds_N": 20 }""")),
        Texts.Edited(Texts.Arch, c =>
            c["slots"]![1]!["tie"] = Texts.Json("""{ "kind": "partial", "reach_mm": 3, "holds_N": 5 }""")),
        Texts.Edited(Texts.Arch, c => c["slots"]![1]!["tie"] = Texts.Json("""{ "kind": "none" }""")),
        Texts.Edited(Texts.Arch, c => c["slots"]![0]!["tie"] = Texts.Json("""{ "kind": "closed", "holds_N": 50 }""")),
        Texts.Edited(Texts.Arch, c => c["then"]![1]!["slots"]![0] = Texts.Json(
            """
            { "tooth": "13",
              "actual": { "centre_mm": [17, 17, -1], "along": [-0.6, 0.8, 0], "outward": [0.8, 0.6, 0] } }
            """)),
        Texts.Edited(Texts.Arch, c => c["visit"]!["present"] = null),
        Texts.Edited(Texts.Arch, c => c["slots"]![1] = Texts.Json(
            """
            { "tooth": "12", "bonded": false,
              "rest": { "centre_mm": [11, 23, 0], "along": [-0.8, 0.6, 0], "outward": [0.6, 0.8, 0] } }
            """)),
        Texts.Edited(Texts.Arch, c => c["absent"] = Texts.Json("[{ \"tooth\": \"14\", \"why\": \"extracted\" }]")),
        Texts.Edited(Texts.Arch, c => c["wire"]!["alloy"] = Texts.Json(
            """
            { "law": "elastic-plastic", "young_MPa": 180000, "poisson": 0.3, "yield_MPa": 1600,
              "hardening_MPa": 2000 }
            """)),
        Texts.Edited(Texts.Arch, c => c["wire"]!["alloy"] = Texts.Json(
            """
            { "law": "superelastic", "poisson": 0.33, "reference_temperature_degC": 36, "young_austenite_MPa": 50000,
              "young_martensite_MPa": 30000, "transformation_strain": 0.045, "forward_start_MPa": 430,
              "forward_finish_MPa": 500, "reverse_start_MPa": 240, "reverse_finish_MPa": 160,
              "clausius_clapeyron_MPa_per_K": 6.5, "asymmetry_alpha": 0 }
            """)),
    ];

    // Read, checked, and then refused by a code of its own.
    private static readonly string[] NotYet =
    [
        Texts.Edited(Texts.Arch, c => c["slots"]![0]!["friction"] = 0.14),
    ];

    public static TheoryData<string> AllCases => [.. Cases, .. NotYet];

    [Fact]
    public void The_schema_of_a_case_has_the_keys_that_the_reader_knows_and_no_others() =>
        AssertSameKeys(Case, CaseKeys.OfCase, notObjects: ["point", "direction", "label", "wireId"]);

    [Fact]
    public void The_schema_of_a_twist_case_has_the_keys_that_the_reader_knows_and_no_others() =>
        AssertSameKeys(TwistCase, CaseKeys.OfTwistCase, notObjects: ["point", "direction"]);

    [Theory, MemberData(nameof(AllCases))]
    public void What_the_reader_takes_the_schema_takes(string text)
    {
        Assert.Empty(Texts.ReadCase(text).Problems);

        Assert.Empty(Schema.Load(Case).Errors(JsonNode.Parse(text)));
    }

    [Fact]
    public void What_the_twist_reader_takes_the_schema_takes()
    {
        Assert.Empty(Texts.ReadTwist(Texts.Twist).Problems);

        Assert.Empty(Schema.Load(TwistCase).Errors(JsonNode.Parse(Texts.Twist)));
    }

    [Fact]
    public void The_bend_schema_and_the_bend_reader_take_the_same()
    {
        Assert.Empty(Texts.ReadBend(Texts.Bend).Problems);

        Assert.Empty(Schema.Load(BendCase).Errors(JsonNode.Parse(Texts.Bend)));
        AssertSameKeys(BendCase, CaseKeys.OfBendCase, notObjects: ["point", "direction"]);
        AssertSameLimits(BendCase, Texts.Bend, t => Texts.ReadBend(t).Problems);
    }

    public static TheoryData<string, string, string> Wrong => new()
    {
        { "an unknown key", "\"width_mm\": 2.5,", "\"width_mm\": 2.5, \"colour\": \"blue\"," },
        { "a missing key", "\"width_mm\": 2.5, ", "" },
        { "a text for a number", "\"width_mm\": 2.5", "\"width_mm\": \"2.5\"" },
        { "a figure out of range", "\"width_mm\": 2.5", "\"width_mm\": 25" },
        { "an unknown word", "\"ends\":    \"free\"", "\"ends\": \"loose\"" },
        { "both places", "\"offset\": { \"labial_mm\"", "\"actual\": {}, \"offset\": { \"labial_mm\"" },
        { "a hold with clearances", "\"width_mm\": 2.5,", "\"width_mm\": 2.5, \"hold\": \"clamped\"," },
        { "a key of another tie", "{ \"kind\": \"closed\" }", "{ \"kind\": \"closed\", \"reach_mm\": 2 }" },
        { "a bracket on a bare crown", "\"width_mm\": 2.5,", "\"width_mm\": 2.5, \"bonded\": false," },
        { "an unknown reason", "\"then\": [", "\"absent\": [{ \"tooth\": \"14\", \"why\": \"gone\" }], \"then\": [" },
        { "an empty step", "{ \"temperature_degC\": 10 }", "{ }" },
        { "another format", "archwright-case/1", "archwright-case/2" },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void What_is_wrong_for_the_reader_is_wrong_for_the_schema(string what, string passage, string by)
    {
        string text = Texts.Replaced(Texts.Arch, passage, by);

        Assert.NotEmpty(Texts.ReadCase(text).Problems);
        Assert.False(Schema.Load(Case).Errors(JsonNode.Parse(text)).Count == 0, what);
    }

    [Theory, MemberData(nameof(AllCases))]
    public void The_limits_of_the_schema_are_the_limits_of_the_reader(string text) => AssertSameLimits(
        Case, text, t => Texts.ReadCase(t).Problems);

    [Fact]
    public void The_limits_of_the_twist_schema_are_the_limits_of_the_reader() => AssertSameLimits(
        TwistCase, Texts.Twist, t => Texts.ReadTwist(t).Problems);

    [Fact]
    public void The_cases_of_this_test_have_every_key_of_the_contract()
    {
        var given = new HashSet<string>(StringComparer.Ordinal);
        foreach (string text in Cases.Concat(NotYet))
            Keys(JsonNode.Parse(text), given);

        Assert.Equal([.. CaseKeys.OfCase.SelectMany(set => set.Keys).Order(StringComparer.Ordinal).Distinct()],
            given.Order(StringComparer.Ordinal).ToArray());
    }

    private static void Keys(JsonNode? node, HashSet<string> given)
    {
        foreach ((string key, JsonNode? value) in node as JsonObject ?? [])
        {
            given.Add(key);
            Keys(value, given);
        }

        foreach (JsonNode? item in node as JsonArray ?? [])
            Keys(item, given);
    }

    private static void AssertSameKeys(string schema, ImmutableArray<KeySet> sets, string[] notObjects)
    {
        JsonObject root = Schema.Parse(schema);
        JsonObject definitions = root["$defs"]!.AsObject();
        foreach (KeySet set in sets)
        {
            JsonObject definition = set.Definition.Length == 0 ? root : definitions[set.Definition]!.AsObject();
            Assert.Equal(set.Keys.AsEnumerable(), definition["properties"]!.AsObject().Select(p => p.Key));
            Assert.False(definition["additionalProperties"]!.GetValue<bool>());
        }

        Assert.Equal(
            sets.Select(s => s.Definition).Where(d => d.Length > 0).Concat(notObjects).ToHashSet(),
            definitions.Select(d => d.Key).ToHashSet());
    }

    private static void AssertSameLimits(string schema, string text, Func<string, ImmutableArray<Problem>> read)
    {
        List<Schema.Bounded> bounds = Schema.Load(schema).Bounds(JsonNode.Parse(text));
        Assert.NotEmpty(bounds);
        foreach ((string path, double low, double high) in bounds)
        {
            Assert.False(IsOutOfRange(low), path);
            Assert.False(IsOutOfRange(high), path);
            Assert.True(IsOutOfRange(low - 1e-6 * Math.Max(1, Math.Abs(low))), path);
            Assert.True(IsOutOfRange(high + 1e-6 * Math.Max(1, Math.Abs(high))), path);

            bool IsOutOfRange(double figure) => read(Texts.Edited(text, c => Texts.Set(c, path, figure))).Any(
                p => p.Code == "AW-VALUE-002" && p.Path == path);
        }
    }
}
