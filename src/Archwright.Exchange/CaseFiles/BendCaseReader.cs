using System.Collections.Immutable;
using Archwright.Exchange.Files;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Bench;
using Archwright.Mechanics.Rods;

namespace Archwright.Exchange.CaseFiles;

/// <summary>A three-point bend after ISO 15841.</summary>
public sealed record BendCase
{
    /// <summary>Section and alloy.</summary>
    public required Wire Wire { get; init; }

    /// <summary>Catalogue id of the wire; null when it is written out.</summary>
    public string? WireId { get; init; }

    /// <summary>Between the knife edges [mm].</summary>
    public required double Span { get; init; }

    /// <summary>At the start [°C].</summary>
    public double Temperature { get; init; } = 36;

    /// <summary>What the indenter and the temperature do, in order.</summary>
    public required ImmutableArray<BendStep> Path { get; init; }
}

/// <summary>Reads bend cases, <c>archwright-bend-case/1</c>; see <c>docs/case-files.md</c>.</summary>
public static class BendCaseReader
{
    /// <summary>The word of <c>format</c>.</summary>
    public const string Format = "archwright-bend-case/1";

    /// <summary>Most steps of a path, and most readings of a step.</summary>
    public const int MostSteps = 1000;

    private const double UsualTemperature = 36;

    /// <summary>Reads a file.</summary>
    /// <param name="path">Its name.</param>
    public static Read<BendCase> Read(string path)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(path, problems), problems);
    }

    /// <summary>Reads a stream to its end; it is left open.</summary>
    public static Read<BendCase> Read(Stream stream)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(stream, problems), problems);
    }

    private static Read<BendCase> Read(byte[]? text, ProblemList problems)
    {
        if (text is null || JsonText.Parse(text, problems) is not { } root
            || Formats.Open(root, Format, CaseKeys.BendCase, "of the bend", problems) is not { } fields)
        {
            return problems.Settle<BendCase>(null);
        }

        WireGiven wire = fields.Need("wire") is { } node
            ? WireReading.StraightWire(node, "a bend case", problems)
            : new WireGiven();
        double? span = fields.Number("span_mm", Quantities.Span);
        double? temperature = fields.Find("temperature_degC") is { } given
            ? NodeReading.Number(given, Quantities.Temperature, fields.Whose, problems)
            : UsualTemperature;
        ImmutableArray<BendStep> path = Path(fields, span, problems);
        return problems.Settle(problems.IsEmpty
            ? new BendCase
            {
                Wire = wire.Wire!,
                WireId = wire.WireId,
                Span = span!.Value,
                Temperature = temperature!.Value,
                Path = path,
            }
            : null);
    }

    private static ImmutableArray<BendStep> Path(Fields fields, double? span, ProblemList problems)
    {
        if (fields.Need("path") is not { } node
            || NodeReading.List(node, "steps", 1, MostSteps, problems) is not { } items)
        {
            return [];
        }

        return [.. items.Select(item => Step(item, span, problems)).OfType<BendStep>()];
    }

    private static BendStep? Step(Node node, double? span, ProblemList problems)
    {
        bool warms = node.Members.Any(m => m.Key == "temperature_degC");
        KeySet keys = warms ? CaseKeys.BendWarming : CaseKeys.BendMove;
        string whose = $"of the step {node.Path}";
        if (Fields.Of(node, keys, whose, problems, CaseKeys.BendMove, CaseKeys.BendWarming) is not { } fields)
            return null;

        if (warms)
            return fields.Number("temperature_degC", Quantities.Temperature) is { } t ? BendStep.Warm(t) : null;

        if (fields.Number("to_mm", Quantities.Deflection) is not { } to)
            return null;

        if (span is { } between && to > BendTest.MostShare * between)
        {
            problems.Add(
                ProblemCodes.BendTooFar, node.PathOf("to_mm"),
                $"The deflection {whose} is {Say.Number(to)} mm, the span {Say.Number(between)} mm: the wire slips "
                + "between the knife edges.",
                $"Go to {Say.Number(BendTest.MostShare * between)} mm at most, or give a larger span.");
            return null;
        }

        double[] read = fields.Find("read_mm") is { } list
            ? [.. (NodeReading.List(list, "deflections", 0, MostSteps, problems) ?? [])
                .Select(item => NodeReading.Number(item, Quantities.Deflection, whose, problems)).OfType<double>()]
            : [];
        return BendStep.To(to, read);
    }
}
