using System.Collections.Immutable;
using Archwright.Dentition.Units;
using Archwright.Exchange.Files;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Rods;

namespace Archwright.Exchange.CaseFiles;

/// <summary>A twist test: two slots on a straight wire that touch it at their inner edges, one turned about the
/// wire.</summary>
public sealed record TwistCase
{
    /// <summary>Section and alloy.</summary>
    public required Wire Wire { get; init; }

    /// <summary>Catalogue id of the wire; null when it is written out.</summary>
    public string? WireId { get; init; }

    /// <summary>Occlusogingival opening of both slots [mm].</summary>
    public required double SlotHeight { get; init; }

    /// <summary>From base to lid, of both slots [mm].</summary>
    public required double SlotDepth { get; init; }

    /// <summary>Length of wire between the two inner edges [mm].</summary>
    public required double EdgeGap { get; init; }

    /// <summary>What the brackets give way by, with all that carries them; zero for rigid ones
    /// [degrees/(N·mm)].</summary>
    public double ComplianceDegrees { get; init; }

    /// <summary>The path of the turned slot, in order, in degrees as the file gives them.</summary>
    public required ImmutableArray<double> TwistsDegrees { get; init; }

    /// <summary>The same path [rad].</summary>
    public ImmutableArray<double> Twists => [.. TwistsDegrees.Select(Angle.FromDegrees)];
}

/// <summary>Reads twist cases, <c>archwright-twist-case/1</c>; see <c>docs/case-files.md</c>.</summary>
public static class TwistCaseReader
{
    /// <summary>The word of <c>format</c>.</summary>
    public const string Format = "archwright-twist-case/1";

    /// <summary>Most readings of a twist case.</summary>
    public const int MostTwists = 10_000;

    /// <summary>Reads a file.</summary>
    /// <param name="path">Its name.</param>
    public static Read<TwistCase> Read(string path)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(path, problems), problems);
    }

    /// <summary>Reads a stream to its end; it is left open.</summary>
    public static Read<TwistCase> Read(Stream stream)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(stream, problems), problems);
    }

    private static Read<TwistCase> Read(byte[]? text, ProblemList problems)
    {
        if (text is null || JsonText.Parse(text, problems) is not { } root
            || Formats.Open(root, Format, CaseKeys.TwistCase, "of the slots", problems) is not { } fields)
        {
            return problems.Settle<TwistCase>(null);
        }

        WireGiven wire = fields.Need("wire") is { } node
            ? WireReading.StraightWire(node, "a twist case", problems)
            : new WireGiven();
        double? height = fields.Number("slot_height_mm", Quantities.SlotHeight);
        double? depth = fields.Number("slot_depth_mm", Quantities.SlotDepth);
        double? gap = fields.Number("edge_gap_mm", Quantities.EdgeGap);
        double? compliance = fields.Number("compliance_deg_per_N_mm", Quantities.Compliance, 0);
        ImmutableArray<double> twists = Twists(fields, problems);
        if (wire.Section is { } section)
        {
            if (height is { } h && FitChecks.CheckHeight(section, "the slot", "slot_height_mm", h, problems))
                height = Math.Max(h, section.Thickness);
            if (depth is { } d && FitChecks.CheckDepth(section, "the slot", "slot_depth_mm", d, problems))
                depth = Math.Max(d, section.Width);
        }

        return problems.Settle(problems.IsEmpty
            ? new TwistCase
            {
                Wire = wire.Wire!,
                WireId = wire.WireId,
                SlotHeight = height!.Value,
                SlotDepth = depth!.Value,
                EdgeGap = gap!.Value,
                ComplianceDegrees = compliance!.Value,
                TwistsDegrees = twists,
            }
            : null);
    }

    private static ImmutableArray<double> Twists(Fields fields, ProblemList problems)
    {
        if (fields.Need("twists_deg") is not { } node
            || NodeReading.List(node, "twists", 1, MostTwists, problems) is not { } items)
        {
            return [];
        }

        return
        [
            .. items.Select(item => NodeReading.Number(item, Quantities.Twist, "of the slot", problems))
                .OfType<double>(),
        ];
    }
}
