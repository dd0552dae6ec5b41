namespace Archwright.Exchange.Problems;

/// <summary>Finds the known word that was probably meant.</summary>
internal static class Nearest
{
    /// <summary>The candidate nearest to <paramref name="given"/>, or null when none is near.</summary>
    /// <remarks>A unit left off (<c>height</c> for <c>height_mm</c>) counts as very near; otherwise the least number of
    /// single-letter edits decides (Damerau's distance: one letter more, one less, another one, or two neighbours
    /// swapped), at most a third of the word's length; among equals the one that begins alike.</remarks>
    public static string? To(string given, IEnumerable<string> candidates)
    {
        if (given.Length is 0 or > 64)
            return null;

        string? best = null;
        string word = Plain(given);
        (int Distance, int Unlike) least = (1 + (word.Length <= 4 ? 1 : Math.Max(2, word.Length / 3)), 0);
        foreach (string candidate in candidates)
        {
            string other = Plain(candidate);
            (int, int) rank = (Distance(word, other), -CommonStart(word, other));
            if (rank.CompareTo(least) < 0 && rank.Item1 < Math.Max(word.Length, other.Length))
            {
                least = rank;
                best = candidate;
            }
        }

        return best;
    }

    private static int CommonStart(string a, string b)
    {
        int same = 0;
        while (same < a.Length && same < b.Length && a[same] == b[same])
            same++;
        return same;
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

    // d[i, j] is the distance between the first i letters of a and the first j of b.
    private static int Distance(string a, string b)
    {
        int[,] d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
            d[i, 0] = i;
        for (int j = 0; j <= b.Length; j++)
            d[0, j] = j;

        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int changed = d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                d[i, j] = Math.Min(changed, Math.Min(d[i - 1, j], d[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
            }
        }

        return d[a.Length, b.Length];
    }
}
