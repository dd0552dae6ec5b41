using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Practice.People;
using Archwright.Practice.Values;

namespace Archwright.Practice.Advice;

/// <summary>What an advice amounts to.</summary>
public enum AdviceKind
{
    /// <summary>Wires are ranked by what they would do on the day; nothing is said of staying or changing. Stands in
    /// records of earlier versions of the program.</summary>
    Ranking,

    /// <summary>Keep the present wire.</summary>
    Keep,

    /// <summary>A stiffer or fuller wire.</summary>
    StepUp,

    /// <summary>A lighter wire.</summary>
    StepDown,

    /// <summary>The clinician should look before any wire is chosen.</summary>
    LookFirst,
}

/// <summary>How a wire fares.</summary>
public enum WireFitness
{
    /// <summary>Nothing speaks against it.</summary>
    Fits,

    /// <summary>It loads a tooth above the practice's ceiling.</summary>
    TooStrong,

    /// <summary>It would stay bent.</summary>
    Bends,

    /// <summary>It cannot be engaged.</summary>
    CannotGoIn,

    /// <summary>An alert of this patient speaks against it.</summary>
    AgainstAnAlert,

    /// <summary>Another rule speaks against it today: too far a step, discomfort, or it was not computed, since a
    /// thinner one of its alloy is ruled out or no answer was found.</summary>
    NotNow,
}

/// <summary>What the advice says of one wire.</summary>
/// <param name="WireId">Which.</param>
/// <param name="Fitness">How it fares.</param>
/// <param name="LargestForceN">Largest force on a tooth on tying in [N]; null when it cannot be engaged.</param>
/// <param name="LargestForceTooth">ISO number of that tooth; empty when it cannot be engaged.</param>
/// <param name="Sentence">What a clinician would say of it.</param>
public sealed record AdvisedWire(
    string WireId, WireFitness Fitness, double? LargestForceN, string LargestForceTooth, string Sentence)
{
    /// <summary>Largest force on a tooth once the ligament has given [N]; null where it is not known.</summary>
    public double? GivenForceN { get; init; }

    /// <summary>Why it is not the advised wire, in a sentence; empty where nothing is said.</summary>
    public string WhyNot { get; init; } = "";

    /// <summary>What was found of it, one sentence each; empty where nothing is said.</summary>
    public Listing<string> Findings { get; init; } = Listing<string>.Empty;

    /// <summary>True when it is as good as the first one as far as is known: a little more or less of what was
    /// measured would turn the order.</summary>
    public bool TiesWithFirst { get; init; }

    /// <summary>Index from 0 to 10 that rises with the forces on engagement; null where it is not given.</summary>
    public double? ComfortIndex { get; init; }
}

/// <summary>Weeks to the next visit, as advised.</summary>
/// <param name="LowWeeks">Earliest.</param>
/// <param name="UsualWeeks">Usual.</param>
/// <param name="HighWeeks">Latest.</param>
public sealed record AdvisedInterval(int LowWeeks, int UsualWeeks, int HighWeeks);

/// <summary>What an advice rests on. Two equal inputs get the same advice from the same program and policy.</summary>
public sealed record AdviceInputs
{
    /// <summary>Which arch.</summary>
    public required Jaw Jaw { get; init; }

    /// <summary>Nominal slot: "018" or "022".</summary>
    public required string SlotCode { get; init; }

    /// <summary>Teeth that carry a bracket.</summary>
    public required Listing<ToothNumber> Bonded { get; init; }

    /// <summary>Places noted to hold no bracket on the day. A tooth that is neither here nor among
    /// <see cref="Bonded"/> counts as not there.</summary>
    public ToothMap<BareTooth> Bare { get; init; } = ToothMap<BareTooth>.Empty;

    /// <summary>Positions; a tooth not named stands in its place.</summary>
    public required ToothMap<ToothOffset> Positions { get; init; }

    /// <summary>Tie of each bonded tooth.</summary>
    public required ToothMap<TieKind> Ties { get; init; }

    /// <summary>How the ends are held; where right and left differ, the freer of both.</summary>
    public WireEnds Ends { get; init; }

    /// <summary>Id of the wire in place; empty when there is none.</summary>
    public string PresentWire { get; init; } = "";

    /// <summary>Weeks it has been in place.</summary>
    public int PresentWeeks { get; init; }

    /// <summary>False where a wire may be in place and nobody noted which.</summary>
    public bool PresentIsKnown { get; init; } = true;

    /// <summary>Id of the wire that the arch is to work with in the end; empty where nobody said.</summary>
    public string WorkingWire { get; init; } = "";

    /// <summary>Worst discomfort after the last wire, 0 to 10; null when it was not asked.</summary>
    public int? Discomfort { get; init; }

    /// <summary>Age on the day [years]; null where nobody said.</summary>
    public int? AgeYears { get; init; }

    /// <summary>Ids of the wires to choose from.</summary>
    public required Listing<string> Stock { get; init; }

    /// <summary>Alerts of the patient.</summary>
    public required Listing<AlertKind> Alerts { get; init; }
}

/// <summary>An advice as it was given, kept with everything needed to judge it later.</summary>
public sealed record Recommendation
{
    /// <summary>What it amounts to.</summary>
    public required AdviceKind Kind { get; init; }

    /// <summary>Id of the wire advised; empty when none can be.</summary>
    public required string WireId { get; init; }

    /// <summary>The one sentence that says why; empty where nothing is said.</summary>
    public string Because { get; init; } = "";

    /// <summary>Where a ceiling keeps every wire out, or the next: what binds, and what might be considered, in
    /// sentences.</summary>
    public Listing<string> Considerations { get; init; } = Listing<string>.Empty;

    /// <summary>Weeks to the next visit; null where none are advised.</summary>
    public AdvisedInterval? Interval { get; init; }

    /// <summary>Teeth to be tied at a distance or passed by; the others are tied as usual.</summary>
    public Listing<ToothNumber> PartialTies { get; init; } = Listing<ToothNumber>.Empty;

    /// <summary>What was not said and matters, as questions.</summary>
    public Listing<string> Missing { get; init; } = Listing<string>.Empty;

    /// <summary>All wires looked at, best first.</summary>
    public required Listing<AdvisedWire> Options { get; init; }

    /// <summary>What the clinician should heed, in sentences.</summary>
    public required Listing<string> Cautions { get; init; }

    /// <summary>What it rests on.</summary>
    public required AdviceInputs Inputs { get; init; }

    /// <summary>Version of the rules and ceilings used.</summary>
    public required string PolicyVersion { get; init; }

    /// <summary>Version of the program.</summary>
    public required string ProgramVersion { get; init; }

    /// <summary>When it was given.</summary>
    public required DateTimeOffset GivenAt { get; init; }

    /// <summary>What it says of a wire; null when that wire was not looked at.</summary>
    public AdvisedWire? Of(string wireId) => Options.FirstOrDefault(option => option.WireId == wireId);
}
