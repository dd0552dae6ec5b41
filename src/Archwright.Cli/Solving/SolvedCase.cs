using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Cli.Solving;

/// <summary>One state of the wire: after engagement, or after a step.</summary>
/// <param name="Result">What the mechanics says.</param>
/// <param name="Actual">Where the slots are.</param>
/// <param name="Loads">The loads in clinical components, one a slot.</param>
internal sealed record SolvedState(
    EngagementResult Result, ImmutableArray<SlotFrame> Actual, ImmutableArray<ClinicalLoad> Loads)
{
    /// <summary>Whether the wire is in, and nothing would open.</summary>
    public bool IsEngaged => Result.Converged && Result.Obstacle is null;
}

/// <summary>Medians of repeated solves.</summary>
/// <param name="Repeats">Solves of each kind.</param>
/// <param name="ColdMilliseconds">From the rest shape.</param>
/// <param name="WarmMilliseconds">From the engaged state, after the displaced slots moved a little.</param>
internal sealed record Repeated(int Repeats, double ColdMilliseconds, double WarmMilliseconds);

/// <summary>A case and what became of it.</summary>
/// <param name="Case">The case.</param>
/// <param name="Engaged">After engagement.</param>
/// <param name="Steps">After each <c>then</c> step; fewer when one failed.</param>
/// <param name="ElapsedMilliseconds">Time of the engagement.</param>
/// <param name="Repeated">Null without <c>--repeat</c>.</param>
internal sealed record SolvedCase(
    CaseFile Case,
    SolvedState Engaged,
    ImmutableArray<SolvedState> Steps,
    double ElapsedMilliseconds,
    Repeated? Repeated)
{
    /// <summary>How much of the wire's law the figures rest on.</summary>
    public LawUsed Law { get; init; } = new(LawKind.AsWritten);

    /// <summary>After the relief that makes working figures; null where no slot is displaced, or it was not
    /// found.</summary>
    public EngagementResult? Working { get; init; }

    /// <summary>The last state.</summary>
    public SolvedState Last => Steps.IsEmpty ? Engaged : Steps[^1];

    /// <summary>Whether the wire is in, after every step.</summary>
    public bool IsEngaged => Engaged.IsEngaged && Steps.Length == Case.Then.Length && Steps.All(step => step.IsEngaged);
}
