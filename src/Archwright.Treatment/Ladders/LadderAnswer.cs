using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Ladders;

/// <summary>One wire of a ladder.</summary>
public sealed record LadderStep
{
    /// <summary>Which.</summary>
    public required CatalogueWire Wire { get; init; }

    /// <summary>Whether it is in place already.</summary>
    public required bool IsInPlace { get; init; }

    /// <summary>The visit at which it goes in for the usual patient; 0 is today.</summary>
    public required int AtVisit { get; init; }

    /// <summary>Visits, usual patient, that the wire before stayed on purpose after this one might have gone in, since
    /// it is gentler then.</summary>
    public int Waited { get; init; }

    /// <summary>Weeks from today until it goes in, among patients.</summary>
    public required Percentiles FromWeek { get; init; }

    /// <summary>Weeks that it stays in until the next one goes in, among patients; 0 for the last, which
    /// stays.</summary>
    public required Percentiles Weeks { get; init; }

    /// <summary>Weeks from visit to visit while it is in; 0 for the last.</summary>
    public required int Interval { get; init; }

    /// <summary>Figures of its engagement, for the usual patient.</summary>
    public required WireFigures Figures { get; init; }

    /// <summary>The tooth that bears the largest force; null where no force is known.</summary>
    public ToothNumber? LargestForceTooth { get; init; }

    /// <summary>Comfort index of its engagement; 0 where it is in place already.</summary>
    public required double ComfortIndex { get; init; }

    /// <summary>Teeth to be tied at a distance.</summary>
    public required ImmutableArray<ToothNumber> PartialTies { get; init; }

    /// <summary>Wires that answer alike here and may be taken in its place.</summary>
    public required ImmutableArray<CatalogueWire> Twins { get; init; }

    /// <summary>What the rules of the visit say against it; empty for what the program found within the ceilings.
    /// </summary>
    public required ImmutableArray<Finding> Against { get; init; }

    /// <summary>Price; null where it is not known, 0 for a wire in place.</summary>
    public decimal? Price { get; init; }
}

/// <summary>One sequence of wires, followed to its end.</summary>
public sealed record LadderAnswer
{
    /// <summary>What it is good for.</summary>
    public required LadderKind Kind { get; init; }

    /// <summary>The wires in order; empty where not even the first can go in.</summary>
    public required ImmutableArray<LadderStep> Steps { get; init; }

    /// <summary>Why the sequence ends before its last wire for the usual patient; null where it does not.</summary>
    public string? Stop { get; init; }

    /// <summary>Visits after today until the last wire is in, among patients; infinite for those who do not get there.
    /// </summary>
    public required Percentiles Visits { get; init; }

    /// <summary>Weeks until then, among patients.</summary>
    public required Percentiles TotalWeeks { get; init; }

    /// <summary>Worst comfort index of its engagements, usual patient.</summary>
    public required double ComfortIndex { get; init; }

    /// <summary>Largest force on a tooth when a wire goes in [N], usual patient.</summary>
    public required double LargestForce { get; init; }

    /// <summary>What its new wires cost; null where a price is not known.</summary>
    public decimal? Cost { get; init; }

    /// <summary>Answers of this question that are the same sequence.</summary>
    public ImmutableArray<LadderKind> SameAs { get; init; } = [];

    /// <summary>Answers from which it does not differ by more than is known, in any respect.</summary>
    public ImmutableArray<LadderKind> TiesWith { get; init; } = [];

    /// <summary>Whether everything better was ruled out; false where the search stopped for want of time.</summary>
    public bool IsProven { get; init; } = true;

    /// <summary>Whether two are the same wires, tied alike, with the same waiting.</summary>
    internal bool IsSameSequence(LadderAnswer other) => Steps.Length == other.Steps.Length
        && Steps.Zip(other.Steps).All(pair => pair.First.Wire.Id == pair.Second.Wire.Id
            && pair.First.Waited == pair.Second.Waited
            && pair.First.PartialTies.SequenceEqual(pair.Second.PartialTies));
}

/// <summary>How the clinician's own sequence differs from one that was found.</summary>
/// <param name="From">From which.</param>
/// <param name="Visits">Visits more, usual patient.</param>
/// <param name="Weeks">Weeks more, usual patient.</param>
/// <param name="ComfortIndex">Worst comfort index higher by.</param>
/// <param name="Sentence">In words; says where a difference is within what is known.</param>
public sealed record LadderDifference(
    LadderKind From, double Visits, double Weeks, double ComfortIndex, string Sentence);

/// <summary>What was found.</summary>
public sealed record LadderAdvice
{
    /// <summary>What was asked.</summary>
    public required LadderQuestion Question { get; init; }

    /// <summary>The working wire.</summary>
    public required CatalogueWire Working { get; init; }

    /// <summary>Whether nobody named it.</summary>
    public required bool WorkingIsAssumed { get; init; }

    /// <summary>Whether the working wire, or one no lighter, is in place: there is nothing to climb.</summary>
    public bool IsAtWorkingWire { get; init; }

    /// <summary>What the rules say against the wire in place; empty where nothing does, or none is in place. A ladder
    /// begins with it only where nothing does, or where it was decided to stay.</summary>
    public ImmutableArray<Finding> AgainstPresent { get; init; } = [];

    /// <summary>Fewest visits, gentlest, fastest; empty where no sequence keeps to the rules.</summary>
    public required ImmutableArray<LadderAnswer> Answers { get; init; }

    /// <summary>The clinician's own; null where none was asked about.</summary>
    public LadderAnswer? Asked { get; init; }

    /// <summary>How it differs.</summary>
    public ImmutableArray<LadderDifference> Differences { get; init; } = [];

    /// <summary>Where no sequence keeps to the ceilings: the one that passes them least; null where there is none, or
    /// none is needed.</summary>
    public LadderAnswer? Nearest { get; init; }

    /// <summary>By which factor the ceilings would have to stand higher for <see cref="Nearest"/>.</summary>
    public double? CeilingFactor { get; init; }

    /// <summary>Why there is no answer, in a sentence; null where there is one.</summary>
    public string? Because { get; init; }

    /// <summary>Where there is no answer: what binds, and what might be considered. Empty where something else than a
    /// ceiling is in the way.</summary>
    public ImmutableArray<string> Considerations { get; init; } = [];

    /// <summary>What to heed.</summary>
    public required ImmutableArray<string> Cautions { get; init; }

    /// <summary>What was not said and matters.</summary>
    public required ImmutableArray<MissingFact> Missing { get; init; }

    /// <summary>How many wires were looked at, after those that answer alike were taken together.</summary>
    public required int WiresLookedAt { get; init; }

    /// <summary>How many forecasts were made.</summary>
    public required int Forecasts { get; init; }

    /// <summary>Patients over whom weeks are told: 0 for a slow, a usual and a quick one.</summary>
    public required int Draws { get; init; }

    /// <summary>Seed of the draws.</summary>
    public required long Seed { get; init; }

    /// <summary>Name and version of the policy.</summary>
    public required string PolicyVersion { get; init; }
}
