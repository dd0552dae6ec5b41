namespace Archwright.Cli.Running;

/// <summary>Guesses what a mistyped word was meant to be.</summary>
internal static class Nearest
{
    /// <summary>The known words within a third of the length (at least two) in edits, the nearest first, three at
    /// most; words that begin as typed count as near.</summary>
    public static IReadOnlyList<string> To(string typed, IEnumerable<string> known)
    {
        int reach = Math.Max(2, typed.Length / 3);
        return
        [
            .. known
                .Select(word => (Word: word, Edits: Edits(Plain(typed), Plain(word))))
                .Where(pair => pair.Edits <= reach
                    || (typed.Length >= 3 && Plain(pair.Word).StartsWith(Plain(typed), StringComparison.Ordinal)))
                .OrderBy(pair => pair.Edits)
                .ThenBy(pair => pair.Word, StringComparer.Ordinal)
                .Select(pair => pair.Word)
                .Take(3),
        ];
    }

    /// <summary>A sentence that offers the guesses; empty when there is none.</summary>
    public static string Sentence(string typed, IEnumerable<string> known)
    {
        IReadOnlyList<string> near = To(typed, known);
        return near.Count == 0 ? "" : $"Did you mean {string.Join(" or ", near.Select(word => $"'{word}'"))}?";
    }

    /// <summary>Least number of letters to change, add, leave out or swap with a neighbour.</summary>
    internal static int Edits(string a, string b)
    {
        var distance = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
            distance[i, 0] = i;
        for (int j = 0; j <= b.Length; j++)
            distance[0, j] = j;

        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int change = a[i - 1] == b[j - 1] ? 0 : 1;
                int best = Math.Min(
                    Math.Min(distance[i - 1, j], distance[i, j - 1]) + 1, distance[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    best = Math.Min(best, distance[i - 2, j - 2] + 1);
                distance[i, j] = best;
            }
        }

        return distance[a.Length, b.Length];
    }

    private static string Plain(string word) => word.TrimStart('-').ToLowerInvariant();
}
