using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Decisions.Rules;

/// <summary>How much of the needed movement does it deliver by the next visit?</summary>
internal sealed class Delivers : IVisitRule
{
    public const string Name = "delivers";

    public Finding? Judge(WireFigures wire, VisitView view)
    {
        if (wire.Delivery is not { } delivery || view.IsAligned)
            return null;

        Percentiles share = delivery.Share;
        string most = delivery.IsUpperBound ? " at most" : "";
        string range = $"{VisitView.Figure(100 * share.P10, "0")} to {VisitView.Percent(share.P90)}";
        return new Finding(
            Name, FindingKind.For,
            $"By week {delivery.Weeks} it delivers{most} about {VisitView.Percent(share.P50)} of the movement left "
            + $"({range} among people); {VisitView.Figure(delivery.Needed)} mm are left in all.",
            share.P50, wire.IsPresent ? view.Policy.KeepShare : null, "1");
    }
}
