using Archwright.Practice.Rules;
using Archwright.Practice.Values;

namespace Archwright.Practice.People;

/// <summary>What is noted of a new patient.</summary>
public sealed record PatientDetails
{
    /// <summary>Given names.</summary>
    public required string GivenNames { get; init; }

    /// <summary>Family name.</summary>
    public required string FamilyName { get; init; }

    /// <summary>Birth date.</summary>
    public required DateOnly BornOn { get; init; }

    /// <summary>Language of the leaflet, as an English word.</summary>
    public string Language { get; init; } = "English";

    /// <summary>Parent or guardian with their part; empty when none.</summary>
    public string Guardian { get; init; } = "";

    /// <summary>The plan of treatment in a sentence.</summary>
    public string Plan { get; init; } = "";

    /// <summary>True for a patient of the demo practice, who does not exist.</summary>
    public bool IsInvented { get; init; }
}

/// <summary>Somebody in treatment.</summary>
public sealed class Patient
{
    private Patient()
    {
    }

    /// <summary>Identity.</summary>
    public Guid Id { get; private set; }

    /// <summary>Given names.</summary>
    public string GivenNames { get; private set; } = "";

    /// <summary>Family name.</summary>
    public string FamilyName { get; private set; } = "";

    /// <summary>Both names in small letters, for searching.</summary>
    public string SearchName { get; private set; } = "";

    /// <summary>Birth date.</summary>
    public DateOnly BornOn { get; private set; }

    /// <summary>Language of the leaflet, as an English word.</summary>
    public string Language { get; private set; } = "";

    /// <summary>Parent or guardian; empty when none.</summary>
    public string Guardian { get; private set; } = "";

    /// <summary>The plan of treatment in a sentence.</summary>
    public string Plan { get; private set; } = "";

    /// <summary>True for a patient of the demo practice, who does not exist.</summary>
    public bool IsInvented { get; private set; }

    /// <summary>All alerts, also those that have ended.</summary>
    public Listing<Alert> Alerts { get; private set; } = Listing<Alert>.Empty;

    /// <summary>Changes with every save.</summary>
    public Guid Revision { get; private set; }

    /// <summary>Given and family names.</summary>
    public string FullName => $"{GivenNames} {FamilyName}";

    /// <summary>A new patient.</summary>
    /// <param name="details">Who.</param>
    /// <param name="practiceIsDemo">Whether the practice is a demo.</param>
    /// <param name="today">The day.</param>
    /// <exception cref="RuleBrokenException">No name, no past birth date, or an invented patient among real ones.
    /// </exception>
    public static Patient Create(PatientDetails details, bool practiceIsDemo, DateOnly today)
    {
        PracticeRules.APatientHasANameAndABirthDate.Keep(
            details.GivenNames.Trim().Length > 0 && details.FamilyName.Trim().Length > 0
            && details.BornOn < today && details.BornOn.Year > 1900,
            "Give given name, family name and a birth date in the past.");
        PracticeRules.InventedPatientsStayInADemoPractice.Keep(
            details.IsInvented == practiceIsDemo,
            practiceIsDemo
                ? "This is the demo practice: no real person belongs here. Start a practice of your own."
                : "Invented patients belong in the demo practice alone.");
        return new Patient
        {
            Id = Guid.CreateVersion7(),
            GivenNames = details.GivenNames.Trim(),
            FamilyName = details.FamilyName.Trim(),
            SearchName = SearchText(details.GivenNames + " " + details.FamilyName),
            BornOn = details.BornOn,
            Language = details.Language,
            Guardian = details.Guardian,
            Plan = details.Plan,
            IsInvented = details.IsInvented,
        };
    }

    /// <summary>Age in whole years on a day.</summary>
    public int AgeOn(DateOnly day) =>
        day.Year - BornOn.Year - (day < BornOn.AddYears(day.Year - BornOn.Year) ? 1 : 0);

    /// <summary>The alerts that hold on a day.</summary>
    public IReadOnlyList<Alert> AlertsOn(DateOnly day) => [.. Alerts.Where(alert => alert.HoldsOn(day))];

    /// <summary>Writes the plan and whom the leaflet speaks to anew.</summary>
    /// <param name="plan">The plan of treatment in a sentence.</param>
    /// <param name="guardian">Parent or guardian with their part; empty when none.</param>
    /// <param name="language">Language of the leaflet, as an English word.</param>
    public void Plans(string plan, string guardian, string language) =>
        (Plan, Guardian, Language) = (plan.Trim(), guardian.Trim(), language.Trim());

    /// <summary>Notes an alert.</summary>
    /// <returns>The alert.</returns>
    /// <exception cref="RuleBrokenException">No text.</exception>
    public Alert Raise(AlertKind kind, string text, DateOnly since)
    {
        PracticeRules.AnAlertSaysWhat.Keep(text.Trim().Length > 0, "Say in words what there is to know.");
        var alert = new Alert(Guid.CreateVersion7(), kind, text.Trim(), since);
        Alerts = Alerts.With(alert);
        return alert;
    }

    /// <summary>Ends an alert; it stays readable.</summary>
    /// <param name="alert">Which.</param>
    /// <param name="on">First day on which it no longer holds.</param>
    /// <param name="because">Why; needed.</param>
    /// <param name="by">Who says so.</param>
    /// <exception cref="RuleBrokenException">No reason.</exception>
    /// <exception cref="ArgumentException">The patient has no such alert.</exception>
    public void End(Guid alert, DateOnly on, string because, Actor by)
    {
        PracticeRules.AnAlertIsEndedNeverErased.Keep(because.Trim().Length > 0, "Say why the alert no longer holds.");
        Alert found = Alerts.FirstOrDefault(one => one.Id == alert)
            ?? throw new ArgumentException("The patient has no such alert.", nameof(alert));
        Alerts = Listing<Alert>.Of(Alerts.Select(one => one.Id == found.Id
            ? found with { EndedOn = on, EndedBecause = $"{because.Trim()} ({by.Name})" }
            : one));
    }

    /// <summary>How names are compared in a search: small letters, one space, no accents.</summary>
    public static string SearchText(string text) => string.Join(
        ' ',
        string.Concat(text.ToLowerInvariant().Select(Plain)).Split(' ', StringSplitOptions.RemoveEmptyEntries));

    // The letters of Latin scripts with marks, by the letter they stand with. A table of our own: the program runs
    // without the system's library of languages, which would take letters apart.
    private static readonly (char Letter, string Marked)[] MarkedLetters =
    [
        ('a', "àáâãäåāăą"), ('c', "çćĉċč"), ('d', "ďđð"), ('e', "èéêëēĕėęě"), ('g', "ĝğġģ"), ('h', "ĥħ"),
        ('i', "ìíîïĩīĭįı"), ('j', "ĵ"), ('k', "ķ"), ('l', "ĺļľŀł"), ('n', "ñńņňŉ"), ('o', "òóôõöøōŏő"), ('r', "ŕŗř"),
        ('s', "śŝşšș"), ('t', "ţťŧț"), ('u', "ùúûüũūŭůűų"), ('w', "ŵ"), ('y', "ýÿŷ"), ('z', "źżž"),
    ];

    private static string Plain(char letter) => letter switch
    {
        'ß' => "ss",
        'æ' => "ae",
        'œ' => "oe",
        < '\u0080' => letter.ToString(),
        _ => (MarkedLetters.FirstOrDefault(one => one.Marked.Contains(letter)) is { Letter: not '\0' } found
            ? found.Letter
            : letter).ToString(),
    };
}
