using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Decisions;

/// <summary>What a clinician should heed beside the advice.</summary>
internal static class Cautions
{
    public static IEnumerable<string> Of(Choice choice, VisitView view)
    {
        foreach (PolicyAlert alert in view.Policy.Alerts.Where(alert => view.Question.Has(alert.Alert)))
        {
            yield return alert.Act == AlertAct.LowerCeilings
                ? $"{alert.Sentence} They stand at {VisitView.Percent(view.Policy.ReducedSupport)} here."
                : alert.Sentence;
        }

        foreach (string one in OfPatient(view).Concat(OfWire(choice, view)))
            yield return one;

        yield return "Ceilings are teaching values to warn at, not limits of safety.";
        yield return $"{Model(view.Question.Arch)}; people differ several times over in how fast teeth move.";
    }

    /// <summary>What the figures rest on, as far as it is chosen.</summary>
    internal static string Model(ArchToday arch)
    {
        double most = arch.MostFriction;
        string friction = arch.Friction is { Coefficient: null } byAlloy
            ? $"friction of a bench ({(byAlloy == FrictionChoice.Wet ? "in saliva" : "dry")}, by alloy)"
            : most > 0 ? FormattableString.Invariant($"friction of a bench (coefficient {most:0.##})") : "no friction";
        string lips = arch.SoftTissue.Factor > 0
            ? FormattableString.Invariant($"lips and cheeks {arch.SoftTissue.Factor:0.##} times the average, ") : "";
        return $"Average teeth, {friction}, {lips}no bite";
    }

    private static IEnumerable<string> OfPatient(VisitView view)
    {
        string[] bare =
        [
            .. view.Question.Arch.Unbonded.Select(tooth => $"the {tooth.Name} ({tooth.Show(view.Style.Notation)})"),
        ];
        if (bare.Length > 0)
        {
            yield return $"Without a bracket: {string.Join(", ", bare)}. "
                + "Only neighbouring crowns can move what is there.";
        }

        if (view.Question.Alerts is null)
            yield return "Alerts were not asked: ask before anything is fitted.";
        if (view.Question.Discomfort is null && view.Question.Present is not null)
        {
            yield return FormattableString.Invariant(
                $"Discomfort was not asked: from {view.Policy.HighDiscomfort:0.#} of 10 on, nothing heavier goes in.");
        }

        if (view.IsSore)
            yield return "Pain that grows after day 3, wakes at night or sits in one tooth: look for its cause first.";
        if (view.Question.Present is { Weeks: null })
            yield return "How long the wire has been in is not known: its history is left out.";
    }

    private static IEnumerable<string> OfWire(Choice choice, VisitView view)
    {
        if ((choice.Wire ?? choice.Nearest)?.Figures is not { } wire)
            yield break;

        if (!wire.TiedAtDistance.IsEmpty)
        {
            string teeth = string.Join(" and ", wire.TiedAtDistance.Select(slot => view.Tooth(slot)
                + ", thread of about " + VisitView.Figure(view.Question.Arch.Thread(slot, wire.Pull)) + " mm"));
            yield return $"Tie at a distance: {teeth}. "
                + "With every tooth tied fully the wire loads a tooth above its ceiling.";
        }

        if (wire.IsUpperBound || wire.Delivery is { IsUpperBound: true })
            yield return "This alloy transforms here and its whole law found no answer: real forces are lower.";
        if (wire.Delivery is { Forecast.Stop: { } stop, Weeks: var weeks } && stop.Day < 7 * weeks)
        {
            yield return FormattableString.Invariant(
                $"It could be followed for {stop.Day / 7:0.#} weeks only: {stop.Reason}");
        }
    }
}
