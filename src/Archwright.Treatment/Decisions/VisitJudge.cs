using System.Collections.Immutable;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Comfort;
using Archwright.Treatment.Decisions.Rules;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Decisions;

/// <summary>Judges figures by a policy: no mechanics in it, so that another policy or another fact can be tried at
/// once.</summary>
public static class VisitJudge
{
    /// <summary>What is recommended.</summary>
    /// <param name="question">What was asked.</param>
    /// <param name="figures">What was computed.</param>
    /// <param name="policy">By what it is judged.</param>
    /// <param name="style">How forces and teeth read in sentences.</param>
    public static VisitAdvice Judge(
        VisitQuestion question, ArchFigures figures, VisitPolicy policy, SentenceStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(figures);
        ArgumentNullException.ThrowIfNull(policy);
        var view = new VisitView(question, policy, style ?? SentenceStyle.Default, figures.Present);
        ImmutableArray<WireOption> options = [.. figures.All.Select(wire => Option(wire, view))];
        Choice choice = StepChoice.Of(options, view);
        WireOption? advised = choice.Wire;
        bool isCautious = view.IsSore || question.Alerts is { IsEmpty: false } || choice.Step == AdvisedStep.StepDown
            || advised is { Figures.TiedAtDistance.IsEmpty: false };
        ImmutableArray<WireOption> ranked = Ranking.Of(options, choice, view);
        return new VisitAdvice
        {
            Step = choice.Step,
            Wire = Find(ranked, advised),
            Nearest = advised is null ? Find(ranked, choice.Nearest) : null,
            Because = choice.Because,
            Considerations = choice.Nearest is { } nearest
                ? [.. Considerations.Of(nearest.Figures, view, question.Present?.Wire)]
                : [],
            Interval = Intervals.For(advised?.Figures, isCautious, policy),
            PartialTies = Ties(question, advised?.Figures),
            Options = ranked,
            Cautions = [.. Cautions.Of(choice, view)],
            Missing = [.. MissingFacts.Of(question)],
            Comfort = advised is null ? null
                : ComfortOutlook.Of(advised.Figures, figures.Present, question.Discomfort, policy),
            PolicyVersion = policy.Version,
            Question = question,
            Figures = figures,
        };
    }

    /// <summary>One wire under all rules.</summary>
    /// <param name="wire">Its figures.</param>
    /// <param name="question">What was asked.</param>
    /// <param name="present">Figures of the wire in place; null when there is none.</param>
    /// <param name="policy">By what it is judged.</param>
    /// <param name="style">How forces and teeth read in sentences.</param>
    public static WireOption Judge(
        WireFigures wire, VisitQuestion question, WireFigures? present, VisitPolicy policy,
        SentenceStyle? style = null) =>
        Option(wire, new VisitView(question, policy, style ?? SentenceStyle.Default, present));

    internal static bool IsAllowed(WireFigures wire, VisitView view) =>
        !VisitRules.All.Any(rule => rule.Judge(wire, view) is { Kind: FindingKind.Against });

    /// <summary>Whether nothing but forces or a set speaks against it, which a tie at a distance may mend.</summary>
    internal static bool MayBeTied(WireFigures wire, VisitView view) => wire.Engaged && VisitRules.All.All(rule =>
        rule is SpringsBack or WithinCeilings || rule.Judge(wire, view) is not { Kind: FindingKind.Against });

    private static WireOption Option(WireFigures wire, VisitView view)
    {
        ImmutableArray<Finding> findings =
            [.. VisitRules.All.Select(rule => rule.Judge(wire, view)).OfType<Finding>()];
        bool allowed = findings.All(finding => finding.Kind != FindingKind.Against);
        Score? score = allowed ? Scores.Of(wire, view) : null;
        return new WireOption
        {
            Figures = wire,
            Findings = findings,
            ComfortIndex = wire.Engaged ? ComfortIndex.Of(wire, view.Policy) : null,
            Score = score?.Value,
            ScoreUncertainty = score?.Uncertainty ?? 0,
            WhyNotThis = "",
        };
    }

    private static WireOption? Find(ImmutableArray<WireOption> ranked, WireOption? which) => which is null ? null
        : ranked.First(option => option.Figures.Wire.Id == which.Figures.Wire.Id);

    private static ImmutableArray<ToothNumber> Ties(VisitQuestion question, WireFigures? wire) =>
    [
        .. question.Arch.Teeth.Where((_, i) =>
            question.Arch.Arrangement.Slots[i] is { IsBonded: true, Tie.Kind: TieKind.Partial or TieKind.None }
            || wire is not null && wire.TiedAtDistance.Contains(i)),
    ];
}
