using System.Text.RegularExpressions;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Ladders;
using Archwright.Practice.People;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Treatment.Ladders;

namespace Archwright.Web.Words;

/// <summary>Words of the trade for what the record holds.</summary>
public static class Say
{
    /// <summary>A wire in words, or the practice's own name where the catalogue has none.</summary>
    public static string Wire(string? id) => string.IsNullOrEmpty(id) ? "no wire"
        : WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? wire.Title : OwnWire(id);

    // A practice names a form of its own after the wire it is made of: "niti-016x022-reverse".
    private static string OwnWire(string id)
    {
        int end = id.LastIndexOf('-');
        return end > 0 && end < id.Length - 1 && WireCatalogue.Default.TryFind(id[..end], out CatalogueWire? wire)
            ? $"{wire.Title}, {id[(end + 1)..]}" : id;
    }

    /// <summary>A sentence of the advice with its wires in words: the record keeps them by their ids.</summary>
    public static string Sentence(string sentence) => WireIds.Replace(sentence, found =>
        found.Index == 0 ? Capital(Wire(found.Value)) : Wire(found.Value));

    // The longest first, so that no id is taken for the beginning of another.
    private static readonly Regex WireIds = new(
        $@"(?<![\w-])(?:{string.Join('|', WireCatalogue.Default.Wires.Select(wire => wire.Id)
            .OrderByDescending(id => id.Length).Select(Regex.Escape))})(?![\w-])",
        RegexOptions.CultureInvariant | RegexOptions.Compiled);

    /// <summary>A tooth, never by its bare number: "upper right canine (13, ISO)".</summary>
    public static string Tooth(ToothNumber tooth, ToothNotation notation) =>
        $"{tooth.Name} ({tooth.Show(notation)}, {Notation(notation)})";

    /// <summary>A notation in a word.</summary>
    public static string Notation(ToothNotation notation) => notation switch
    {
        ToothNotation.Iso => "ISO",
        ToothNotation.Universal => "Universal",
        _ => "Palmer",
    };

    /// <summary>Upper or lower arch.</summary>
    public static string Arch(Jaw jaw) => jaw == Jaw.Upper ? "Upper arch" : "Lower arch";

    /// <summary>Why somebody comes.</summary>
    public static string Kind(VisitKind kind) => kind switch
    {
        VisitKind.Bonding => "bonding",
        VisitKind.Adjustment => "adjustment",
        VisitKind.Emergency => "emergency",
        VisitKind.Review => "review",
        _ => "debonding",
    };

    /// <summary>How a wire fares.</summary>
    public static string Fitness(WireFitness fitness) => fitness switch
    {
        WireFitness.Fits => "fits",
        WireFitness.TooStrong => "too strong",
        WireFitness.Bends => "stays bent",
        WireFitness.CannotGoIn => "does not go in",
        WireFitness.NotNow => "not now",
        _ => "against an alert",
    };

    /// <summary>A mark beside the word, so that nothing hangs on colour.</summary>
    public static string Mark(WireFitness fitness) => fitness switch
    {
        WireFitness.Fits => "✓",
        WireFitness.TooStrong => "▲",
        WireFitness.Bends => "∿",
        WireFitness.CannotGoIn => "✕",
        WireFitness.NotNow => "–",
        _ => "!",
    };

    /// <summary>What an advice amounts to, in a sentence.</summary>
    public static string Advice(Recommendation advice) => advice.Kind switch
    {
        AdviceKind.Keep => "Advice: keep the wire.",
        AdviceKind.StepUp when advice.Inputs is { PresentWire: "", PresentIsKnown: true } =>
            $"Advice: {Wire(advice.WireId)} as the first wire.",
        AdviceKind.StepUp => $"Advice: step up to {Wire(advice.WireId)}.",
        AdviceKind.StepDown => $"Advice: step down to {Wire(advice.WireId)}.",
        AdviceKind.LookFirst => "Advice: look first; no wire is put forward.",
        _ => $"First in rank today: {Wire(advice.WireId)}.",
    };

    /// <summary>What a sequence of wires is good for: "Fewest visits and fastest".</summary>
    public static string Kinds(IReadOnlyList<LadderKind> kinds) =>
        Capital(Joined([.. kinds.Select(kind => kind.Name())]));

    /// <summary>What has changed since a ladder was computed, in a clause.</summary>
    public static string Change(LadderChange change) => change switch
    {
        LadderChange.Positions => "teeth were seen again",
        LadderChange.Wire => "another wire is in place",
        LadderChange.Appliance => "the appliance or its working wire has changed",
        LadderChange.Ties => "ties or ends have changed",
        LadderChange.Patient => "alerts, age or discomfort have changed",
        LadderChange.Stock => "the practice keeps other wires",
        LadderChange.Policy => "the policy has changed",
        _ => "the program has changed",
    };

    private static string Capital(string words) =>
        words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    /// <summary>"a, b and c".</summary>
    public static string Joined(IReadOnlyList<string> words) =>
        words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words.SkipLast(1))} and {words[^1]}";

    /// <summary>A tie.</summary>
    public static string Tie(TieKind tie) => tie switch
    {
        TieKind.Closed => "closed lid",
        TieKind.Steel => "steel ligature",
        TieKind.Elastic => "elastic tie",
        TieKind.Spring => "spring clip",
        TieKind.Partial => "tied at a distance",
        _ => "not tied",
    };

    /// <summary>An end of a wire.</summary>
    public static string End(WireEnds end) => end switch
    {
        WireEnds.Free => "free",
        WireEnds.Stopped => "stopped",
        _ => "cinched",
    };

    /// <summary>How positions came to be known.</summary>
    public static string From(PositionsFrom from) => from switch
    {
        PositionsFrom.Measured => "measured",
        PositionsFrom.Contacts => "from five contacts",
        PositionsFrom.AsForecast => "as forecast",
        _ => "as last seen",
    };

    /// <summary>A place without a bracket.</summary>
    public static string Bare(BareTooth bare) => bare == BareTooth.NotBonded ? "not bonded" : "absent";

    /// <summary>The places noted without a bracket: "Not bonded: upper right canine (13)."; empty for none.</summary>
    public static string Bare(ToothMap<BareTooth>? bare, ToothNotation notation) => bare is null ? "" : string.Join(
        ' ',
        bare.GroupBy(pair => pair.Value).OrderBy(group => group.Key).Select(group =>
            $"{Capital(Bare(group.Key))}: {Joined([.. group.Select(pair => Tooth(pair.Key, notation))])}."));

    /// <summary>A nominal slot.</summary>
    public static string Slot(string code) => code switch
    {
        "018" => "0.018 in",
        "022" => "0.022 in",
        _ => code,
    };

    /// <summary>A prescription by the names of those who published it.</summary>
    public static string Prescription(string id) => string.Join(
        ' ', id.Split('-').Select(word => word.Length > 0 ? char.ToUpperInvariant(word[0]) + word[1..] : word));

    /// <summary>A decision.</summary>
    public static string Decided(Decision? decision) => decision switch
    {
        null => "not decided",
        { Act: WireAct.Keep } => $"kept {Wire(decision.WireId)}",
        { Act: WireAct.Fit } => $"fitted {Wire(decision.WireId)}",
        _ => "left without a wire",
    };

    /// <summary>Name and age, as they stand on every screen of a patient.</summary>
    public static string Who(Patient patient, DateOnly day) => $"{patient.FullName}, {patient.AgeOn(day)}";
}
