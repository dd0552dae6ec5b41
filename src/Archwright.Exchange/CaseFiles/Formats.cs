using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Opens the root of a file and checks what it says it is.</summary>
internal static class Formats
{
    private static readonly (string Format, string Hint)[] Known =
    [
        (CaseReader.Format, "This is a case: use it with “solve” or “compare”."),
        (TwistCaseReader.Format, "This is a twist case: use it with “twist --case”."),
        ("archwright-bend-case/1", "This is a bend case: it is for “bend --case”."),
        ("archwright-forces/1", "This is a result of “solve”, not a case."),
        ("archwright-compare/1", "This is a result of “compare”, not a case."),
        ("archwright-twist/1", "This is a result of “twist”, not a case."),
    ];

    /// <summary>The fields of the root; null when it is no object, or a file of another format, whose keys would only
    /// give misleading problems.</summary>
    /// <param name="root">The root of the file.</param>
    /// <param name="format">The word of <c>format</c> that is wanted.</param>
    /// <param name="keys">Keys that the root may have.</param>
    /// <param name="whose">Whose figures these are.</param>
    /// <param name="problems">Where problems go.</param>
    public static Fields? Open(Node root, string format, KeySet keys, string whose, ProblemList problems)
    {
        string? given = root.Members.FirstOrDefault(m => m.Key == "format").Value is { Kind: NodeKind.Text } node
            ? node.Text
            : null;
        if (given is not null && given != format)
        {
            string hint = Known.FirstOrDefault(k => k.Format == given).Hint ?? "";
            problems.Add(
                ProblemCodes.FormatWrong, "format",
                $"The format is {Say.Quote(given)}; {Say.Quote(format)} is wanted.",
                hint.Length > 0 ? hint : $"Write \"format\": \"{format}\" if the file is one.");
            return null;
        }

        if (Fields.Of(root, keys, whose, problems) is not { } fields)
            return null;

        if (!fields.Has("format"))
        {
            problems.Add(
                ProblemCodes.KeyMissing, "format", "The file does not say what it is.",
                $"Write \"format\": \"{format}\".");
        }
        else if (given is null)
        {
            problems.Add(
                ProblemCodes.ValueKind, "format", $"The format is {fields.Find("format")!.Describe()}, not a text.",
                $"Write \"format\": \"{format}\".");
        }

        return fields;
    }
}
