using Archwright.Dentition.Teeth;

namespace Archwright.Exchange.Csv;

/// <summary>Groups of teeth by name: <c>incisors</c>, <c>canines</c>, <c>premolars</c>, <c>molars</c> or <c>all</c>, of
/// both arches, or of one with <c>upper</c> or <c>lower</c> before it (<c>upper</c> alone is the whole arch).</summary>
internal static class ToothGroups
{
    private static readonly string[] Kinds = ["incisors", "canines", "premolars", "molars"];

    /// <summary>All names, for messages.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        "all", "upper", "lower", .. Kinds,
        .. Kinds.Select(kind => "upper " + kind),
        .. Kinds.Select(kind => "lower " + kind),
    ];

    /// <summary>The teeth of a group; null when there is no such group.</summary>
    public static IReadOnlyList<ToothNumber>? Teeth(string name)
    {
        string[] words = name.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length is 0 or > 2)
            return null;

        IReadOnlyList<ToothNumber>? arch = words[0] switch
        {
            "upper" => ToothNumber.UpperArch,
            "lower" => ToothNumber.LowerArch,
            _ => null,
        };
        if (words.Length == 2)
            return arch is null ? null : OfKind(arch, words[1]);

        IReadOnlyList<ToothNumber> both = [.. ToothNumber.UpperArch, .. ToothNumber.LowerArch];
        return arch ?? (words[0] == "all" ? both : OfKind(both, words[0]));
    }

    private static List<ToothNumber>? OfKind(IReadOnlyList<ToothNumber> teeth, string kind) =>
        Kinds.Contains(kind, StringComparer.Ordinal) ? [.. teeth.Where(tooth => KindOf(tooth) == kind)] : null;

    private static string KindOf(ToothNumber tooth) => tooth.Position switch
    {
        1 or 2 => "incisors",
        3 => "canines",
        4 or 5 => "premolars",
        _ => "molars",
    };
}
