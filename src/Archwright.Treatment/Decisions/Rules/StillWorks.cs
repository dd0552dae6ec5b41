namespace Archwright.Treatment.Decisions.Rules;

/// <summary>Does the wire in place still do anything, or is it spent?</summary>
internal sealed class StillWorks : IVisitRule
{
    public const string Name = "still-works";

    public Finding? Judge(WireFigures wire, VisitView view)
    {
        if (!wire.IsPresent || wire.Delivery is not { } delivery)
            return null;

        double limit = view.Policy.SpentSpeed;
        string speed = $"{VisitView.Figure(delivery.FastestNow, "0.00")} mm a week";
        if (view.IsAligned)
        {
            return new Finding(
                Name, FindingKind.Note,
                $"The arch is aligned: no crown is more than {VisitView.Figure(view.FarthestOff, "0.00")} mm off. This "
                + "wire has done its work.",
                delivery.FastestNow, limit, "mm/week");
        }

        if (delivery.FastestNow < limit)
        {
            return new Finding(
                Name, FindingKind.Note,
                $"Spent: its fastest tooth, {view.Tooth(delivery.FastestSlot)}, moves {speed}; below "
                + $"{VisitView.Figure(limit, "0.00")} a wire counts as spent.",
                delivery.FastestNow, limit, "mm/week");
        }

        return new Finding(
            Name, FindingKind.For, $"Still works: {view.Tooth(delivery.FastestSlot)} moves {speed}.",
            delivery.FastestNow, limit, "mm/week");
    }
}
