using System.Text.Json;
using Archwright.Exchange.CaseFiles;

namespace Archwright.Cli.Verbs;

/// <summary>What a forecast takes from the <c>visit</c> object of a case; the reader has checked it.</summary>
internal static class VisitFigures
{
    /// <summary>The patient's age [years]; null when the case does not say.</summary>
    public static double? Age(CaseFile file) => Number(file, "age_years");

    /// <summary>How long the wire of the case has been in place [weeks]; nil when another one, or none, is.</summary>
    public static double WeeksInPlace(CaseFile file)
    {
        if (file.VisitJson is not { } json)
            return 0;

        using JsonDocument visit = JsonDocument.Parse(json);
        return visit.RootElement.TryGetProperty("present", out JsonElement present)
            && present.ValueKind == JsonValueKind.Object
            && present.TryGetProperty("catalogue", out JsonElement wire) && wire.GetString() == file.WireId
            && present.TryGetProperty("weeks", out JsonElement weeks)
                ? weeks.GetDouble()
                : 0;
    }

    private static double? Number(CaseFile file, string key)
    {
        if (file.VisitJson is not { } json)
            return null;

        using JsonDocument visit = JsonDocument.Parse(json);
        return visit.RootElement.TryGetProperty(key, out JsonElement value)
            && value.ValueKind == JsonValueKind.Number
                ? value.GetDouble()
                : null;
    }
}
