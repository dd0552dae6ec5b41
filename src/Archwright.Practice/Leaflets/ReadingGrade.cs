using System.Text.RegularExpressions;

namespace Archwright.Practice.Leaflets;

/// <summary>How many years of school an English text asks for.</summary>
/// <remarks>J. P. Kincaid, R. P. Fishburne, R. L. Rogers, B. S. Chissom, "Derivation of new readability formulas for
/// Navy enlisted personnel", Research Branch Report 8-75, 1975 (from memory): grade = 0.39 words/sentences + 11.8
/// syllables/words − 15.59. Syllables are counted by groups of vowels, with the usual exceptions for a silent e; a rule
/// of this kind misses one word in ten or so, either way. For English alone.</remarks>
public static partial class ReadingGrade
{
    /// <summary>The grade of a text.</summary>
    /// <param name="lines">Lines, each ending at least one sentence.</param>
    /// <exception cref="ArgumentException">There is no word in it.</exception>
    public static double Of(IEnumerable<string> lines)
    {
        int words = 0;
        int sentences = 0;
        int syllables = 0;
        foreach (string sentence in lines.SelectMany(line => Stop().Split(line)))
        {
            string[] found = [.. Word().Matches(sentence).Select(match => match.Value.ToLowerInvariant())];
            if (found.Length == 0)
                continue;

            sentences++;
            words += found.Length;
            syllables += found.Sum(Syllables);
        }

        return words > 0
            ? 0.39 * words / sentences + 11.8 * syllables / words - 15.59
            : throw new ArgumentException("There is no word to read.", nameof(lines));
    }

    /// <summary>Syllables of a word as they are spoken, by rule; one at least. Numbers count as one.</summary>
    public static int Syllables(string word)
    {
        string letters = word.ToLowerInvariant();
        int groups = Vowels().Count(letters);
        if (SilentEnd().IsMatch(letters))
            groups--;
        return Math.Max(1, groups);
    }

    // A full stop, a question or an exclamation mark ends a sentence; a stop inside a number does not.
    [GeneratedRegex(@"[.!?](?:\s|$)", RegexOptions.ExplicitCapture)]
    private static partial Regex Stop();

    [GeneratedRegex(@"[\p{L}\d]+(?:['’.][\p{L}\d]+)*", RegexOptions.ExplicitCapture)]
    private static partial Regex Word();

    [GeneratedRegex("[aeiouy]+")]
    private static partial Regex Vowels();

    // "braces" has two, "wire" one, "moved" one, "needed" two, "little" two.
    [GeneratedRegex(@"[^aeiouy]e$(?<![^aeiouy]le)|[^aeiouytd]ed$|[^aeiouycsxzg]es$", RegexOptions.ExplicitCapture)]
    private static partial Regex SilentEnd();
}
