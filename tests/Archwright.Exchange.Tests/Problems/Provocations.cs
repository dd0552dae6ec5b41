using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Csv;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Tests.Problems;

/// <summary>A file for every problem code, that provokes it and, unless said otherwise, nothing else.</summary>
internal sealed record Provocation(string Code, Func<ImmutableArray<Problem>> Read, bool Alone = true);

internal static class Provocations
{
    public static IReadOnlyList<Provocation> All { get; } =
    [
        new("AW-FILE-001", () => CaseReader.Read("no-such-case.json").Problems),
        new("AW-FILE-002", () => CaseReader.Read(".").Problems),
        new("AW-FILE-003", () => CaseReader.Read(new FailingStream()).Problems),
        Case("AW-FILE-004", "  \n"),
        new("AW-FILE-005", () => CaseReader.Read(new MemoryStream(new byte[6_000_000])).Problems),
        new("AW-FILE-006", () => Texts.ReadCase([0x89, 0x50, 0x4E, 0x47, 0, 0, 0, 13]).Problems),
        new("AW-FILE-007", () => Texts.ReadCase([.. "{ \"title\": \"Zahn "u8, 0xFC, .. "ber\" }"u8]).Problems),
        Case("AW-FILE-008", "{ \"format\": \"archwright-case/1\", " + ManyKeys() + " }", alone: false),

        Case("AW-JSON-001", "{ \"format\" \"archwright-case/1\" }"),
        Case("AW-JSON-002", "{ \"format\": \"archwright-case/1\""),
        Case("AW-JSON-003", "{ \"format\": \"archwright-case/1\", // ours\n \"arch\": \"upper\" }"),
        Case("AW-JSON-004", "{ \"format\": \"archwright-case/1\",\n  \"arch\": \"upper\", }"),
        Case("AW-JSON-005", "{ \"format\": \"archwright-case/1\",\n  \"temperature_degC\": NaN }"),
        Case("AW-JSON-006", new string('[', 40) + new string(']', 40)),
        Case("AW-JSON-007", "[" + string.Join(",", Enumerable.Repeat("0", 200_001)) + "]"),
        Case("AW-JSON-008", "{ \"title\": \"\\ud83d\" }"),

        Arch("AW-KEY-001", "\"height_mm\": 0.5588, \"depth_mm\": 0.7112,\n      \"tie\": { \"kind\": \"closed\" }",
            "\"height_mm\": 0.5588, \"depth_mm\": 0.7112, \"higth_mm\": 0.5588,\n \"tie\": { \"kind\": \"closed\" }"),
        Arch("AW-KEY-002", "\"width_mm\": 2.5, ", ""),
        Arch("AW-KEY-003", "\"width_mm\": 2.5,", "\"width_mm\": 2.5, \"width_mm\": 3,"),
        Arch("AW-KEY-004", "{ \"kind\": \"closed\" }", "{ \"kind\": \"closed\", \"reach_mm\": 2 }"),
        new("AW-KEY-005", () => Texts.ReadCase(Texts.Twist).Problems),
        Arch("AW-VALUE-001", "\"width_mm\": 2.5", "\"width_mm\": \"2.5 mm\""),
        Arch("AW-VALUE-002", "\"temperature_degC\": 36.0", "\"temperature_degC\": 900"),
        Arch("AW-VALUE-003", "\"ends\":    \"free\"", "\"ends\": \"fre\""),
        Arch("AW-VALUE-004", "\"centre_mm\": [11, 23, 0]", "\"centre_mm\": [11, 23]"),
        Case("AW-VALUE-005", Texts.Replaced(Texts.Bench,
            "[[10, 0, 0], [0, 1, 0], [-10, 0, 0]],\n                      "
            + "\"outward\": [[0, 1, 0], [0, 1, 0], [0, 1, 0]]",
            "[[10, 0, 0]]")),
        Arch("AW-VALUE-006", "\"tooth\": \"13\", \"width_mm\"", "\"tooth\": \" \", \"width_mm\"", alone: false),

        Case("AW-WIRE-001", Texts.Edited(Texts.Arch, c => c["wire"] = Texts.Json("{}"))),
        Case("AW-WIRE-002", Texts.Edited(Texts.Arch, c => c["wire"]!["catalogue"] = "ss-014")),
        Case("AW-WIRE-003", Texts.Replaced(Texts.Bench, "ss-016", "ss-0016")),
        Case("AW-ALLOY-001", Texts.Edited(Texts.Arch, c => c["wire"]!["alloy"] = Texts.Json("{}"))),
        Case("AW-ALLOY-002", Texts.Edited(Texts.Arch, c => c["wire"]!["alloy"]!["catalogue"] = "ss")),
        Case("AW-ALLOY-003",
            Texts.Edited(Texts.Arch, c => c["wire"]!["alloy"] = Texts.Json("{ \"catalogue\": \"steel\" }"))),
        Case("AW-ALLOY-004", Texts.Edited(Texts.Arch, c => c["wire"]!["alloy"] = Texts.Json(
            "{ \"law\": \"elastic-plastic\", \"young_MPa\": 180000, \"poisson\": 0.3, \"yield_MPa\": 1600, "
            + "\"hardening_MPa\": 200000 }"))),
        Case("AW-SECTION-001", Texts.Edited(Texts.Arch, c => c["wire"]!["section"] = Texts.Json(
            "{ \"shape\": \"rectangular\", \"thickness_mm\": 0.4, \"width_mm\": 0.5, \"edge_radius_mm\": 0.2 }"))),
        Case("AW-REST-001", Texts.Replaced(Texts.Bench, "[0, 1, 0], [-10, 0, 0]]", "[10, 0, 0], [-10, 0, 0]]")),
        Case("AW-REST-002", Texts.Replaced(Texts.Bench, "[[0, 1, 0], [0, 1, 0], [0, 1, 0]]", "[[0, 1, 0], [0, 1, 0]]")),
        Case("AW-REST-003", Texts.Replaced(Texts.Bench, "[[0, 1, 0], [0, 1, 0], [0, 1, 0]]",
            "[[0, 1, 0], [1, 0, 0], [0, 1, 0]]")),

        Case("AW-REST-004",
            Texts.Replaced(Texts.Bench, "[[10, 0, 0], [0, 1, 0], [-10, 0, 0]]",
                "[[-10, 0, 0], [0, 1, 0], [10, 0, 0]]")),

        Case("AW-SLOT-001", Texts.Edited(Texts.Bench, c => c["slots"]!.AsArray().RemoveRange(1, 2))),
        Case("AW-SLOT-002", ManySlots(500)),
        Arch("AW-SLOT-003", "\"width_mm\": 2.5, \"height_mm\": 0.5588", "\"width_mm\": 2.5, \"height_mm\": 0.3"),
        Case("AW-SLOT-004", Texts.Edited(Texts.Arch, c => c["wire"] = Texts.Json("{ \"catalogue\": \"ss-019x025\" }"))
            .Replace("\"depth_mm\":0.7112,\"tie\":{\"kind\":\"closed\"}",
                "\"depth_mm\":0.6,\"tie\":{\"kind\":\"closed\"}", StringComparison.Ordinal)),
        Case("AW-SLOT-005", Texts.Replaced(Texts.Arch, "\"tooth\": \"12\"", "\"tooth\": \"14\"")),
        Arch("AW-SLOT-006", "\"centre_mm\": [11, 23, 0]", "\"centre_mm\": [15.8, 18.6, 0]"),
        Arch("AW-SLOT-007", "\"tooth\": \"12\"", "\"tooth\": \"13\""),
        Arch("AW-SLOT-008", "\"tooth\": \"12\"", "\"tooth\": \"UR2\""),
        Arch("AW-SLOT-009", "\"tooth\": \"12\"", "\"tooth\": \"42\""),
        Case("AW-SLOT-010",
            Texts.Replaced(Texts.Bench, "\"hold\": \"clamped\",", "\"hold\": \"clamped\", \"height_mm\": 0.5588,")),
        Case("AW-SLOT-011",
            Texts.Replaced(Texts.Bench, "\"actual\":", "\"offset\": { \"labial_mm\": 1 }, \"actual\":")),
        Case("AW-SLOT-012", Texts.Edited(Texts.Arch, c =>
        {
            foreach (JsonNode? slot in c["slots"]!.AsArray())
                slot!["tie"] = Texts.Json("{ \"kind\": \"none\" }");
        })),
        Case("AW-SLOT-013", Texts.Edited(Texts.Arch, c => c["slots"]![1] = Texts.Json(
            """
            { "tooth": "12", "bonded": false, "tie": { "kind": "none" },
              "rest": { "centre_mm": [11, 23, 0], "along": [-0.8, 0.6, 0], "outward": [0.6, 0.8, 0] } }
            """))),
        Arch("AW-FRAME-001", "\"along\": [-0.8, 0.6, 0]", "\"along\": [0, 0, 0]"),
        Arch("AW-FRAME-002", "\"along\": [-0.8, 0.6, 0]", "\"along\": [-0.8, 0.7, 0]"),
        Arch("AW-FRAME-003", "\"outward\": [0.6, 0.8, 0]", "\"outward\": [-0.6, -0.8, 0]", alone: false),
        Case("AW-FRAME-004", Texts.Arch.Replace("\"outward\": [", "\"outward\": [-", StringComparison.Ordinal)
            .Replace("[--0.28", "[0.28", StringComparison.Ordinal)
            .Replace(", 0.6, 0] },", ", -0.6, 0] },", StringComparison.Ordinal)
            .Replace(", 0.8, 0] }", ", -0.8, 0] }", StringComparison.Ordinal)
            .Replace(", 0.96, 0] }", ", -0.96, 0] }", StringComparison.Ordinal)),

        Case("AW-STEP-001", Texts.Edited(Texts.Arch, c => c["then"]![0] = Texts.Json("{}"))),
        Case("AW-STEP-002", Texts.Edited(Texts.Arch, c => c["then"]![1]!["slots"]![0]!["tooth"] = "23")),
        Case("AW-STEP-003", Texts.Edited(Texts.Arch, c => c["then"]![1]!["slots"]!.AsArray().Add(Texts.Json(
            "{ \"tooth\": \"13\", \"offset\": { \"occlusal_mm\": -0.5 } }")))),

        new("AW-BEND-001", () => Texts.ReadBend(
            Texts.Replaced(Texts.Bend, "\"to_mm\": 3,", "\"to_mm\": 5,")).Problems),

        new("AW-TABLE-001", () => ReadCeilings("tooth,movement,force_N,source\n")),
        new("AW-TABLE-002", () => ReadCeilings("tooth,movment,force_N,source\n13,,1,own\n")),
        new("AW-TABLE-003", () => ReadStock("id,packs\nss-016,3\n")),
        new("AW-TABLE-004", () => ReadStock("wire,packs,wire\nss-016,3,ss-016\n")),
        new("AW-TABLE-005", () => ReadStock("wire,packs\nss-016,3,blue\n")),
        new("AW-TABLE-006", () => ReadStock("wire,packs\n\"ss-016,3\nss-018,1\n")),
        new("AW-TABLE-007", () => ReadCeilings("tooth,movement,force_N,source\n13,intrusion,20 cN,own\n")),
        new("AW-TABLE-008", () => ReadStock("wire,packs\n,3\n")),
        new("AW-TABLE-009", () => ReadStock(string.Concat(Enumerable.Repeat("ss-016\n", 20_001)))),
        new("AW-TABLE-010", () =>
            ReadCeilings("tooth,movement,force_N,source\n13,tip,,own\n13,intrusion,0.2,own\n13,intrusion,0.3,own\n"),
            Alone: false),
        new("AW-STOCK-001", () => ReadStock("ss-016\nss-0018\n")),
        new("AW-STOCK-002", () => StockLotsReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(
            "wire,lot,expires,pieces\nss-016,L1,31.3.2027,5\n"))).Problems),
        new("AW-CEILING-001", () => ReadCeilings("group,movement,force_N,source\nincisor teeth,intrusion,0.2,own\n")),
        new("AW-CEILING-002", () => ReadCeilings("tooth,movement,force_N,source\n13,intrution,0.2,own\n")),
    ];

    public static Provocation Of(string code) => All.Single(one => one.Code == code);

    private static Provocation Case(string code, string text, bool alone = true) =>
        new(code, () => Texts.ReadCase(text).Problems, alone);

    private static Provocation Arch(string code, string passage, string by, bool alone = true) =>
        Case(code, Texts.Replaced(Texts.Arch, passage, by), alone);

    private static ImmutableArray<Problem> ReadStock(string text) =>
        StockReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text))).Problems;

    private static ImmutableArray<Problem> ReadCeilings(string text) =>
        CeilingsReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text))).Problems;

    private static string ManyKeys() =>
        string.Join(", ", Enumerable.Range(0, 1100)
            .Select(i => string.Create(CultureInfo.InvariantCulture, $"\"k{i}\": {i}")));

    private static string ManySlots(int count)
    {
        string slots = string.Join(", ", Enumerable.Range(0, count).Select(i => string.Create(
            CultureInfo.InvariantCulture,
            $$"""
            { "tooth": "s{{i}}", "hold": "point",
              "rest": { "centre_mm": [{{-i * 0.5}}, 0, 0], "along": [-1, 0, 0], "outward": [0, 1, 0] } }
            """)));
        return $$"""
            { "format": "archwright-case/1", "arch": "bench", "wire": { "catalogue": "ss-016" },
              "slots": [ {{slots}} ] }
            """;
    }

    private sealed class FailingStream : MemoryStream
    {
        public override int Read(byte[] buffer, int offset, int count) => throw new IOException("a disk fault");
    }
}
