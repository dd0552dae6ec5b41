using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Practice.People;
using Archwright.Treatment.Decisions;

namespace Archwright.Practice.Advice;

/// <summary>From what a practice notes to what is asked of the decision and of the ladder.</summary>
internal static class AdviceQuestion
{
    // Any wire: whoever asks puts their own in its place.
    private const string AnyWire = "niti-014";

    /// <summary>The question of a visit.</summary>
    /// <exception cref="ArgumentException">The inputs do not hold together; the message says how.</exception>
    public static VisitQuestion Of(AdviceInputs inputs)
    {
        ArchSetup arch = ArchModel.Build(inputs, AnyWire);
        CatalogueWire? present = Known(inputs.PresentWire);
        return new VisitQuestion
        {
            Arch = ArchToday.Of(arch),
            // A wire that the catalogue does not hold is in place, and nothing can be said of it.
            PresentIsKnown = inputs.PresentIsKnown && (inputs.PresentWire.Length == 0 || present is not null),
            Present = present is null ? null : new PresentWire(present, inputs.PresentWeeks),
            Choice = [.. inputs.Stock.Distinct().Select(Known).OfType<CatalogueWire>()],
            ChoiceIsStock = true,
            WorkingWire = Known(inputs.WorkingWire),
            Alerts = [.. inputs.Alerts.Select(Alert).OfType<PatientAlert>()],
            Discomfort = inputs.Discomfort,
            AgeYears = inputs.AgeYears,
        };
    }

    private static CatalogueWire? Known(string id) =>
        WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? wire : null;

    // What is noted for people to read changes no rule.
    private static PatientAlert? Alert(AlertKind kind) => kind switch
    {
        AlertKind.Nickel => PatientAlert.Nickel,
        AlertKind.RootShortening => PatientAlert.Resorption,
        AlertKind.Medicine => PatientAlert.Medication,
        AlertKind.Hygiene => PatientAlert.Hygiene,
        AlertKind.ReducedSupport => PatientAlert.ReducedSupport,
        _ => null,
    };
}
