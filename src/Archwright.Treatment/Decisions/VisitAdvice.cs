using System.Collections.Immutable;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Comfort;

namespace Archwright.Treatment.Decisions;

/// <summary>What is recommended. The clinician decides; a decision is recorded apart from it.</summary>
public enum AdvisedStep
{
    /// <summary>The wire in place stays.</summary>
    Keep,

    /// <summary>A heavier wire, or the first one.</summary>
    StepUp,

    /// <summary>A lighter wire, or one as heavy in place of one that cannot stay.</summary>
    StepDown,

    /// <summary>The clinician looks before any wire is put forward.</summary>
    LookFirst,
}

/// <summary>Words of the steps.</summary>
public static class AdvisedSteps
{
    /// <summary>The word in files: "step-up".</summary>
    public static string Word(this AdvisedStep step) => step switch
    {
        AdvisedStep.Keep => "keep",
        AdvisedStep.StepUp => "step-up",
        AdvisedStep.StepDown => "step-down",
        AdvisedStep.LookFirst => "look-first",
        _ => throw new ArgumentOutOfRangeException(nameof(step), step, "No such step."),
    };
}

/// <summary>Weeks to the next visit.</summary>
/// <param name="Low">Earliest.</param>
/// <param name="Mid">Usual.</param>
/// <param name="High">Latest.</param>
public readonly record struct IntervalWeeks(int Low, int Mid, int High);

/// <summary>One wire, judged.</summary>
public sealed record WireOption
{
    /// <summary>Its figures.</summary>
    public required WireFigures Figures { get; init; }

    /// <summary>What each rule found, in the order of the rules.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>Whether no rule speaks against it.</summary>
    public bool Allowed => Findings.All(finding => finding.Kind != FindingKind.Against);

    /// <summary>The first rule that speaks against it; null when it is allowed.</summary>
    public Finding? FirstAgainst => Findings.FirstOrDefault(finding => finding.Kind == FindingKind.Against);

    /// <summary>Index from 0 to 10 that rises with the forces on engagement; null when it does not go in.</summary>
    public double? ComfortIndex { get; init; }

    /// <summary>What the weights of the policy make of it; null where it is not allowed, or was not followed.</summary>
    public double? Score { get; init; }

    /// <summary>By how much the score may be off, either way.</summary>
    public double ScoreUncertainty { get; init; }

    /// <summary>Whether it differs from the first option by less than is known.</summary>
    public bool TiesWithBest { get; init; }

    /// <summary>Why it is not the advised wire, or that it is.</summary>
    public required string WhyNotThis { get; init; }
}

/// <summary>Something that was not said and matters.</summary>
/// <param name="Key">Where a case file says it.</param>
/// <param name="Question">What to ask.</param>
public sealed record MissingFact(string Key, string Question);

/// <summary>What is recommended for one arch until the next visit, with everything it rests on.</summary>
public sealed record VisitAdvice
{
    /// <summary>Keep, step up, step down, or look first.</summary>
    public required AdvisedStep Step { get; init; }

    /// <summary>The wire put forward, with its figures; null when none is.</summary>
    public WireOption? Wire { get; init; }

    /// <summary>Where no wire is put forward: the one that comes nearest, to be judged by the clinician.</summary>
    public WireOption? Nearest { get; init; }

    /// <summary>The one sentence that says why.</summary>
    public required string Because { get; init; }

    /// <summary>Where no wire is put forward, or none heavier, since the nearest passes a ceiling: what binds, and what
    /// might be considered; empty otherwise.</summary>
    public ImmutableArray<string> Considerations { get; init; } = [];

    /// <summary>Weeks to the next visit.</summary>
    public required IntervalWeeks Interval { get; init; }

    /// <summary>Teeth to be tied at a distance or passed by; the others are tied fully.</summary>
    public required ImmutableArray<ToothNumber> PartialTies { get; init; }

    /// <summary>All wires, best first: those that may be chosen by what the policy makes of them, then the
    /// others.</summary>
    public required ImmutableArray<WireOption> Options { get; init; }

    /// <summary>What to heed, in sentences.</summary>
    public required ImmutableArray<string> Cautions { get; init; }

    /// <summary>What was not said and matters.</summary>
    public required ImmutableArray<MissingFact> Missing { get; init; }

    /// <summary>How it may feel; null when no wire is put forward.</summary>
    public ComfortOutlook? Comfort { get; init; }

    /// <summary>Name and version of the policy.</summary>
    public required string PolicyVersion { get; init; }

    /// <summary>What was asked.</summary>
    public required VisitQuestion Question { get; init; }

    /// <summary>What was computed.</summary>
    public required ArchFigures Figures { get; init; }

    /// <summary>What it says of a wire; null when it was not looked at.</summary>
    public WireOption? Of(string wireId) => Options.FirstOrDefault(
        option => string.Equals(option.Figures.Wire.Id, wireId, StringComparison.OrdinalIgnoreCase));
}
