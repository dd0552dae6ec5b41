using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Ties;
using Archwright.Mechanics.Slots;

namespace Archwright.Cli.Arches;

/// <summary>Notes about single teeth as they are typed: <c>13:occlusal=-2,rotation=20</c>, <c>13:high 2 mm</c> and
/// <c>13:none</c>.</summary>
internal static class ToothNote
{
    private const double LargestShift = 15;
    private const double LargestTurn = 90;

    private static readonly string[] Shifts = ["labial", "occlusal", "mesial"];
    private static readonly string[] Turns = ["rotation", "tip", "torque"];

    private static readonly (string Word, TieKind Kind)[] Ties =
    [
        ("closed", TieKind.Closed), ("steel", TieKind.Steel), ("elastic", TieKind.Elastic), ("spring", TieKind.Spring),
        ("partial", TieKind.Partial), ("none", TieKind.None),
    ];

    /// <summary>Words of the ties.</summary>
    public static string TieWords => string.Join(", ", Ties.Select(tie => tie.Word));

    /// <summary>Reads how a tooth is off.</summary>
    /// <param name="typed">As 13:occlusal=-2,rotation=20 [mm, degrees], or in words as 13:high 2 mm.</param>
    /// <returns>The tooth, its offset, and what had to be assumed; null when nothing had.</returns>
    /// <exception cref="Refusal">It cannot be read; exit 2.</exception>
    public static (ToothNumber Tooth, ClinicalOffset Offset, string? Assumed) Position(string typed)
    {
        string[] parts = typed.Split(':');
        if (parts.Length != 2)
            throw Unreadable(typed, "There is no tooth with a colon in front.");

        ToothNumber tooth = Tooth(typed, parts[0]);
        return parts[1].Contains('=', StringComparison.Ordinal)
            ? (tooth, InFigures(typed, parts[1]), null)
            : InWords(typed, tooth, parts[1]);
    }

    private static (ToothNumber Tooth, ClinicalOffset Offset, string? Assumed) InWords(
        string typed, ToothNumber tooth, string words)
    {
        try
        {
            ChairNote note = ChairNote.Read(tooth, words);
            return (tooth, note.Offset, note.Assumed);
        }
        catch (FormatException fault)
        {
            throw Unreadable(typed, fault.Message);
        }
    }

    private static ClinicalOffset InFigures(string typed, string words)
    {
        var given = new Dictionary<string, double>(StringComparer.OrdinalIgnoreCase);
        foreach (string pair in words.Split(','))
        {
            (string word, double figure) = Pair(typed, pair);
            if (!given.TryAdd(word, figure))
                throw Unreadable(typed, $"'{word}' is given twice.");
        }

        return ClinicalOffset.FromDegrees(
            Of("labial"), Of("occlusal"), Of("mesial"), Of("rotation"), Of("tip"), Of("torque"));

        double Of(string word) => given.GetValueOrDefault(word);
    }

    /// <summary>Reads a tie: <c>elastic</c> for all teeth, <c>13:none</c> for one.</summary>
    /// <exception cref="Refusal">It cannot be read; exit 2.</exception>
    public static (ToothNumber? Tooth, Tie Tie) TieOf(string typed)
    {
        string[] parts = typed.Split(':');
        string word = parts[^1];
        if (parts.Length > 2 || !TryTie(word, out Tie? tie))
        {
            throw new Refusal($"--tie '{typed}' cannot be read.",
                $"Write one of {TieWords} for all teeth, or 13:{Ties[^1].Word} for one. "
                + Nearest.Sentence(word, Ties.Select(known => known.Word)));
        }

        return (parts.Length == 2 ? Tooth($"--tie {typed}", parts[0]) : null, tie);
    }

    /// <summary>Reads a list of teeth.</summary>
    /// <exception cref="Refusal">It cannot be read; exit 2.</exception>
    public static ImmutableHashSet<ToothNumber> Teeth(string option, string typed) =>
        [.. typed.Split(',').Select(one => Tooth($"{option} {typed}", one.Trim()))];

    private static (string Word, double Figure) Pair(string typed, string pair)
    {
        string[] sides = pair.Split('=');
        string word = sides[0].Trim().ToLowerInvariant();
        bool isTurn = Turns.Contains(word);
        if (sides.Length != 2 || !(isTurn || Shifts.Contains(word)))
        {
            throw Unreadable(typed, $"'{pair}' is not a word with a figure. "
                + Nearest.Sentence(word, [.. Shifts, .. Turns]));
        }

        double most = isTurn ? LargestTurn : LargestShift;
        if (!NumberOption.TryRead(sides[1].Trim(), out double figure) || Math.Abs(figure) > most)
        {
            throw Unreadable(typed, $"{word} is a number from {-most:0} to {most:0} {(isTurn ? "degrees" : "mm")}, "
                + $"not '{sides[1]}'.");
        }

        return (word, figure);
    }

    private static bool TryTie(string word, [NotNullWhen(true)] out Tie? tie)
    {
        tie = null;
        foreach ((string known, TieKind kind) in Ties)
        {
            if (!string.Equals(known, word, StringComparison.OrdinalIgnoreCase))
                continue;

            TieDefault figures = TieDefaults.Of(kind);
            tie = kind switch
            {
                TieKind.None => Tie.None,
                TieKind.Closed => Tie.Closed(figures.Holds),
                TieKind.Partial => Tie.Partial(figures.Reach, figures.Holds),
                _ => Tie.Seating(kind, figures.SeatingForce, figures.Stiffness, figures.Holds),
            };
            return true;
        }

        return false;
    }

    private static ToothNumber Tooth(string typed, string number) => ToothNumber.TryParse(number, out ToothNumber tooth)
        ? tooth
        : throw new Refusal($"'{number}' in '{typed}' is no tooth.",
            "Teeth are named by ISO 3950 numbers: 13 is the upper right canine.");

    private static Refusal Unreadable(string typed, string why) => new(
        $"--tooth '{typed}' cannot be read. {why}",
        "As in: --tooth \"13:high 2 mm, rotated 20° mesial out\", or --tooth 13:occlusal=-2,rotation=20 with the "
        + $"words {string.Join(", ", Shifts)} in mm and {string.Join(", ", Turns)} in degrees.");
}
