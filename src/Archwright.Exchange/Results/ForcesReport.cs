using System.Collections.Immutable;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Engagement;

namespace Archwright.Exchange.Results;

/// <summary>How long a solve took.</summary>
public abstract record SolveTime
{
    private SolveTime()
    {
    }

    /// <summary>Solved once.</summary>
    /// <param name="ElapsedMilliseconds">Time of the whole solve, steps included [ms].</param>
    public sealed record Once(double ElapsedMilliseconds) : SolveTime;

    /// <summary>Solved many times.</summary>
    /// <param name="ColdMilliseconds">Median of solves from the rest shape [ms].</param>
    /// <param name="WarmMilliseconds">Median of solves from a previous solution [ms].</param>
    public sealed record Repeated(double ColdMilliseconds, double WarmMilliseconds) : SolveTime;
}

/// <summary>What <c>solve</c> has found, ready to be written.</summary>
public sealed record ForcesReport
{
    /// <summary>The case that was solved.</summary>
    public required CaseFile Case { get; init; }

    /// <summary>The engagement.</summary>
    public required EngagementResult Engaged { get; init; }

    /// <summary>One a step of the case, in order; fewer when a step failed.</summary>
    public ImmutableArray<EngagementResult> Steps { get; init; } = [];

    /// <summary>The state after the relief that makes working figures; null where there is none. Its places are those
    /// of <see cref="Engager.Relieving"/>.</summary>
    public EngagementResult? Working { get; init; }

    /// <summary>How much of the wire's law the figures rest on: "whole", "elastic" (the wire stays in it),
    /// "first-modulus" or "as-written".</summary>
    public string Law { get; init; } = "as-written";

    /// <summary>Why the whole law gave no answer though it was asked; null otherwise.</summary>
    public string? WhyNotWholeLaw { get; init; }

    /// <summary>How long it took.</summary>
    public required SolveTime Time { get; init; }
}
