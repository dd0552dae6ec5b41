using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Practice.Bench;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Values;

namespace Archwright.Practice.Answers;

/// <summary>A wire bent for the picture of the answers.</summary>
/// <param name="Letter">"A" or "B".</param>
/// <param name="Wire">The wire.</param>
/// <param name="IsTheirs">True for the wire that the patient has now.</param>
/// <param name="Bend">Its curve there and back [mm, N].</param>
/// <param name="Set">What stays bent [mm]; null where it was not computed.</param>
public sealed record AnswerWire(string Letter, CatalogueWire Wire, bool IsTheirs, BenchCurve Bend, double? Set);

/// <summary>The questions that patients ask about their wires, answered in plain words, to be shown or printed by the
/// practice. It names no medicine and no dose, and defers to the team.</summary>
public sealed record AnswerSheet
{
    /// <summary>Key of the section that the picture stands in.</summary>
    public const string PictureSection = "answers.metal";

    // 1 gram-force is 9.80665 mN by definition.
    private const double NewtonsOfGram = 0.00980665;

    // Where on the way back the push is told: a tooth that is nearly in line [mm].
    private const double NearTheEnd = 1;

    private const double NextToNothing = 0.5;

    /// <summary>Code of its language.</summary>
    public required string Language { get; init; }

    /// <summary>True when it is written from right to left.</summary>
    public required bool IsRightToLeft { get; init; }

    /// <summary>That a speaker has yet to review the texts; empty where that is done.</summary>
    public required string ReviewNote { get; init; }

    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>What it is and is not.</summary>
    public required string Intro { get; init; }

    /// <summary>Questions and answers.</summary>
    public required Listing<LeafletSection> Sections { get; init; }

    /// <summary>What the picture shows, sentence by sentence.</summary>
    public required Listing<string> PictureWords { get; init; }

    /// <summary>Words along and up the picture.</summary>
    public required (string Along, string Up) Axes { get; init; }

    /// <summary>That it does not take the place of what the team says.</summary>
    public required string Foot { get; init; }

    /// <summary>Everything it says, in order.</summary>
    public IEnumerable<string> AllLines() =>
    [
        Title, Intro, .. Sections.SelectMany(section => section.Lines.Prepend(section.Heading)), .. PictureWords, Foot,
    ];

    /// <summary>Writes the answers.</summary>
    /// <param name="texts">In which words.</param>
    /// <param name="practice">Name of the practice, for the foot.</param>
    /// <param name="wires">The two wires of the picture; empty while it is not computed.</param>
    public static AnswerSheet Write(LeafletTexts texts, string practice, IReadOnlyList<AnswerWire> wires) => new()
    {
        Language = texts.Code,
        IsRightToLeft = texts.IsRightToLeft,
        ReviewNote = texts.ReviewNote,
        Title = texts["answers"],
        Intro = texts["answers.intro"],
        Sections = Listing<LeafletSection>.Of(
        [
            Section(texts, "answers.this"), Section(texts, "answers.kept"), Section(texts, PictureSection),
            Section(texts, "answers.thicker"), Section(texts, "answers.hurt", texts["feel.relief"]),
            Section(texts, "answers.pokes"),
        ]),
        PictureWords = Listing<string>.Of(Picture(texts, wires)),
        Axes = (texts["answers.picture.along"], texts["answers.picture.up"]),
        Foot = texts["answers.foot"].Replace("{practice}", practice, StringComparison.Ordinal),
    };

    /// <summary>A force as the weight that pushes alike [g].</summary>
    /// <param name="newtons">[N]</param>
    public static double Grams(double newtons) => newtons / NewtonsOfGram;

    private static LeafletSection Section(LeafletTexts texts, string key, params string[] more) =>
        new(key, texts[key], Listing<string>.Of([texts[key + ".text"], .. more]));

    private static IEnumerable<string> Picture(LeafletTexts texts, IReadOnlyList<AnswerWire> wires)
    {
        if (wires.Count == 0)
            yield break;

        if (wires.Any(wire => !wire.Bend.IsThere))
        {
            yield return texts["answers.picture.none"];
            yield break;
        }

        yield return Fill(texts["answers.picture"], "bend", BenchTests.Top, "0.#");
        foreach (AnswerWire wire in wires)
        {
            double grams = Grams(wire.Bend.At(NearTheEnd, back: true) ?? 0);
            string words = grams > NextToNothing
                ? Fill(texts["answers.picture.pushes"], "grams", grams, "0")
                : Fill(texts["answers.picture.spent"], "left", wire.Set ?? 0, "0.0");
            yield return words.Replace("{letter}", wire.Letter, StringComparison.Ordinal)
                .Replace("{wire}", LeafletWriter.WireWords(texts, wire.Wire), StringComparison.Ordinal);
            if (wire.IsTheirs)
                yield return texts["answers.picture.yours"].Replace("{letter}", wire.Letter, StringComparison.Ordinal);
        }
    }

    private static string Fill(string text, string place, double value, string format) => text.Replace(
        $"{{{place}}}", value.ToString(format, CultureInfo.InvariantCulture), StringComparison.Ordinal);
}
