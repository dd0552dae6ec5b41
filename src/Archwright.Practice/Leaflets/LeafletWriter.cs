using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Sections;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Leaflets;

/// <summary>Writes the leaflet of a visit from what was decided there. The facts and their sources stand in
/// docs/guide/leaflet.md.</summary>
public sealed class LeafletWriter
{
    private const int DaysOfAWeek = 7;

    private readonly LeafletTexts texts;
    private readonly IReadOnlyList<ArchTold> arches;
    private readonly Visit visit;

    private LeafletWriter(Visit visit, LeafletTexts texts)
    {
        this.visit = visit;
        this.texts = texts;
        arches =
        [
            .. Enum.GetValues<Jaw>().Select(jaw => (Jaw: jaw, Arch: visit.Content.Arch(jaw)))
                .Where(one => one.Arch is not null && WireChanges.Of(one.Arch) is not null)
                .Select(one => ArchTold.Of(one.Jaw, one.Arch!)), // not null: see the line above
        ];
    }

    /// <summary>The leaflet of a visit.</summary>
    /// <param name="visit">A visit with a decision for an arch at least.</param>
    /// <param name="texts">In which words.</param>
    /// <param name="practice">Name of the practice, for the foot.</param>
    /// <param name="ownWords">What the clinician adds for this patient; may be empty.</param>
    /// <returns>Null when nothing has been decided yet.</returns>
    public static Leaflet? Write(Visit visit, LeafletTexts texts, string practice, string ownWords = "")
    {
        var writer = new LeafletWriter(visit, texts);
        return writer.arches.Count == 0 ? null : new Leaflet
        {
            Language = texts.Code,
            IsRightToLeft = texts.IsRightToLeft,
            ReviewNote = texts.ReviewNote,
            Title = texts["title"],
            Day = visit.Day,
            Sections = Listing<LeafletSection>.Of(writer.Sections(ownWords.Trim())),
            Foot = texts["foot"].Replace("{practice}", practice, StringComparison.Ordinal)
                .Replace("{date}", texts.Day(visit.Day), StringComparison.Ordinal),
        };
    }

    private IEnumerable<LeafletSection> Sections(string ownWords)
    {
        yield return Section("did", [.. arches.Select(Did), ownWords]);
        yield return Section("why", [.. Why()]);
        if (arches.Any(arch => arch.Wire is not null))
            yield return Section("does", [.. Does()]);
        if (arches.Any(arch => arch.Change != WireChange.None))
        {
            bool isNew = arches.Any(arch => arch.Change is not (WireChange.Kept or WireChange.None));
            yield return Section("feel", texts[isNew ? "feel.new" : "feel.kept"], texts["feel.relief"]);
        }

        yield return Section("eat", texts["eat.text"]);
        yield return Section("clean", texts["clean.text"]);
        yield return Section(
            "broken", texts["broken.wire"], texts["broken.brace"], texts["broken.tie"], texts["broken.sport"]);
        yield return Section("call", texts["call.us"], texts["call.emergency"]);
        if (Nickel() is { } nickel)
            yield return Section("nickel", texts[nickel]);
        yield return Section("next", visit.Content.NextInWeeks is { } weeks
            ? texts["next.on"].Replace(
                "{date}", texts.Day(visit.Day.AddDays(DaysOfAWeek * weeks)), StringComparison.Ordinal)
            : texts["next.open"]);
    }

    private LeafletSection Section(string key, params string[] lines) =>
        new(key, texts[key], Listing<string>.Of(lines.Where(line => line.Length > 0)));

    private string Did(ArchTold arch) => $"{Arch(arch.Jaw)}: " + texts["did." + Word(arch.Change)].Replace(
        "{wire}", Wire(arch), StringComparison.Ordinal);

    private string Wire(ArchTold arch) => arch.Wire is { } wire ? WireWords(texts, wire) : texts["wire.other"];

    /// <summary>A wire in plain words: "a round, springy wire, 0.41 mm thick".</summary>
    public static string WireWords(LeafletTexts texts, CatalogueWire wire)
    {
        string kind = Family(wire) + (wire.Section.IsRound ? ".round" : ".square");
        return texts["wire." + kind].Replace("{size}", Size(wire.Section), StringComparison.Ordinal);
    }

    // A reason that holds for both arches is said once.
    private IEnumerable<string> Why() => arches.Select(arch => arch.Change).Distinct().Count() == 1
        ? [texts["why." + Word(arches[0].Change)]]
        : arches.Select(arch => $"{Arch(arch.Jaw)}: {texts["why." + Word(arch.Change)]}");

    private IEnumerable<string> Does()
    {
        CatalogueWire[] wires = [.. arches.Select(arch => arch.Wire).OfType<CatalogueWire>()];
        if (wires.Any(wire => wire.Section.IsRound))
            yield return texts["does.thin"];
        if (wires.Any(wire => !wire.Section.IsRound))
            yield return texts["does.thick"];
        if (wires.Any(MayGrow))
            yield return texts["does.later"];
        if (wires.Any(wire => HeatActivated.Contains(wire.Alloy.Id, StringComparer.Ordinal)))
            yield return texts["does.heat"];
    }

    // Thickest wires of the trade end the ladder: nothing is promised after them. 0.48 mm is 0.019 in.
    private static bool MayGrow(CatalogueWire wire) => wire.Section.IsRound || wire.Section.Thickness < 0.48;

    private string? Nickel()
    {
        CatalogueWire[] wires = [.. arches.Select(arch => arch.Wire).OfType<CatalogueWire>()];
        return wires.Length == 0 ? null
            : wires.Any(wire => wire.Alloy.ContainsNickel && Family(wire) != "steel") ? "nickel.much"
            : wires.Any(wire => wire.Alloy.ContainsNickel) ? "nickel.bound"
            : "nickel.none";
    }

    private string Arch(Jaw jaw) => texts[jaw == Jaw.Upper ? "upper" : "lower"];

    private static readonly string[] HeatActivated = ["haniti", "cuniti27", "cuniti35", "cuniti40"];

    private static string Family(CatalogueWire wire) => wire.Alloy.Id switch
    {
        "ss" or "ms" => "steel",
        "bti" => "titanium",
        "cc" => "plain",
        _ => "springy",
    };

    private static string Size(Section section) => section.IsRound
        ? Mm(section.Thickness)
        : $"{Mm(section.Thickness)} × {Mm(section.Width)}";

    private static string Mm(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Word(WireChange change) => change switch
    {
        WireChange.First => "first",
        WireChange.Kept => "kept",
        WireChange.Stronger => "stronger",
        WireChange.Lighter => "lighter",
        WireChange.Same => "same",
        WireChange.Other => "other",
        _ => "none",
    };

    private sealed record ArchTold(Jaw Jaw, WireChange Change, CatalogueWire? Wire)
    {
        public static ArchTold Of(Jaw jaw, ArchVisit arch)
        {
            WireCatalogue.Default.TryFind(arch.Decided?.WireId ?? "", out CatalogueWire? wire);
            return new ArchTold(jaw, WireChanges.Of(arch) ?? WireChange.None, wire); // decided: the caller looks
        }
    }
}
