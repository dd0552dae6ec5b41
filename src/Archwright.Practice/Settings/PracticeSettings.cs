using Archwright.Dentition.Teeth;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Rules;
using Archwright.Practice.Values;

namespace Archwright.Practice.Settings;

/// <summary>How figures of force are shown.</summary>
public enum ShownForce
{
    /// <summary>Centinewton.</summary>
    Centinewton,

    /// <summary>Newton.</summary>
    Newton,

    /// <summary>Gram-force.</summary>
    GramForce,
}

/// <summary>What a practice has settled for itself.</summary>
public sealed record PracticeSettings
{
    /// <summary>Fewest minutes of a session.</summary>
    public const int ShortestSession = 5;

    /// <summary>Most minutes of a session: a working day.</summary>
    public const int LongestSession = 600;

    /// <summary>Name of the practice.</summary>
    public string Name { get; init; } = "";

    /// <summary>True for the demo practice: all its patients are invented.</summary>
    public bool IsDemo { get; init; }

    /// <summary>How teeth are numbered on screens.</summary>
    public ToothNotation Notation { get; init; } = ToothNotation.Iso;

    /// <summary>How forces are shown.</summary>
    public ShownForce Force { get; init; } = ShownForce.Centinewton;

    /// <summary>Minutes without a touch after which one is signed out.</summary>
    public int SessionMinutes { get; init; } = 60;

    /// <summary>Years that records are kept; null: for ever, since nothing is deleted unless a practice says
    /// so.</summary>
    public int? RetentionYears { get; init; }

    /// <summary>Age up to which a record is kept in any case; null for none.</summary>
    public int? RetentionAge { get; init; }

    /// <summary>Address under which patients reach this program, as "https://braces.example"; empty for the address
    /// that the staff use.</summary>
    public string PublicAddress { get; init; } = "";

    /// <summary>Codes of the languages in which leaflets and answers are offered; one at least.</summary>
    public Listing<string> Languages { get; init; } = Listing<string>.Of(LeafletTexts.Codes);

    /// <summary>Code of the language for whoever speaks none that is offered; one of <see cref="Languages"/>.</summary>
    public string Language { get; init; } = "en";

    /// <summary>The languages offered, in the order of the program's own list.</summary>
    public IReadOnlyList<string> Offered => [.. LeafletTexts.Codes.Where(Languages.Contains)];

    /// <summary>Whether a language, named by its English word, is offered.</summary>
    public bool Offers(string englishName) =>
        LeafletTexts.CodeOf(englishName) is { } code && Languages.Contains(code);

    /// <summary>Code of the language in which a patient is written to.</summary>
    /// <param name="englishName">Their language, as it stands in the file.</param>
    public string LanguageFor(string englishName) =>
        LeafletTexts.CodeOf(englishName) is { } code && Languages.Contains(code) ? code : Language;

    /// <summary>These settings with other languages offered.</summary>
    /// <param name="languages">Codes; one at least.</param>
    /// <param name="usual">For whoever speaks none of them; one of them.</param>
    /// <exception cref="RuleBrokenException">None is offered, or the usual one is not among them.</exception>
    public PracticeSettings Speaking(IReadOnlyCollection<string> languages, string usual)
    {
        PracticeRules.LeafletsHaveALanguage.Keep(
            languages.Count > 0 && languages.All(LeafletTexts.Codes.Contains) && languages.Contains(usual),
            "Offer one language at least, and choose the usual one among those offered.");
        return this with
        {
            Languages = Listing<string>.Of(LeafletTexts.Codes.Where(languages.Contains)), Language = usual,
        };
    }
}
