using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Practice.Bench;
using Archwright.Practice.Values;
using Archwright.Web.Words;

namespace Archwright.Web.Bench;

/// <summary>What is asked of the bench: which wires, and what is the same for all. The address of the page holds all of
/// it, so that a comparison is shared by its address.</summary>
public sealed record BenchQuestion
{
    /// <summary>Fewest and most wires side by side.</summary>
    public const int FewestWires = 2, MostWires = 4;

    /// <summary>Most that a tie presses with [N]: more than a steel ligature does.</summary>
    public const double MostTie = 5;

    // What somebody typed is repeated up to here.
    private const int MostRepeated = 24;

    private static readonly string[] UsualWires = ["niti-016", "ss-016"];

    private static readonly string[] FurtherWires = ["bti-016", "ms-0175", "haniti-016", "ss-018"];

    /// <summary>Ids of the wires, in order.</summary>
    public required Listing<string> Wires { get; init; }

    /// <summary>Temperature of all wires [°C].</summary>
    public int Temperature { get; init; } = 36;

    /// <summary>"018" or "022".</summary>
    public string Slot { get; init; } = "022";

    /// <summary>Force with which the tie presses the wire into the slot [N].</summary>
    public double Tie { get; init; } = 1;

    /// <summary>Slides in saliva, or dry.</summary>
    public bool IsWet { get; init; } = true;

    /// <summary>What is asked where nothing is said.</summary>
    public static BenchQuestion Usual { get; } = new() { Wires = Listing<string>.Of(UsualWires) };

    /// <summary>The wires as the catalogue has them.</summary>
    public IReadOnlyList<CatalogueWire> Found =>
        [.. Wires.Select(id => WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? wire : null)
            .OfType<CatalogueWire>()];

    /// <summary>Reads an address. Whatever it says wrongly is told, and the usual taken in its place.</summary>
    /// <param name="wires">Ids, with commas between.</param>
    /// <param name="temperature">[°C]</param>
    /// <param name="slot">"018" or "022".</param>
    /// <param name="tie">[N]</param>
    /// <param name="state">"wet" or "dry".</param>
    public static (BenchQuestion Question, IReadOnlyList<string> Problems) Read(
        string? wires, string? temperature, string? slot, string? tie, string? state)
    {
        var problems = new List<string>();
        return (
            new BenchQuestion
            {
                Wires = Listing<string>.Of(ReadWires(wires, problems)),
                Temperature = (int)ReadNumber(
                    temperature, Usual.Temperature, BenchTests.Coldest, BenchTests.Warmest, isWhole: true,
                    "temperature", "°C", problems),
                Slot = ReadWord(slot, ["022", "018"], "slot", problems),
                Tie = ReadNumber(tie, Usual.Tie, 0, MostTie, isWhole: false, "tie", "N", problems),
                IsWet = ReadWord(state, ["wet", "dry"], "state", problems) == "wet",
            },
            problems);
    }

    /// <summary>The address of the page that asks this.</summary>
    public string Address => FormattableString.Invariant(
        $"/bench?wires={string.Join(',', Wires)}&temperature={Temperature}&slot={Slot}&tie={Tie:0.##}&state={State}");

    /// <summary>"wet" or "dry".</summary>
    public string State => IsWet ? "wet" : "dry";

    /// <summary>The same with one wire more, one that is not there yet.</summary>
    public BenchQuestion WithOneMore() => this with
    {
        Wires = Wires.With(FurtherWires.First(id => !Wires.Contains(id, StringComparer.Ordinal))),
    };

    /// <summary>The same with another wire at a place.</summary>
    public BenchQuestion With(int place, string id) => this with
    {
        Wires = Listing<string>.Of(Wires.Select((wire, i) => i == place ? id : wire)),
    };

    /// <summary>The same without the wire at a place.</summary>
    public BenchQuestion Without(int place) => this with
    {
        Wires = Listing<string>.Of(Wires.Where((_, i) => i != place)),
    };

    private static IEnumerable<string> ReadWires(string? text, List<string> problems)
    {
        if (string.IsNullOrWhiteSpace(text))
            return UsualWires;

        var found = new List<string>();
        string[] asked = text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        foreach (string id in asked.Take(2 * MostWires))
        {
            if (!WireCatalogue.Default.TryFind(id, out CatalogueWire? wire))
                problems.Add($"The catalogue has no wire '{Repeat(id)}'. It is left out.");
            else if (!found.Contains(wire.Id, StringComparer.Ordinal))
                found.Add(wire.Id);
        }

        if (asked.Length > MostWires)
            problems.Add($"{MostWires} wires are compared at most; the first of them are shown.");
        else if (found.Count < FewestWires)
            problems.Add($"{FewestWires} wires are compared at least; a usual one is added.");
        return found.Concat(UsualWires.Concat(FurtherWires)
                .Where(id => !found.Contains(id, StringComparer.Ordinal))
                .Take(Math.Max(0, FewestWires - found.Count)))
            .Take(MostWires);
    }

    private static double ReadNumber(
        string? text, double usual, double least, double most, bool isWhole, string what, string unit,
        List<string> problems)
    {
        if (string.IsNullOrWhiteSpace(text))
            return usual;

        NumberStyles style = isWhole ? NumberStyles.AllowLeadingSign : NumberStyles.Float;
        if (double.TryParse(text, style, CultureInfo.InvariantCulture, out double value)
            && value >= least && value <= most)
        {
            return value;
        }

        problems.Add($"The {what} '{Repeat(text)}' is not between {Figures.Plain(least)} and {Figures.Plain(most)} "
            + $"{unit}. {Figures.Plain(usual)} {unit} is taken.");
        return usual;
    }

    private static string ReadWord(string? text, string[] words, string what, List<string> problems)
    {
        if (string.IsNullOrWhiteSpace(text))
            return words[0];
        if (words.Contains(text, StringComparer.Ordinal))
            return text;

        problems.Add($"The {what} '{Repeat(text)}' is neither {words[0]} nor {words[1]}. {words[0]} is taken.");
        return words[0];
    }

    private static string Repeat(string text) => text.Length > MostRepeated ? text[..MostRepeated] + "…" : text;
}
