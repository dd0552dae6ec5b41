using System.Text.Json;
using Archwright.Validation.Pages;
using Archwright.Validation.Record;

namespace Archwright.Cli.Tables;

/// <summary>The published record for programs: <c>archwright-validate/1</c>.</summary>
internal static class ValidateJson
{
    /// <summary>Writes the document and a line end.</summary>
    public static void Write(Stream stream, IReadOnlyList<CheckResult> results)
    {
        using (var json = new Utf8JsonWriter(stream, WiresJson.Style))
        {
            json.WriteStartObject();
            json.WriteString("format", "archwright-validate/1");
            json.WriteStartArray("checks");
            foreach (CheckResult result in results)
                WriteCheck(json, result);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        stream.Flush();
    }

    private static void WriteCheck(Utf8JsonWriter json, CheckResult result)
    {
        PublishedCheck check = result.Check;
        json.WriteStartObject();
        json.WriteString("id", check.Id);
        json.WriteString("title", check.Title);
        if (double.IsFinite(result.Computed))
            json.WriteNumber("computed", WiresJson.Rounded(result.Computed));
        else
            json.WriteNull("computed");
        WriteInterval(json, "published", check.Published);
        json.WriteString("unit", check.Unit);
        WriteInterval(json, "accept", check.Accept);
        json.WriteString("source", check.Source);
        json.WriteString("verdict", RecordPage.Words(result.Verdict));
        json.WriteString("chapter", check.Chapter);
        json.WriteString("how", check.How);
        json.WriteString("spread", check.Spread);
        json.WriteString("why", check.Why);
        json.WriteString("reason", result.Reason);
        json.WriteEndObject();
    }

    // A single figure as a number, a range as [low, high].
    private static void WriteInterval(Utf8JsonWriter json, string name, Interval interval)
    {
        if (interval.IsPoint)
        {
            json.WriteNumber(name, WiresJson.Rounded(interval.Low));
            return;
        }

        json.WriteStartArray(name);
        json.WriteNumberValue(WiresJson.Rounded(interval.Low));
        json.WriteNumberValue(WiresJson.Rounded(interval.High));
        json.WriteEndArray();
    }
}
