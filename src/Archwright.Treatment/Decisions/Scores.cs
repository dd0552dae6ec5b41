using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Comfort;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Decisions;

/// <summary>What the weights of a policy make of a wire.</summary>
/// <param name="Value">The score; more is better.</param>
/// <param name="Uncertainty">By how much it may be off, either way.</param>
internal readonly record struct Score(double Value, double Uncertainty);

/// <summary>Scores of wires that no rule speaks against.</summary>
/// <remarks>
/// <code>
///     score = w_d · delivered + w_p · progress − w_c · index/10,
///     progress = ln(stiffness/softest) / ln(working/softest), from 0 to 1.
/// </code>
/// Its uncertainty: half the range of the share delivered among people and the accuracy of the forecast; what trials
/// do not tell apart in stiffness; the accuracy of the forces in the index. The working wire is the one named, or
/// the stiffest of the catalogue where none is. On an aligned arch there is nothing to deliver, and all wires deliver
/// it alike.
/// </remarks>
internal static class Scores
{
    private static readonly Lazy<(double Softest, double Stiffest)> Range = new(() =>
    {
        double[] all = [.. WireCatalogue.Default.Wires.Select(WireSize.Stiffness)];
        return (all.Min(), all.Max());
    });

    /// <summary>The score; null where it needs a forecast that was not made.</summary>
    public static Score? Of(WireFigures wire, VisitView view)
    {
        if (wire.Delivery is { } delivery && !view.IsAligned)
            return With(wire, view, delivery.Share);

        return view.IsAligned ? With(wire, view, Percentiles.Exactly(1)) : null;
    }

    /// <summary>The most that it could score, uncertainty included: if it delivered everything.</summary>
    public static double Bound(WireFigures wire, VisitView view)
    {
        Score best = With(wire, view, Percentiles.Exactly(1));
        return best.Value + best.Uncertainty;
    }

    /// <summary>Stiffness of the softest wire of the catalogue, and of the working wire or else the stiffest
    /// [N·mm²].</summary>
    public static (double Softest, double Top) Ends(CatalogueWire? working) =>
        (Range.Value.Softest, working is null ? Range.Value.Stiffest : WireSize.Stiffness(working));

    /// <summary>How far a wire goes on the way from the softest of the catalogue to the working wire, 0 to 1.</summary>
    public static double Progress(CatalogueWire wire, CatalogueWire? working)
    {
        (double softest, double top) = Ends(working);
        double whole = Math.Log(top / softest);
        return whole <= 0 ? 1 : Math.Clamp(Math.Log(WireSize.Stiffness(wire) / softest) / whole, 0, 1);
    }

    private static Score With(WireFigures wire, VisitView view, Percentiles share)
    {
        (double softest, double top) = Ends(view.Question.WorkingWire);
        double accuracy = view.Policy.ForceAccuracy;
        double index = ComfortIndex.Of(wire, view.Policy) / ComfortIndex.Worst;
        double progress = Progress(wire.Wire, view.Question.WorkingWire);
        double value = view.Policy.WeightDelivered * share.P50 + view.Policy.WeightProgress * progress
            - view.Policy.WeightComfort * index;
        double steps = Math.Log(view.Policy.AlikeStiffness) / Math.Max(1, Math.Log(top / softest));
        double movement = view.IsAligned ? 0
            : view.Policy.WeightDelivered * ((share.P90 - share.P10) / 2 + view.Policy.ForecastAccuracy * share.P50);
        return new Score(
            value,
            movement + view.Policy.WeightProgress * steps + view.Policy.WeightComfort * index * accuracy);
    }
}
