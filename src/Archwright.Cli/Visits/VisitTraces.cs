using System.Collections.Immutable;
using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Decisions.Tracing;

namespace Archwright.Cli.Visits;

/// <summary>What is asked besides the advice, checked before anything is computed.</summary>
/// <param name="Slot">Index of the tooth whose chain is wanted; null for none.</param>
/// <param name="WireId">Id of the wire whose reasons are wanted; null for none.</param>
/// <param name="Sensitivity">Whether to say what would turn the recommendation.</param>
internal sealed record TraceRequest(int? Slot, string? WireId, bool Sensitivity)
{
    /// <summary>Reads what was typed.</summary>
    /// <exception cref="Refusal">The tooth has no slot here, or the wire is not among those to choose from.</exception>
    public static TraceRequest Of(VisitQuestion question, string? tooth, string? wire, bool sensitivity) =>
        new(tooth is null ? null : Place(question, tooth), wire is null ? null : Id(question, wire), sensitivity);

    private static int Place(VisitQuestion question, string typed)
    {
        int slot = ToothNumber.TryParse(typed, out ToothNumber tooth) ? question.Arch.Teeth.IndexOf(tooth) : -1;
        return slot >= 0 ? slot : throw new Refusal(
            $"the case has no tooth '{typed}' to explain.",
            $"Write one of its ISO numbers: {string.Join(", ", question.Arch.Teeth.Select(one => one.ToIso()))}.");
    }

    private static string Id(VisitQuestion question, string typed)
    {
        string id = WireNames.Find(WireCatalogue.Default, typed).Id;
        return question.Present?.Wire.Id == id || question.Choice.Any(one => one.Id == id) ? id : throw new Refusal(
            $"{id} is not among the wires to choose from.",
            "Add it to the stock, or leave the stock out.");
    }
}

/// <summary>The chain of a tooth, the reasons of a wire, and what would turn the recommendation, as far as they are
/// asked for.</summary>
internal sealed record VisitTraces(
    ToothTrace? Tooth, (WireOption Option, ScoreTrace Score)? Wire, ImmutableArray<InputSensitivity>? Inputs)
{
    /// <summary>Computes them.</summary>
    /// <exception cref="Refusal">No wire was looked at, so that no chain can be told.</exception>
    public static VisitTraces Of(
        VisitAdvice advice, VisitOptions options, TraceRequest request, CancellationToken cancellation)
    {
        WireOption? asked = request.WireId is { } id ? advice.Of(id) : null;
        WireOption? option = asked ?? advice.Wire ?? advice.Nearest;
        if (request.Slot is not null && option is null)
            throw new Refusal("no wire was looked at, so that there is nothing to explain.", "Name wires in stock.");

        return new VisitTraces(
            request.Slot is { } slot ? ToothTrace.Of(advice, option!, slot, options.Policy) : null, // there is one
            asked is null ? null : (asked, ScoreTrace.Of(advice, asked, options.Policy)),
            request.Sensitivity ? Sensitivity.Of(advice, options, cancellation) : null);
    }

    /// <summary>Writes them into a document.</summary>
    public void Write(Utf8JsonWriter json)
    {
        if (Tooth is { } tooth)
            TraceJson.Write(json, tooth);
        if (Wire is { } wire)
            TraceJson.Write(json, wire.Option, wire.Score);
        if (Inputs is { } inputs)
            TraceJson.Write(json, inputs);
    }

    /// <summary>Writes them for people.</summary>
    public void Write(TraceReport report)
    {
        if (Tooth is { } tooth)
            report.Write(tooth);
        if (Wire is { } wire)
            report.Write(wire.Option, wire.Score);
        if (Inputs is { } inputs)
            report.Write(inputs);
    }
}
