namespace Archwright.Exchange.Problems;

/// <summary>Finds the known word that was probably meant.</summary>
internal static class Nearest
{
    /// <summary>The candidate nearest to <paramref name="given"/>, or null when none is near.</summary>
    /// <remarks>A unit left off (<c>height</c> for <c>height_mm</c>) counts as very near; otherwise the least number of
    /// single-letter edits (Levenshtein's distance) decides, at most a third of the word's length.</remarks>
    public static string? To(string given, IEnumerable<string> candidates)
    {
        if (given.Length is 0 or > 64)
            return null;

        string? best = null;
        int least = Math.Max(2, given.Length / 3) + 1;
        foreach (string candidate in candidates)
        {
            int distance = Distance(Plain(given), Plain(candidate));
            if (distance < least)
            {
                least = distance;
                best = candidate;
            }
        }

        return best;
    }

    /// <summary>", did you mean …?" or nothing.</summary>
    public static string Hint(string given, IEnumerable<string> candidates) =>
        To(given, candidates) is { } nearest ? $" Did you mean “{nearest}”?" : "";

    private static readonly string[] Units = ["_mm", "_deg", "_N", "_MPa", "_degC", "_N_per_mm"];

    private static string Plain(string word)
    {
        foreach (string unit in Units)
        {
            if (word.EndsWith(unit, StringComparison.OrdinalIgnoreCase))
                word = word[..^unit.Length];
        }

        return word.ToLowerInvariant().Replace("center", "centre", StringComparison.Ordinal);
    }

    private static int Distance(string a, string b)
    {
        int[] row = new int[b.Length + 1];
        for (int j = 0; j <= b.Length; j++)
            row[j] = j;

        for (int i = 1; i <= a.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int substituted = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(substituted, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[b.Length];
    }
}
