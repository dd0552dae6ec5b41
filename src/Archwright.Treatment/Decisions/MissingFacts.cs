namespace Archwright.Treatment.Decisions;

/// <summary>What was not said and matters to the advice. It is asked for; nothing is put in its place.</summary>
internal static class MissingFacts
{
    public static IEnumerable<MissingFact> Of(VisitQuestion question)
    {
        if (!question.PresentIsKnown)
            yield return new MissingFact("visit.present", "Which wire is in place, or none on bonding day (null)?");
        if (!question.Arch.Unsaid.IsEmpty)
        {
            yield return new MissingFact(
                "absent",
                $"What of {string.Join(", ", question.Arch.Unsaid)}: extracted, unerupted, missing, or there without a "
                + "bracket?");
        }

        if (question.Present is { Weeks: null })
            yield return new MissingFact("visit.present.weeks", "How many weeks has the wire been in place?");
        if (question.Alerts is null)
        {
            yield return new MissingFact(
                "visit.alerts",
                "Are there alerts (nickel, resorption, medication, hygiene, reduced-support), or none ([])?");
        }

        if (question.Present is not null && question.Discomfort is null)
        {
            yield return new MissingFact(
                "visit.discomfort_0_10", "How bad was it at its worst after the last wire, 0 to 10?");
        }

        if (question.AgeYears is null && question.LearntRate is null)
            yield return new MissingFact("visit.age_years", "How old is the patient?");
        if (question.WorkingWire is null)
            yield return new MissingFact("visit.working_wire", "Which wire is this arch to work with in the end?");
    }
}
