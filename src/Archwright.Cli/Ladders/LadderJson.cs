using System.Text.Json;
using Archwright.Cli.Tables;
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Cli.Ladders;

/// <summary>Writes <c>archwright-ladder/1</c>.</summary>
/// <remarks>Schema: <c>docs/schema/archwright-ladder-1.schema.json</c>. What does not come to its end, or is not
/// known, is null.</remarks>
internal static class LadderJson
{
    /// <summary>Writes the document and a line end.</summary>
    public static void Write(Stream stream, LadderAdvice advice)
    {
        using (var json = new Utf8JsonWriter(stream, WiresJson.Style))
        {
            json.WriteStartObject();
            json.WriteString("format", "archwright-ladder/1");
            json.WriteString("working_wire", advice.Working.Id);
            json.WriteBoolean("working_wire_assumed", advice.WorkingIsAssumed);
            json.WriteStartArray("answers");
            foreach (LadderAnswer answer in advice.Answers.Concat(advice.Asked is { } asked ? [asked] : []))
                Answer(json, answer);
            json.WriteEndArray();
            json.WritePropertyName("nearest");
            if (advice.Nearest is { } nearest)
                Answer(json, nearest);
            else
                json.WriteNullValue();

            Number(json, "ceiling_factor", advice.CeilingFactor);
            json.WriteString("because", advice.Because);
            Texts(json, "considerations", advice.Considerations);
            Differences(json, advice);
            Texts(json, "cautions", advice.Cautions);
            Texts(json, "missing", advice.Missing.Select(fact => $"{fact.Key}: {fact.Question}"));
            json.WriteNumber("wires_looked_at", advice.WiresLookedAt);
            json.WriteNumber("forecasts", advice.Forecasts);
            json.WriteNumber("draws", advice.Draws);
            json.WriteNumber("seed", advice.Seed);
            ModelJson.Write(json, advice.Question.Today.Arch);
            json.WriteString("policy_version", advice.PolicyVersion);
            json.WriteString("decision", "the treating clinician decides");
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        stream.Flush();
    }

    private static void Answer(Utf8JsonWriter json, LadderAnswer answer)
    {
        json.WriteStartObject();
        json.WriteString("kind", answer.Kind.Word());
        Number(json, "visits", answer.Visits.P50);
        Range(json, "visits_range", answer.Visits);
        Range(json, "total_weeks", answer.TotalWeeks);
        json.WriteNumber("largest_force_N", answer.LargestForce);
        json.WriteNumber("comfort_index", answer.ComfortIndex);
        Price(json, "cost", answer.Cost);
        json.WriteStartArray("steps");
        foreach (LadderStep step in answer.Steps)
            Step(json, step);
        json.WriteEndArray();
        json.WriteString("stop", answer.Stop);
        Texts(json, "same_as", answer.SameAs.Select(kind => kind.Word()));
        Texts(json, "ties_with", answer.TiesWith.Select(kind => kind.Word()));
        json.WriteBoolean("proven", answer.IsProven);
        json.WriteEndObject();
    }

    private static void Step(Utf8JsonWriter json, LadderStep step)
    {
        json.WriteStartObject();
        json.WriteString("wire", step.Wire.Id);
        json.WriteBoolean("in_place", step.IsInPlace);
        Range(json, "weeks", step.Weeks);
        Range(json, "from_week", step.FromWeek);
        json.WriteNumber("at_visit", step.AtVisit);
        json.WriteNumber("waited_visits", step.Waited);
        json.WriteNumber("interval_weeks", step.Interval);
        json.WriteNumber("comfort_index", step.ComfortIndex);
        json.WriteNumber("largest_force_N", step.Figures.LargestForce);
        json.WriteString("largest_force_tooth", step.LargestForceTooth?.ToIso());
        Texts(json, "partial_ties", step.PartialTies.Select(tooth => tooth.ToIso()));
        Texts(json, "alike", step.Twins.Select(wire => wire.Id));
        Texts(json, "against", step.Against.Select(finding => finding.Sentence));
        Price(json, "price", step.Price);
        json.WriteEndObject();
    }

    private static void Differences(Utf8JsonWriter json, LadderAdvice advice)
    {
        json.WriteStartArray("differences");
        foreach (LadderDifference one in advice.Differences)
        {
            json.WriteStartObject();
            json.WriteString("from", one.From.Word());
            Number(json, "visits", one.Visits);
            Number(json, "weeks", one.Weeks);
            json.WriteNumber("comfort_index", one.ComfortIndex);
            json.WriteString("sentence", one.Sentence);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Range(Utf8JsonWriter json, string key, Percentiles range)
    {
        json.WriteStartObject(key);
        Number(json, "p10", range.P10);
        Number(json, "p50", range.P50);
        Number(json, "p90", range.P90);
        json.WriteEndObject();
    }

    private static void Texts(Utf8JsonWriter json, string key, IEnumerable<string> texts)
    {
        json.WriteStartArray(key);
        foreach (string text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }

    private static void Number(Utf8JsonWriter json, string key, double? value)
    {
        if (value is { } figure && double.IsFinite(figure))
            json.WriteNumber(key, figure);
        else
            json.WriteNull(key);
    }

    private static void Price(Utf8JsonWriter json, string key, decimal? value)
    {
        if (value is { } figure)
            json.WriteNumber(key, figure);
        else
            json.WriteNull(key);
    }
}
