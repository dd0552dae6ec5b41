using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Decisions.Rules;

namespace Archwright.Treatment.Decisions;

/// <summary>Finds teeth to be tied at a distance so that a wire keeps every tooth within its ceiling.</summary>
/// <remarks>One tooth at a time: among the most overloaded tooth and its two neighbours (a displaced tooth loads its
/// neighbours as well) the one that is farthest off is let go. It is what a clinician does by eye, and no proof that
/// fewer teeth would not do.</remarks>
internal static class PartialTies
{
    // As gently as need be: a shorter pull moves the tooth less, and the last one only keeps it from going astray.
    private static readonly double[] Pulls = [1, 0.5, 0.25, 0];

    /// <summary>The wire with some teeth tied at a distance; null where not even the most that the policy allows
    /// bring it within the ceilings, or where a tie is not what hinders it.</summary>
    public static WireFigures? Find(
        CatalogueWire wire, WireFigures full, VisitView view, CancellationToken cancellation)
    {
        foreach (double share in Pulls)
        {
            if (Find(wire, full, view, share * view.Policy.PartialPull, cancellation) is { } found)
                return found;
        }

        return null;
    }

    private static WireFigures? Find(
        CatalogueWire wire, WireFigures full, VisitView view, double pull, CancellationToken cancellation)
    {
        ImmutableArray<double> distances = view.Question.Arch.Distances;
        List<int> loose = [];
        WireFigures tried = full;
        while (loose.Count < view.Policy.PartialTeeth)
        {
            if (Worst(tried, view) is not { } worst || Next(worst, loose, distances, view) is not { } next)
                return null;

            loose.Add(next);
            var evaluator = new WireEvaluator(view.Question.Arch.Loosened(loose, pull));
            tried = evaluator.Fitted(wire, cancellation) with
            {
                TiedAtDistance = [.. loose.Order()], Pull = pull,
            };
            if (!VisitRules.IsRuledOut(tried, view))
                return tried;
        }

        return null;
    }

    // Where the strain or the force is worst; a wire too thick for its slot is not helped by a tie.
    private static int? Worst(WireFigures wire, VisitView view)
    {
        if (!wire.Engaged || wire.Loads.IsEmpty)
            return null;

        ToothAboveCeiling? nearest = WithinCeilings.Nearest(wire, view);
        return nearest is { Ratio: > 1 } ? nearest.Slot : wire.MaxStrainNear >= 0 ? wire.MaxStrainNear : null;
    }

    private static int? Next(int worst, List<int> loose, ImmutableArray<double> distances, VisitView view)
    {
        int[] near =
        [
            .. Enumerable.Range(worst - 1, 3).Where(i => i >= 0 && i < distances.Length && !loose.Contains(i)
                && distances[i] > view.Policy.AlignedWithin
                && view.Question.Arch.Arrangement.Slots[i].Tie.Kind is not (TieKind.None or TieKind.Partial)),
        ];
        return near.Length == 0 ? null : near.MaxBy(i => distances[i]);
    }
}
