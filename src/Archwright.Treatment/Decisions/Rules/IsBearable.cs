using Archwright.Treatment.Comfort;

namespace Archwright.Treatment.Decisions.Rules;

/// <summary>How does it feel against the last wire, and may it be heavier?</summary>
internal sealed class IsBearable : IVisitRule
{
    public const string Name = "comfort";

    public Finding? Judge(WireFigures wire, VisitView view)
    {
        if (!wire.Engaged || wire.Loads.IsEmpty)
            return null;

        double index = ComfortIndex.Of(wire, view.Policy);
        string shown = VisitView.Figure(index);
        if (view.IsSore && !wire.IsPresent && view.IsHeavierThanPresent(wire.Wire))
        {
            return new Finding(
                Name, FindingKind.Against,
                $"Discomfort was {VisitView.Figure(view.Question.Discomfort!.Value, "0.#")} of 10 after the last wire: "
                + "nothing heavier now.",
                view.Question.Discomfort, view.Policy.HighDiscomfort, "of 10");
        }

        if (wire.IsPresent)
        {
            return new Finding(
                Name, FindingKind.For, $"Stays in: no new engagement (comfort index {shown} when it was fitted).",
                index, null, "of 10");
        }

        string against = view.Present is { Loads.IsEmpty: false } present
            ? $"; that of the last wire was {VisitView.Figure(ComfortIndex.Of(present, view.Policy))}"
            : "";
        return new Finding(
            Name, FindingKind.For,
            $"Comfort index {shown} of 10, from {view.Style.Force(wire.FittingForce)} on all teeth together{against}.",
            index, null, "of 10");
    }
}
