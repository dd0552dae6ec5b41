using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Decisions.Rules;

/// <summary>Do the alerts of this patient speak against it?</summary>
internal sealed class SuitsThePatient : IVisitRule
{
    public const string Name = "alerts";

    public Finding? Judge(WireFigures wire, VisitView view)
    {
        double nickel = wire.Wire.Alloy.Nickel.Value;
        if (view.Alerts(AlertAct.NoNickel).Any() && nickel > view.Policy.MostNickel)
        {
            return new Finding(
                Name, FindingKind.Against,
                $"Holds {VisitView.Figure(nickel, "0")} % nickel, and this patient reacts to it.",
                nickel, view.Policy.MostNickel, "% by weight");
        }

        return !wire.IsPresent && view.IsHeavierThanPresent(wire.Wire)
            && view.Alerts(AlertAct.NoStepUp).FirstOrDefault() is { } alert
                ? new Finding(Name, FindingKind.Against, alert.Sentence)
                : null;
    }
}
