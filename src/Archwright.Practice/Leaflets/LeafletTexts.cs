using System.Collections.Frozen;
using System.Globalization;
using System.Reflection;
using System.Text.Json;
using Archwright.Practice.Values;

namespace Archwright.Practice.Leaflets;

/// <summary>A text of a leaflet as a practice wants it, in place of ours.</summary>
/// <param name="Language">Code of the language: "en".</param>
/// <param name="Key">Which text: "eat.text".</param>
/// <param name="Text">The practice's words; places in braces are kept.</param>
public sealed record OwnText(string Language, string Key, string Text);

/// <summary>The texts of leaflets in one language.</summary>
public sealed class LeafletTexts
{
    /// <summary>Codes of the languages that there are texts in, ours first.</summary>
    public static IReadOnlyList<string> Codes { get; } = ["en", "es", "de", "pl", "ar"];

    private static readonly FrozenDictionary<string, string> EnglishNames = new Dictionary<string, string>(
        StringComparer.Ordinal)
    {
        ["en"] = "English", ["es"] = "Spanish", ["de"] = "German", ["pl"] = "Polish", ["ar"] = "Arabic",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, FrozenDictionary<string, string>> Files =
        Codes.ToFrozenDictionary(code => code, Read, StringComparer.Ordinal);

    private readonly FrozenDictionary<string, string> ours;
    private readonly Dictionary<string, string> own;

    private LeafletTexts(string code, IEnumerable<OwnText> own)
    {
        Code = code;
        ours = Files[code];
        this.own = own.Where(one => one.Language == code && ours.ContainsKey(one.Key) && one.Text.Trim().Length > 0)
            .GroupBy(one => one.Key, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Last().Text.Trim(), StringComparer.Ordinal);
    }

    /// <summary>Code of the language, as in the attribute lang.</summary>
    public string Code { get; }

    /// <summary>The language in its own words: "Polski".</summary>
    public string OwnName => ours["language"];

    /// <summary>The language as an English word, as it stands in a patient's file.</summary>
    public string EnglishName => EnglishNames[Code];

    /// <summary>True for languages written from right to left.</summary>
    public bool IsRightToLeft => ours["direction"] == "rtl";

    /// <summary>That a speaker has yet to review the texts, in their language; empty where that is done.</summary>
    public string ReviewNote => ours["review"];

    /// <summary>Keys that a practice may put words of its own to, in the order of the leaflet.</summary>
    public static IReadOnlyList<string> EditableKeys { get; } =
        [.. Ordered("en").Where(key => key is not ("language" or "direction" or "review" or "date" or "months"))];

    /// <summary>Our own text, whatever the practice says.</summary>
    /// <exception cref="KeyNotFoundException">There is no such text.</exception>
    public string Ours(string key) => ours[key];

    /// <summary>A text.</summary>
    /// <exception cref="KeyNotFoundException">There is no such text.</exception>
    public string this[string key] => own.GetValueOrDefault(key) ?? ours[key];

    /// <summary>The texts of a language.</summary>
    /// <param name="code">Code of the language.</param>
    /// <param name="own">The practice's own, of any language.</param>
    /// <exception cref="ArgumentException">There are no texts in that language.</exception>
    public static LeafletTexts In(string code, Listing<OwnText>? own = null) => Files.ContainsKey(code)
        ? new LeafletTexts(code, own ?? Listing<OwnText>.Empty)
        : throw new ArgumentException($"There is no leaflet in '{code}'.", nameof(code));

    /// <summary>Code of a language named by an English word; null where there are no texts in it.</summary>
    public static string? CodeOf(string englishName) =>
        EnglishNames.FirstOrDefault(pair => pair.Value.Equals(
            englishName.Trim(), StringComparison.OrdinalIgnoreCase)).Key;

    /// <summary>A day in the language's own way of writing it.</summary>
    public string Day(DateOnly day) => ours["date"]
        .Replace("{day}", Number(day.Day), StringComparison.Ordinal)
        .Replace("{month}", ours["months"].Split('|')[day.Month - 1], StringComparison.Ordinal)
        .Replace("{number}", Number(day.Month), StringComparison.Ordinal)
        .Replace("{year}", Number(day.Year), StringComparison.Ordinal);

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static FrozenDictionary<string, string> Read(string code) =>
        Parsed(code).ToFrozenDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);

    private static IEnumerable<string> Ordered(string code) => Parsed(code).Select(pair => pair.Key);

    private static List<KeyValuePair<string, string>> Parsed(string code)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"leaflet.{code}.json")
            ?? throw new InvalidOperationException($"The texts in '{code}' are missing from the program.");
        using JsonDocument document = JsonDocument.Parse(stream);
        return
        [
            .. document.RootElement.EnumerateObject()
                .Select(one => KeyValuePair.Create(one.Name, one.Value.GetString() ?? "")),
        ];
    }
}
