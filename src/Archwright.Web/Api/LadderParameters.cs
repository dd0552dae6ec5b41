using System.Globalization;

namespace Archwright.Web.Api;

/// <summary>Reads the parameters that a ladder alone has.</summary>
internal static class LadderParameters
{
    /// <summary>Most wires of a sequence, as on the command line.</summary>
    public const int MostOfASequence = 12;

    /// <summary>Looks at a sequence: not too long, and no wire twice in a row.</summary>
    /// <returns>The same sequence.</returns>
    public static IReadOnlyList<string>? Sequence(IReadOnlyList<string>? ids, List<ApiProblem> problems)
    {
        if (ids is null)
            return null;

        if (ids.Count > MostOfASequence)
        {
            problems.Add(new ApiProblem(
                "", "sequence", $"A sequence has up to {MostOfASequence} wires, not {ids.Count}.", "Leave some out."));
        }

        problems.AddRange(ids.Zip(ids.Skip(1)).Where(pair => pair.First == pair.Second).Select(pair => new ApiProblem(
            "", "sequence", $"{pair.First} stands twice in a row.",
            "Write each wire once: it is kept until the next may go in.")));
        return ids;
    }

    /// <summary>Reads prices: <c>niti-014:4.20,ss-016:2</c>.</summary>
    /// <returns>Null where nothing is given.</returns>
    public static IReadOnlyDictionary<string, decimal>? Prices(string? text, List<ApiProblem> problems)
    {
        if (text is null)
            return null;

        var prices = new Dictionary<string, decimal>(StringComparer.Ordinal);
        foreach (string pair in text.Split(
            ',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            string[] parts = pair.Split(':', StringSplitOptions.TrimEntries);
            ComputeRoutes.Wire(parts[0], "prices", problems);
            if (parts.Length != 2 || !IsPrice(parts[1], out decimal price) || !prices.TryAdd(parts[0], price))
            {
                problems.Add(new ApiProblem(
                    "", "prices", $"“{pair}” is no price, or a second one for the same wire.",
                    "Write id, colon and a figure from 0 up, each wire once: niti-014:4.20,ss-016:2."));
            }
        }

        return prices;
    }

    private static bool IsPrice(string text, out decimal price) =>
        decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out price);
}
