using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Practice.Bench;
using Archwright.Practice.Leaflets;
using Archwright.Web.Leaflets;

namespace Archwright.Web.Texts;

/// <summary>The texts that a practice may change, in the order in which they are read, and how they look filled
/// in.</summary>
internal static class TextList
{
    private const int MostShown = 70;
    private const string SampleWire = "niti-016";

    /// <summary>Leaflet, answers and patient's page with the keys of each.</summary>
    public static IReadOnlyList<(string Part, IReadOnlyList<string> Keys)> Parts { get; } =
    [
        ("Leaflet", [.. LeafletTexts.EditableKeys.Where(key => !IsOfAnswers(key) && !IsOfPage(key))]),
        ("Answers", [.. LeafletTexts.EditableKeys.Where(IsOfAnswers)]),
        ("Patient's page", [.. LeafletTexts.EditableKeys.Where(IsOfPage)]),
    ];

    /// <summary>A text's beginning, for lists.</summary>
    public static string Short(string text) => text.Length <= MostShown ? text : text[..MostShown].TrimEnd() + "…";

    /// <summary>Text that takes the place of the picture of the answers where it could not be made.</summary>
    public const string NoPicture = "answers.picture.none";

    /// <summary>A sign that nobody types; only to find out in which lines a text stands.</summary>
    public const char Marker = '\u2063';

    /// <summary>Whether a text of the patient's page stands over others.</summary>
    public static bool IsHeading(string key) => key is "page.weeks" or "page.wires" or "page.diary" or "page.noted";

    /// <summary>A text with samples in its places.</summary>
    /// <param name="texts">The language.</param>
    /// <param name="text">The text.</param>
    /// <param name="practice">Name of the practice.</param>
    /// <param name="today">The day.</param>
    public static string Filled(LeafletTexts texts, string text, string practice, DateOnly today)
    {
        string wire = WireCatalogue.Default.TryFind(SampleWire, out CatalogueWire? found)
            ? LeafletWriter.WireWords(texts, found)
            : "";
        (string Place, string Sample)[] samples =
        [
            ("{wire}", wire), ("{size}", "0.41"), ("{date}", texts.Day(today)), ("{practice}", practice),
            ("{week}", "3"), ("{times}", WireSections.Times.ToString(CultureInfo.InvariantCulture)), ("{letter}", "A"),
            ("{grams}", "98"), ("{left}", "1.4"),
            ("{bend}", BenchTests.Top.ToString("0.#", CultureInfo.InvariantCulture)),
        ];
        return samples.Aggregate(
            text, (filled, one) => filled.Replace(one.Place, one.Sample, StringComparison.Ordinal));
    }

    private static bool IsOfAnswers(string key) =>
        key == "answers" || key.StartsWith("answers.", StringComparison.Ordinal);

    private static bool IsOfPage(string key) => key.StartsWith("page.", StringComparison.Ordinal);
}
