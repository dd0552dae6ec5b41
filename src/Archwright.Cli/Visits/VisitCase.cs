using System.Collections.Immutable;
using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Dentition.Catalogue;
using Archwright.Exchange.CaseFiles;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Forecasts;

namespace Archwright.Cli.Visits;

/// <summary>From a case file with its <c>visit</c> object to a question. What the object leaves out stays unknown.
/// </summary>
internal static class VisitCase
{
    /// <summary>The question of a case.</summary>
    /// <param name="file">The case; its reader has checked the object.</param>
    /// <param name="stock">Wires of a stock file, which go before those of the case; null when none is named.</param>
    /// <param name="friction">How the wires rub; null: as the slots of the case say.</param>
    /// <exception cref="Refusal">A bench set-up, or a wire that is not in the catalogue.</exception>
    public static VisitQuestion Question(
        CaseFile file, IReadOnlyList<CatalogueWire>? stock, FrictionChoice? friction = null)
    {
        if (file.Jaw == CaseFile.Bench || file.Teeth.Any(tooth => tooth is null))
        {
            throw new Refusal("the case is a bench set-up: it has no teeth to decide for.",
                "Name a case with teeth, as archwright arch makes them.");
        }

        var unknown = new VisitQuestion
        {
            Arch = new ArchToday
            {
                Arrangement = file.Arrangement, Teeth = [.. file.Teeth.Select(tooth => tooth!.Value)],
                SoftTissue = new SoftTissue(file.SoftTissue),
                Friction = friction,
                Unsaid = file.Unsaid,
            },
            PresentIsKnown = false,
            Choice = [.. stock ?? WireCatalogue.Default.Wires],
            ChoiceIsStock = stock is not null,
        };
        if (file.VisitJson is not { } json)
            return unknown;

        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement visit = document.RootElement;
        bool hasStock = visit.TryGetProperty("stock", out JsonElement own) && stock is null;
        return unknown with
        {
            PresentIsKnown = visit.TryGetProperty("present", out JsonElement present),
            Present = present.ValueKind == JsonValueKind.Object ? Present(present) : null,
            Choice = hasStock ? [.. own.EnumerateArray().Select(Wire)] : unknown.Choice,
            ChoiceIsStock = hasStock || stock is not null,
            WorkingWire = visit.TryGetProperty("working_wire", out JsonElement working) ? Wire(working) : null,
            Alerts = visit.TryGetProperty("alerts", out JsonElement alerts)
                ? [.. alerts.EnumerateArray().Select(Alert)] : null,
            Discomfort = Number(visit, "discomfort_0_10"),
            AgeYears = Number(visit, "age_years"),
        };
    }

    private static PresentWire Present(JsonElement present) => new(
        Wire(present.GetProperty("catalogue")), Number(present, "weeks"));

    private static CatalogueWire Wire(JsonElement id) => WireNames.Find(WireCatalogue.Default, id.GetString()!);

    private static PatientAlert Alert(JsonElement word) =>
        PatientAlerts.TryParse(word.GetString()!, out PatientAlert alert)
            ? alert
            : throw new InvalidOperationException($"The reader let the alert '{word.GetString()}' pass.");

    private static double? Number(JsonElement group, string key) =>
        group.TryGetProperty(key, out JsonElement value) && value.ValueKind == JsonValueKind.Number
            ? value.GetDouble()
            : null;
}
