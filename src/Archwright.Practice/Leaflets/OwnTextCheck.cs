using System.Globalization;
using System.Text.RegularExpressions;

namespace Archwright.Practice.Leaflets;

/// <summary>Whether words of the practice may take the place of ours, and what its editor should know before.</summary>
/// <param name="Faults">Why they cannot be kept, in sentences; empty where they can.</param>
/// <param name="Cautions">What to think over; they can be kept all the same.</param>
public sealed partial record OwnTextCheck(IReadOnlyList<string> Faults, IReadOnlyList<string> Cautions)
{
    /// <summary>Longest text that is taken [signs]: longer ones do not fit on the page of the leaflet.</summary>
    public const int MostSigns = 600;

    // Most that an English text should ask of its reader.
    private const double MostGrade = 7;

    // A text this much longer than ours is likely to push the leaflet over its page.
    private const double MuchLonger = 1.5;

    /// <summary>True where the words can be kept.</summary>
    public bool IsGood => Faults.Count == 0;

    /// <summary>Checks words of the practice.</summary>
    /// <param name="language">Code of the language.</param>
    /// <param name="key">Which text.</param>
    /// <param name="text">The practice's words.</param>
    public static OwnTextCheck Of(string language, string key, string text)
    {
        if (!LeafletTexts.Codes.Contains(language, StringComparer.Ordinal)
            || !LeafletTexts.EditableKeys.Contains(key, StringComparer.Ordinal))
        {
            return new OwnTextCheck(["There is no such text."], []);
        }

        string ours = LeafletTexts.In(language).Ours(key);
        string own = text.Trim();
        return new OwnTextCheck([.. Faulty(ours, own)], [.. Cautious(language, ours, own)]);
    }

    /// <summary>The places of a text that are filled in later, in the order of the alphabet: "{date}".</summary>
    public static IReadOnlyList<string> Places(string text) =>
        [.. Place().Matches(text).Select(match => match.Value).Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Faulty(string ours, string own)
    {
        if (own.Length == 0)
            yield return "Write something, or go back to our words.";
        if (own.Length > MostSigns)
            yield return $"It is {own.Length} signs long; {MostSigns} fit.";
        if (own.Any(sign => char.IsControl(sign)))
            yield return "It holds a line break or another sign that is not printed. Write it in one line.";
        if (own.Contains('<') || own.Contains('>'))
            yield return "It holds < or >. The words are printed as they stand; leave such signs out.";

        IReadOnlyList<string> wanted = Places(ours);
        IReadOnlyList<string> found = Places(own);
        if (!found.SequenceEqual(wanted) || Place().Replace(own, "").AsSpan().ContainsAny('{', '}'))
        {
            yield return wanted.Count > 0
                ? $"Keep {string.Join(", ", wanted)}, each once: the program fills them in."
                : "Leave out { and }: the program fills nothing in here.";
        }
    }

    private static IEnumerable<string> Cautious(string language, string ours, string own)
    {
        if (Dose().IsMatch(own))
        {
            yield return "It looks like a dose or an amount of a medicine. A leaflet names none: it is read by people "
                + "of all ages and weights, with allergies and other medicines. Send them to you, the dentist or the "
                + "pharmacist.";
        }

        if (own.Length > MuchLonger * ours.Length && own.Length > 120)
            yield return "It is much longer than ours. A leaflet that does not fit on one page is not printed.";
        if (language == "en" && own.Any(char.IsLetter) && own.Count(char.IsWhiteSpace) > 4
            && ReadingGrade.Of([own]) is var grade && grade > MostGrade)
        {
            yield return $"It reads at grade {grade.ToString("0.0", CultureInfo.InvariantCulture)}; "
                + $"{MostGrade:0} or below is the aim. Shorter words and sentences help.";
        }
    }

    [GeneratedRegex(@"\{[a-z]+\}")]
    private static partial Regex Place();

    // A number before a unit of a medicine, or a medicine's form with a number, in the five languages.
    [GeneratedRegex(
        @"\d\s*(mg|milligram|mcg|µg|μg|ml|mililitr|millilit|gramm? pro|tablet|pill|capsul|cápsul|kapsel|kapsułk|"
            + @"comprimid|drops|gotas|tropfen|kropl|ملغ|مغ|مل\b|قرص|أقراص|حبة|حبوب|كبسول)",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Dose();
}
