namespace Archwright.Treatment.Decisions.Rules;

/// <summary>One rule of the visit.</summary>
internal interface IVisitRule
{
    /// <summary>What it finds on a wire; null where it has nothing to say.</summary>
    Finding? Judge(WireFigures wire, VisitView view);
}

/// <summary>The rules in the order in which they are asked.</summary>
internal static class VisitRules
{
    /// <summary>What the mechanics settles: a wire that breaks one of these needs no forecast.</summary>
    public static IReadOnlyList<IVisitRule> Physical { get; } = [new GoesIn(), new SpringsBack(), new WithinCeilings()];

    /// <summary>All rules.</summary>
    public static IReadOnlyList<IVisitRule> All { get; } =
    [
        .. Physical, new StillWorks(), new StepIsNotTooFar(), new Delivers(), new IsBearable(), new IsInStock(),
        new SuitsThePatient(),
    ];

    /// <summary>Whether the mechanics rules a wire out, and with it every one of its alloy whose section holds its own.
    /// </summary>
    public static bool KeepsThickerOut(WireFigures wire, VisitView view) => wire.ThickerThan is not null
        || new GoesIn().Judge(wire, view) is { Kind: FindingKind.Against }
        || new SpringsBack().Judge(wire, view) is { Kind: FindingKind.Against }
        || wire.Engaged && WithinCeilings.KeepsThickerOut(wire, view);

    /// <summary>Whether the mechanics rules a wire out.</summary>
    public static bool IsRuledOut(WireFigures wire, VisitView view) => wire.ThickerThan is not null
        || Physical.Any(rule => rule.Judge(wire, view) is { Kind: FindingKind.Against });
}
