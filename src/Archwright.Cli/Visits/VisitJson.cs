using System.Text.Json;
using Archwright.Cli.Tables;
using Archwright.Treatment.Decisions;

namespace Archwright.Cli.Visits;

/// <summary>Writes <c>archwright-visit/1</c>.</summary>
/// <remarks>Schema: <c>docs/schema/archwright-visit-1.schema.json</c>.</remarks>
internal static class VisitJson
{
    /// <summary>Writes the document and a line end.</summary>
    public static void Write(Stream stream, VisitAdvice advice, Action<Utf8JsonWriter>? more = null)
    {
        using (var json = new Utf8JsonWriter(stream, WiresJson.Style))
        {
            json.WriteStartObject();
            json.WriteString("format", "archwright-visit/1");
            json.WriteString("advice", advice.Step.Word());
            json.WriteString("wire", advice.Wire?.Figures.Wire.Id);
            json.WriteString("because", advice.Because);
            Texts(json, "considerations", advice.Considerations);
            json.WriteStartObject("interval_weeks");
            json.WriteNumber("low", advice.Interval.Low);
            json.WriteNumber("mid", advice.Interval.Mid);
            json.WriteNumber("high", advice.Interval.High);
            json.WriteEndObject();
            Texts(json, "partial_ties", advice.PartialTies.Select(tooth => tooth.ToIso()));
            json.WriteString("nearest", advice.Nearest?.Figures.Wire.Id);
            json.WriteStartArray("options");
            foreach (WireOption option in advice.Options)
                Option(json, option, advice);
            json.WriteEndArray();
            Comfort(json, advice);
            Texts(json, "cautions", advice.Cautions);
            Texts(json, "missing", advice.Missing.Select(fact => $"{fact.Key}: {fact.Question}"));
            ModelJson.Write(json, advice.Question.Arch);
            json.WriteString("policy_version", advice.PolicyVersion);
            json.WriteString("decision", "the treating clinician decides");
            more?.Invoke(json);
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        stream.Flush();
    }

    private static void Option(Utf8JsonWriter json, WireOption option, VisitAdvice advice)
    {
        WireFigures wire = option.Figures;
        json.WriteStartObject();
        json.WriteString("wire", wire.Wire.Id);
        json.WriteBoolean("present", wire.IsPresent);
        json.WriteBoolean("allowed", option.Allowed);
        json.WriteBoolean("ties_with_best", option.TiesWithBest);
        Number(json, "comfort_index", option.ComfortIndex);
        Number(json, "largest_force_N", wire.Engaged ? wire.LargestForce : null);
        json.WriteString(
            "largest_force_tooth",
            wire.LargestForceSlot >= 0 ? advice.Question.Tooth(wire.LargestForceSlot).ToIso() : null);
        Number(json, "largest_force_given_N", wire.LargestGiven);
        json.WriteString(
            "largest_force_given_tooth",
            wire.LargestGivenSlot >= 0 ? advice.Question.Tooth(wire.LargestGivenSlot).ToIso() : null);
        Number(json, "delivered_share", wire.Delivery?.Share.P50);
        if (wire.Delivery is { } delivery)
        {
            json.WriteStartObject("delivered_share_range");
            json.WriteNumber("p10", delivery.Share.P10);
            json.WriteNumber("p50", delivery.Share.P50);
            json.WriteNumber("p90", delivery.Share.P90);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("delivered_share_range");
        }

        Number(json, "set_mm", wire.Engaged ? wire.Set : null);
        Number(json, "score", option.Score);
        Number(json, "score_uncertainty", option.Score is null ? null : option.ScoreUncertainty);
        Texts(json, "partial_ties", wire.TiedAtDistance.Select(slot => advice.Question.Tooth(slot).ToIso()));
        json.WriteString("why_not", option.WhyNotThis);
        Texts(json, "reasons", option.Findings.Select(finding => finding.Sentence));
        json.WriteEndObject();
    }

    private static void Comfort(Utf8JsonWriter json, VisitAdvice advice)
    {
        if (advice.Comfort is not { } comfort)
        {
            json.WriteNull("comfort");
            return;
        }

        json.WriteStartObject("comfort");
        json.WriteString("sentence", comfort.Sentence);
        json.WriteBoolean("of_this_patient", comfort.IsOfThisPatient);
        json.WriteStartArray("course");
        foreach (var point in comfort.Course)
        {
            json.WriteStartObject();
            json.WriteNumber("hour", point.Hour);
            json.WriteNumber("low", point.Low);
            json.WriteNumber("mid", point.Mid);
            json.WriteNumber("high", point.High);
            json.WriteEndObject();
        }

        json.WriteEndArray();
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
        if (value is { } figure)
            json.WriteNumber(key, figure);
        else
            json.WriteNull(key);
    }
}
