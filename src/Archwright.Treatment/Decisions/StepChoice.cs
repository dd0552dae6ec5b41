using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Decisions;

/// <summary>What the options amount to.</summary>
/// <param name="Step">Keep, step up, step down or look first.</param>
/// <param name="Wire">The wire put forward; null when the clinician looks first.</param>
/// <param name="Nearest">What comes nearest where none is put forward.</param>
/// <param name="Because">Why, in one sentence.</param>
internal sealed record Choice(AdvisedStep Step, WireOption? Wire, WireOption? Nearest, string Because);

/// <summary>From judged options to keep, step up, step down or look first.</summary>
/// <remarks>
/// In this order. Alerts that send the question back, and an arch of which nobody said what is in place: look first.
/// A wire in place that a rule speaks against cannot stay: the best of the allowed ones. One that may stay: keep it
/// while the patient is sore or an alert bars a step, while it is early, and while it works; otherwise the best
/// heavier wire that is allowed, or keep where there is none. While it moves a tooth at all, none that loads a tooth
/// above its ceiling, be it briefly, takes its place. On bonding day the best first wire. Nothing allowed:
/// look first, with what comes nearest.
/// </remarks>
internal static class StepChoice
{
    public static Choice Of(IReadOnlyList<WireOption> options, VisitView view)
    {
        if (view.Alerts(AlertAct.LookFirst).FirstOrDefault() is { } alert)
            return new Choice(AdvisedStep.LookFirst, null, Best(options), alert.Sentence);
        if (!view.Question.PresentIsKnown)
        {
            return new Choice(
                AdvisedStep.LookFirst, null, Best(options),
                "Nobody said which wire is in place: keep or step cannot be told apart.");
        }

        return options.FirstOrDefault(option => option.Figures.IsPresent) is not { } present
            ? First(options, view)
            : present.Allowed ? MayStay(present, options, view) : MustGo(present, options, view);
    }

    private static Choice First(IReadOnlyList<WireOption> options, VisitView view) =>
        Best(options.Where(option => option.Allowed)) is { } best
            ? new Choice(AdvisedStep.StepUp, best, null, $"First wire: {Lower(Main(best, view))}")
            : Nothing(options, view);

    private static Choice MustGo(WireOption present, IReadOnlyList<WireOption> options, VisitView view)
    {
        WireOption? allowed = Best(options.Where(option => option.Allowed));
        if (present.Figures.IsUnanswered)
        {
            return new Choice(
                AdvisedStep.LookFirst, null, allowed,
                $"The computation found no resting shape for {Name(present)} on this arch: "
                + "whether it can stay is for the clinician to see.");
        }

        if (allowed is not { } best)
            return Nothing(options, view);

        AdvisedStep step = WireSize.Compare(present.Figures.Wire, best.Figures.Wire) > 0
            ? AdvisedStep.StepUp : AdvisedStep.StepDown;
        return new Choice(
            step, best, null,
            $"{Name(present)} cannot stay as it is: {Lower(present.FirstAgainst!.Sentence)}"); // not allowed: has one
    }

    private static Choice MayStay(WireOption present, IReadOnlyList<WireOption> options, VisitView view)
    {
        Choice Keep(string because) => new(AdvisedStep.Keep, present, null, because);
        if (view.IsSore)
        {
            return Keep(FormattableString.Invariant(
                $"Discomfort was {view.Question.Discomfort:0.#} of 10: keep {Name(present)}, nothing heavier now."));
        }

        if (view.Alerts(AlertAct.NoStepUp).FirstOrDefault() is { } alert)
            return Keep(alert.Sentence);
        if (!view.IsAligned && view.Question.Present!.Weeks is { } weeks && weeks < view.Policy.EarlyWeeks)
        {
            return Keep(FormattableString.Invariant(
                $"{Name(present)} has been in for {weeks:0.#} weeks only: give it its time."));
        }

        if (Works(present, view))
            return Keep(present.Findings.First(finding => finding.Rule == Rules.Delivers.Name).Sentence);
        if (IsThere(present, view))
            return Keep($"{Name(present)} is the working wire, and it is in.");

        WireOption? heavier = Best(options.Where(option =>
            option.Allowed && WireSize.Compare(present.Figures.Wire, option.Figures.Wire) > 0
            && !(Moves(present, view) && IsBrief(option, view))));
        string spent = present.Findings.FirstOrDefault(finding => finding is
            { Rule: Rules.StillWorks.Name, Kind: FindingKind.Note })?.Sentence
            ?? $"{Name(present)} delivers little more.";
        if (heavier is not null)
            return new Choice(AdvisedStep.StepUp, heavier, null, spent);

        // What comes nearest to the next step tells what keeps it out.
        return Keep($"{spent} Nothing heavier may go in today, so {Name(present)} stays.") with
        {
            Nearest = Ranking.NearestOf(
                [.. options.Where(option => WireSize.Compare(present.Figures.Wire, option.Figures.Wire) > 0)], view),
        };
    }

    private static bool Works(WireOption present, VisitView view) => Moves(present, view)
        && present.Figures.Delivery!.Share.P50 >= view.Policy.KeepShare; // it moves: it was followed

    private static bool Moves(WireOption present, VisitView view) => !view.IsAligned
        && present.Figures.Delivery is { } delivery && delivery.FastestNow >= view.Policy.SpentSpeed;

    private static bool IsBrief(WireOption option, VisitView view) =>
        Rules.WithinCeilings.Held(option.Figures, view).Any(one => one.IsBrief);

    private static bool IsThere(WireOption present, VisitView view) =>
        view.Question.WorkingWire is { } working && WireSize.Compare(present.Figures.Wire, working) <= 0;

    private static Choice Nothing(IReadOnlyList<WireOption> options, VisitView view)
    {
        WireOption? nearest = Ranking.NearestOf(options, view);
        string stock = view.Question.ChoiceIsStock ? "No wire in stock suits" : "No wire suits";
        string because = nearest is null ? $"{stock}: there is none to choose from."
            : nearest.Allowed
                ? $"{stock}. The nearest that would, {nearest.Figures.Wire.Id}, is not in stock."
                : $"{stock} by this policy. {nearest.Figures.Wire.Id} comes nearest: "
                    + Lower(nearest.FirstAgainst!.Sentence); // not allowed: has one
        return new Choice(AdvisedStep.LookFirst, null, nearest, because);
    }

    /// <summary>The best score; of equal ones the first. Wires without a score cannot be best.</summary>
    internal static WireOption? Best(IEnumerable<WireOption> options) => options
        .Where(option => option is { Allowed: true, Score: not null }).MaxBy(option => option.Score!.Value);

    private static string Main(WireOption option, VisitView view) =>
        (option.Findings.FirstOrDefault(finding => finding.Rule == Rules.Delivers.Name)
            ?? option.Findings.First(finding => finding.Rule == Rules.WithinCeilings.Name)).Sentence;

    private static string Name(WireOption option) => option.Figures.Wire.Id;

    private static string Lower(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..];
}
