using System.Collections.Immutable;
using Archwright.Treatment.Decisions.Rules;

namespace Archwright.Treatment.Decisions;

/// <summary>The order of the options, and why each is not the one put forward.</summary>
internal static class Ranking
{
    /// <summary>The wire put forward first, then what is allowed by its score, then the others by how little speaks
    /// against them. Options whose scores differ by less than is known are ties.</summary>
    public static ImmutableArray<WireOption> Of(
        IReadOnlyList<WireOption> options, Choice choice, VisitView view)
    {
        WireOption? best = choice.Wire ?? StepChoice.Best(options);
        return
        [
            .. options
                .OrderByDescending(option => ReferenceEquals(option, choice.Wire))
                .ThenByDescending(option => option.Allowed)
                .ThenByDescending(option => option.Score ?? double.NegativeInfinity)
                .ThenBy(option => Hindrance(option, view))
                .ThenBy(option => Excess(option, view))
                .Select(option => option with
                {
                    TiesWithBest = Ties(option, best),
                    WhyNotThis = WhyNot(option, choice, best),
                }),
        ];
    }

    /// <summary>What would come nearest to being allowed: an allowed one that is not in stock, or the one with the
    /// least excess.</summary>
    public static WireOption? NearestOf(IReadOnlyList<WireOption> options, VisitView view) => options
        .Where(option => !option.Figures.IsPresent && option.Figures.ThickerThan is null)
        .OrderBy(option => Barring(option)).ThenBy(option => Hindrance(option, view))
        .ThenBy(option => Excess(option, view)).FirstOrDefault();

    // How many rules besides the stock speak against it.
    private static int Barring(WireOption option) => option.Findings.Count(finding =>
        finding.Kind == FindingKind.Against && finding.Rule != IsInStock.Name);

    private static int Hindrance(WireOption option, VisitView view) => option.FirstAgainst is not { } against ? 0
        : option.Figures.ThickerThan is not null ? 5
        : against.Rule switch
        {
            IsInStock.Name => 1,
            SuitsThePatient.Name or IsBearable.Name or StepIsNotTooFar.Name => 2,
            WithinCeilings.Name => 3,
            SpringsBack.Name => 4,
            _ => 5,
        };

    private static double Excess(WireOption option, VisitView view) => option.Figures.Engaged
        ? WithinCeilings.Nearest(option.Figures, view)?.Ratio ?? 0
        : double.PositiveInfinity;

    private static bool Ties(WireOption option, WireOption? best) => best is not null && option.Allowed
        && (option.Figures.Wire.Id == best.Figures.Wire.Id
            || option.Score is { } score && best.Score is { } most
            && Math.Abs(score - most) <= Math.Max(option.ScoreUncertainty, best.ScoreUncertainty));

    private static string WhyNot(WireOption option, Choice choice, WireOption? best)
    {
        if (ReferenceEquals(option, choice.Wire))
            return "Put forward.";
        if (option.FirstAgainst is { } against)
            return against.Sentence;
        if (choice.Wire is null)
            return "May be chosen after looking.";
        if (choice.Step == AdvisedStep.Keep)
            return "May be chosen; the wire in place can stay.";
        if (option.Figures.IsPresent)
            return "Has done its work.";

        return option.Score is null
            ? "May be chosen; not followed to the next visit, since others promised more."
            : Ties(option, best) ? $"No difference from {choice.Wire.Figures.Wire.Id} that could be relied on."
            : $"Ranks below {choice.Wire.Figures.Wire.Id} by what it delivers, how far it goes and how it feels.";
    }
}
