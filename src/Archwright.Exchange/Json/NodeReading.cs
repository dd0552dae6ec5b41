using Archwright.Exchange.Problems;
using Archwright.Mechanics.Numerics;

namespace Archwright.Exchange.Json;

/// <summary>Reads single values. Whatever is wrong goes to the problems, and null comes back.</summary>
internal static class NodeReading
{
    /// <summary>Longest text of one line that a file may carry [characters].</summary>
    public const int LongestText = 500;

    /// <summary>A figure within its limits.</summary>
    public static double? Number(Node node, Quantity quantity, string whose, ProblemList problems)
    {
        if (node.Kind != NodeKind.Number)
        {
            problems.Add(
                ProblemCodes.ValueKind, node.Path,
                $"The {quantity.Name} {whose} is {node.Describe()}, not a number.",
                node.Kind == NodeKind.Text && node.Text.Any(char.IsAsciiDigit)
                    ? "Write the number without quotation marks and without a unit."
                    : $"Write a number {quantity.Range}.");
            return null;
        }

        if (node.Number >= quantity.Low && node.Number <= quantity.High)
            return node.Number;

        problems.Add(
            ProblemCodes.ValueRange, node.Path,
            $"The {quantity.Name} {whose} is {quantity.WithUnit(node.ShownNumber)}; it must lie {quantity.Range}.",
            quantity.Remedy);
        return null;
    }

    /// <summary>One of a few words.</summary>
    public static string? Word(
        Node node, string what, string whose, ProblemList problems, params ReadOnlySpan<string> words)
    {
        if (node.Kind == NodeKind.Text)
        {
            foreach (string word in words)
            {
                if (string.Equals(node.Text, word, StringComparison.Ordinal))
                    return word;
            }
        }

        string[] known = words.ToArray();
        string hint = node.Kind == NodeKind.Text ? Nearest.Hint(node.Text, known) : "";
        problems.Add(
            ProblemCodes.ValueWord, node.Path,
            $"The value of {Say.Quote(what)} {whose} is {node.Describe()}, which is not known here.{hint}",
            $"Write {Say.Choice([.. known.Select(w => $"\"{w}\"")])}.");
        return null;
    }

    /// <summary>A text of one line that is not blank.</summary>
    public static string? Text(
        Node node, string what, string whose, ProblemList problems, int longest = LongestText, bool mayBeBlank = false)
    {
        if (node.Kind != NodeKind.Text)
        {
            problems.Add(
                ProblemCodes.ValueKind, node.Path, $"The {what} {whose} is {node.Describe()}, not a text.",
                "Write it in double quotation marks.");
            return null;
        }

        string? wrong = node.Text.Length > longest ? $"has {node.Text.Length} characters; at most {longest} are read"
            : node.Text.Any(char.IsControl) ? "has a line break, a tab or another control character in it"
            : !mayBeBlank && string.IsNullOrWhiteSpace(node.Text) ? "is blank"
            : null;
        if (wrong is null)
            return node.Text;

        problems.Add(
            ProblemCodes.ValueText, node.Path, $"The {what} {whose} {wrong}.",
            $"Write a text of one line, 1 to {longest} characters.");
        return null;
    }

    /// <summary>A list with a number of entries within limits.</summary>
    public static List<Node>? List(Node node, string what, int fewest, int most, ProblemList problems)
    {
        if (node.Kind != NodeKind.Array)
        {
            problems.Add(
                ProblemCodes.ValueKind, node.Path, $"Here stands {node.Describe()} where a list of {what} is wanted.",
                "Write a list in [ ].");
            return null;
        }

        if (node.Items.Count >= fewest && node.Items.Count <= most)
            return node.Items;

        problems.Add(
            ProblemCodes.ValueCount, node.Path,
            $"The list has {node.Items.Count} {what}; it must have {fewest} to {most}.",
            node.Items.Count < fewest ? "Add what is missing." : "Leave out what is not needed.");
        return null;
    }

    /// <summary>Three figures in a list.</summary>
    public static Vector3? Vector(Node node, Quantity quantity, string whose, ProblemList problems)
    {
        if (node.Kind != NodeKind.Array || node.Items.Count != 3)
        {
            string given = node.Kind == NodeKind.Array ? $"a list of {node.Items.Count}" : node.Describe();
            problems.Add(
                ProblemCodes.ValueVector, node.Path, $"The {quantity.Name} {whose} is {given}, not three figures.",
                "Write [x, y, z]: x to the patient's right, y forward, z up.");
            return null;
        }

        double? x = Number(node.Items[0], quantity, whose, problems);
        double? y = Number(node.Items[1], quantity, whose, problems);
        double? z = Number(node.Items[2], quantity, whose, problems);
        return x is { } a && y is { } b && z is { } c ? new Vector3(a, b, c) : null;
    }
}
