using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Treatment.Decisions.Rules;

namespace Archwright.Treatment.Decisions;

/// <summary>Where a ceiling keeps every wire or ladder out: what binds, and what a clinician might think of. It
/// proposes nothing as done; each is weighed by who sees the mouth.</summary>
internal static class Considerations
{
    private const double WorthAStep = 0.1;

    /// <summary>The considerations of a wire that a ceiling keeps out; none where something else does.</summary>
    /// <param name="refused">The wire.</param>
    /// <param name="view">The visit at which it was tried.</param>
    /// <param name="present">What was in place then; null for none.</param>
    public static IEnumerable<string> Of(WireFigures refused, VisitView view, CatalogueWire? present)
    {
        if (!refused.Engaged || WithinCeilings.Nearest(refused, view) is not { Ratio: > 1 } binding)
            yield break;

        string wire = refused.Wire.Id;
        yield return FormattableString.Invariant(
            $"What binds: {binding.Kind.Words()} on {view.Tooth(binding.Slot)} under {wire}, ")
            + FormattableString.Invariant($"{view.Load(binding.Kind, binding.Figure)}, {binding.Ratio:0.0} times the ")
            + $"ceiling of {view.Load(binding.Kind, binding.Ceiling)}.";

        if (Displaced(binding.Slot, view) is { } off)
        {
            string distance = VisitView.Figure(view.Question.Arch.Distances[off], "0.0");
            yield return $"Near it {view.Tooth(off)} is {distance} mm off its place. With {wire}, tying it at a "
                + "distance or passing it by for a visit would take the load off its neighbours.";
            yield return $"If {view.Tooth(off)} stands well and its bracket does not, rebonding it, or a step in the "
                + "wire there, does the same.";
        }

        if (Lighter(refused.Wire, present, view) is { } between)
        {
            yield return $"A wire between, such as {between.Id}, would press less"
                + (view.Question.ChoiceIsStock && view.Question.Choice.All(one => one.Id != between.Id)
                    ? "; it is not at hand." : ".");
        }
    }

    // The loaded tooth or a neighbour, whichever is farther off.
    private static int? Displaced(int slot, VisitView view)
    {
        ImmutableArray<double> distances = view.Question.Arch.Distances;
        int[] near =
        [
            .. Enumerable.Range(slot - 1, 3).Where(i => i >= 0 && i < distances.Length && distances[i] > WorthAStep
                && view.Question.Arch.Arrangement.Slots[i].IsBonded),
        ];
        return near.Length == 0 ? null : near.MaxBy(i => distances[i]);
    }

    // Of the whole catalogue, the nearest to the middle of the two in stiffness, round or not as the refused one.
    private static CatalogueWire? Lighter(CatalogueWire refused, CatalogueWire? present, VisitView view)
    {
        double high = WireSize.Stiffness(refused);
        double low = present is null ? 0 : WireSize.Stiffness(present);
        double middle = low > 0 ? Math.Sqrt(low * high) : high / 2;
        double smallest = view.Question.Arch.Arrangement.Slots.Min(slot => slot.Height);
        return WireCatalogue.Default.Wires
            .Where(wire => WireSize.Stiffness(wire) > 1.1 * low && WireSize.Stiffness(wire) < high / 1.1
                && wire.Section.IsRound == refused.Section.IsRound && wire.Section.Thickness <= smallest)
            .MinBy(wire => Math.Abs(Math.Log(WireSize.Stiffness(wire) / middle)));
    }
}
