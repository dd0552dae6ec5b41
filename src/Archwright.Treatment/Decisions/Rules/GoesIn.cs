namespace Archwright.Treatment.Decisions.Rules;

/// <summary>Can it be engaged at every slot that is to hold it?</summary>
internal sealed class GoesIn : IVisitRule
{
    public const string Name = "goes-in";

    public Finding Judge(WireFigures wire, VisitView view)
    {
        if (wire.ThickerThan is { } thinner)
        {
            return new Finding(
                Name, FindingKind.Against, $"Heavier than {thinner} of the same alloy, which is ruled out already.");
        }

        if (wire.IsUnanswered)
        {
            return new Finding(
                Name, FindingKind.Against, "Not judged: the computation found no resting shape for it on this arch.");
        }

        if (!wire.Engaged)
        {
            string reason = (wire.WhyNot ?? "no way was found").Trim().TrimEnd('.');
            return new Finding(
                Name, FindingKind.Against, $"Cannot go in: {char.ToLowerInvariant(reason[0])}{reason[1..]}.");
        }

        if (wire.TiedAtDistance.IsEmpty)
            return new Finding(Name, FindingKind.For, "Goes into every slot.");

        string teeth = string.Join(" and ", wire.TiedAtDistance.Select(view.Tooth));
        return new Finding(
            Name, FindingKind.For, $"Goes in with {teeth} tied at a distance.", wire.TiedAtDistance.Length, null,
            "teeth");
    }
}
