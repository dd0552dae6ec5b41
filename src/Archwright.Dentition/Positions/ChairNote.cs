using System.Globalization;
using System.Text.RegularExpressions;
using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Positions;

/// <summary>Where a tooth stands, said as at the chair: "high 2 mm", "rotated 20° mesial out".</summary>
/// <remarks>
/// One finding is a number with its unit and words beside it, in any order; findings are parted by commas,
/// semicolons or "and". High is toward the nose and low toward the chin, in both jaws. Rotated and tipped want a
/// direction; "rotated 20°" alone is read as mesial side out, and <see cref="Assumed"/> says so. All else
/// that could mean two things is refused.
/// </remarks>
/// <param name="Offset">Against the planned place.</param>
/// <param name="Assumed">What had to be assumed, in a sentence; null when nothing had.</param>
public sealed partial record ChairNote(ClinicalOffset Offset, string? Assumed)
{
    private const double LargestShift = 15;
    private const double LargestTurn = 90;

    private enum Part
    {
        Labial,
        Occlusal,
        Mesial,
        Rotation,
        Tip,
        Torque,
    }

    // Words of a finding after those that carry no meaning are taken out, and which part it is, with its sign.
    private static readonly Dictionary<string, (Part Part, int Sign)> Known = new(StringComparer.Ordinal)
    {
        ["labial"] = (Part.Labial, 1), ["buccal"] = (Part.Labial, 1), ["out"] = (Part.Labial, 1),
        ["lingual"] = (Part.Labial, -1), ["palatal"] = (Part.Labial, -1), ["in"] = (Part.Labial, -1),
        ["extruded"] = (Part.Occlusal, 1), ["intruded"] = (Part.Occlusal, -1),
        ["occlusal"] = (Part.Occlusal, 1), ["gingival"] = (Part.Occlusal, -1),
        ["mesial"] = (Part.Mesial, 1), ["distal"] = (Part.Mesial, -1),
        ["rotated"] = (Part.Rotation, 1),
        ["rotated mesial out"] = (Part.Rotation, 1), ["rotated distal in"] = (Part.Rotation, 1),
        ["rotated mesial in"] = (Part.Rotation, -1), ["rotated distal out"] = (Part.Rotation, -1),
        ["tipped mesial"] = (Part.Tip, 1), ["tipped distal"] = (Part.Tip, -1),
        ["tipped out"] = (Part.Torque, 1), ["tipped labial"] = (Part.Torque, 1), ["tipped buccal"] = (Part.Torque, 1),
        ["proclined"] = (Part.Torque, 1), ["retroclined"] = (Part.Torque, -1),
        ["tipped in"] = (Part.Torque, -1), ["tipped lingual"] = (Part.Torque, -1),
        ["tipped palatal"] = (Part.Torque, -1),
    };

    private static readonly Dictionary<string, string> SameAs = new(StringComparer.Ordinal)
    {
        ["labially"] = "labial", ["buccally"] = "buccal", ["lingually"] = "lingual", ["palatally"] = "palatal",
        ["mesially"] = "mesial", ["distally"] = "distal", ["occlusally"] = "occlusal", ["gingivally"] = "gingival",
        ["outward"] = "out", ["outwards"] = "out", ["inward"] = "in", ["inwards"] = "in", ["turned"] = "rotated",
        ["inclined"] = "tipped", ["leaning"] = "tipped", ["infraoccluded"] = "intruded",
        ["supraoccluded"] = "extruded",
    };

    private static readonly string[] Idle = ["by", "too", "is", "the", "side", "crown", "stands", "with", "to"];

    /// <summary>Reads findings of one tooth.</summary>
    /// <param name="tooth">Which; high and low mean opposite ways in the two jaws.</param>
    /// <param name="words">As "high 2 mm, rotated 20° mesial out".</param>
    /// <exception cref="FormatException">It cannot be understood, or could mean two things; the message says how to
    /// write it.</exception>
    public static ChairNote Read(ToothNumber tooth, string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var sums = new double?[6];
        string? assumed = null;
        foreach (string finding in Parting().Split(words))
        {
            (Part part, double figure) = Finding(tooth, finding.Trim(), ref assumed);
            if (sums[(int)part] is not null)
                throw new FormatException($"'{finding.Trim()}' speaks of {Name(part)} a second time.");
            sums[(int)part] = figure;
        }

        double Of(Part part) => sums[(int)part] ?? 0;
        return new ChairNote(
            ClinicalOffset.FromDegrees(
                Of(Part.Labial), Of(Part.Occlusal), Of(Part.Mesial),
                Of(Part.Rotation), Of(Part.Tip), Of(Part.Torque)),
            assumed);
    }

    private static (Part Part, double Figure) Finding(ToothNumber tooth, string finding, ref string? assumed)
    {
        Match number = Figure().Match(finding);
        if (!number.Success)
        {
            throw new FormatException(
                $"'{finding}' has no figure with its unit. Write mm or ° behind the number, as in \"high 2 mm\" or "
                + "\"rotated 20° mesial out\".");
        }

        double figure = double.Parse(number.Groups["figure"].Value, CultureInfo.InvariantCulture);
        bool isTurn = !number.Groups["unit"].Value.Equals("mm", StringComparison.OrdinalIgnoreCase);
        (Part part, int sign) = Meaning(tooth, finding.Remove(number.Index, number.Length), finding);
        if (isTurn != (part is Part.Rotation or Part.Tip or Part.Torque))
        {
            throw new FormatException(
                $"'{finding}' gives {Name(part)} in {(isTurn ? "degrees" : "mm")}; "
                + $"it is measured in {(isTurn ? "mm" : "degrees")}.");
        }

        double most = isTurn ? LargestTurn : LargestShift;
        if (figure > most)
            throw new FormatException($"'{finding}' is beyond {most:0} {(isTurn ? "degrees" : "mm")}.");
        if (part == Part.Rotation && !finding.Contains("mesial", StringComparison.OrdinalIgnoreCase)
            && !finding.Contains("distal", StringComparison.OrdinalIgnoreCase))
        {
            assumed = $"{tooth}: '{finding}' is read with the mesial side turned out. For the other way write "
                + "\"mesial in\" behind it.";
        }

        return (part, sign * figure);
    }

    private static (Part Part, int Sign) Meaning(ToothNumber tooth, string rest, string finding)
    {
        string[] said =
        [
            .. rest.ToLowerInvariant().Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries)
                .Where(word => !Idle.Contains(word)).Select(word => SameAs.GetValueOrDefault(word, word))
                .OrderBy(word => word is "rotated" or "tipped" ? 0 : 1),
        ];
        string plain = string.Join(' ', said);
        int up = tooth.IsUpper ? -1 : 1;
        return plain switch
        {
            "high" => (Part.Occlusal, up),
            "low" => (Part.Occlusal, -up),
            "tipped" => throw new FormatException(
                $"'{finding}' does not say which way: tipped mesially, distally, out or in?"),
            "up" or "down" or "forward" or "back" => throw new FormatException(
                $"'{finding}' could mean two things. Write high, low, out, in, mesial or distal."),
            _ => Known.TryGetValue(plain, out (Part, int) meaning)
                ? meaning
                : throw new FormatException(
                    $"'{finding}' is not understood. Words: high, low, out, in, mesial, distal, extruded, intruded in "
                    + "mm; rotated … mesial out (or in), tipped … mesially (distally, out, in), proclined, "
                    + "retroclined in degrees."),
        };
    }

    private static string Name(Part part) => part switch
    {
        Part.Labial => "the shift to lip or tongue",
        Part.Occlusal => "the height",
        Part.Mesial => "the shift along the arch",
        Part.Rotation => "the rotation",
        Part.Tip => "the tip",
        _ => "the torque",
    };

    [GeneratedRegex(@"\s*(?:[,;]|\band\b)\s*", RegexOptions.IgnoreCase)]
    private static partial Regex Parting();

    // A figure counts one way only: minus would turn the word round.
    [GeneratedRegex(
        @"(?<![-\d.])(?<figure>\d+(?:\.\d+)?)\s*(?<unit>mm|°|deg(?:rees?)?)(?![a-z])", RegexOptions.IgnoreCase)]
    private static partial Regex Figure();
}
