using System.Globalization;

namespace Archwright.Exchange.Problems;

/// <summary>How figures and the user's own words are shown in messages.</summary>
internal static class Say
{
    private const int LongestQuote = 40;

    /// <summary>A length with three decimals, more where they are needed: 0.457, 0.45725.</summary>
    public static string Length(double millimetres) =>
        Math.Abs(millimetres) is >= 0.0005 and < 1e4
            ? millimetres.ToString("0.000####", CultureInfo.InvariantCulture)
            : Number(millimetres);

    /// <summary>A figure, up to six digits: 0.3, 900, 1E+308.</summary>
    public static string Number(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    /// <summary>The user's own words in quotation marks, cut where they are long.</summary>
    public static string Quote(string text)
    {
        string shown = text.Length <= LongestQuote ? text : text[..LongestQuote] + "…";
        return $"“{Printable(shown)}”";
    }

    /// <summary>The text with a capital in front, to begin a sentence.</summary>
    public static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>A, B and C.</summary>
    public static string List(IReadOnlyList<string> words) => words.Count switch
    {
        0 => "none",
        1 => words[0],
        _ => string.Join(", ", words.Take(words.Count - 1)) + " and " + words[^1],
    };

    /// <summary>A, B or C.</summary>
    public static string Choice(IReadOnlyList<string> words) => words.Count switch
    {
        0 => "none",
        1 => words[0],
        _ => string.Join(", ", words.Take(words.Count - 1)) + " or " + words[^1],
    };

    /// <summary>The text with control characters and lone halves of characters made visible, so that a message never
    /// garbles a screen.</summary>
    public static string Printable(string text)
    {
        if (!text.Any(c => char.IsControl(c) || char.IsSurrogate(c)))
            return text;

        var shown = new System.Text.StringBuilder(text.Length);
        foreach (System.Text.Rune rune in text.EnumerateRunes())
            shown.Append(System.Text.Rune.IsControl(rune) ? "·" : rune.ToString());
        return shown.ToString();
    }
}
