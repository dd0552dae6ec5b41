using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Forecasts;

namespace Archwright.Treatment.Ladders;

/// <summary>A wire that a ladder may use, with those that answer alike.</summary>
/// <param name="Wire">The one that is looked at.</param>
/// <param name="Twins">Others of the same first modulus and section; they differ only where the alloy transforms.
/// </param>
internal sealed record LadderWire(CatalogueWire Wire, ImmutableArray<CatalogueWire> Twins);

/// <summary>Which wires a ladder looks at.</summary>
/// <remarks>
/// Of a long list, such as the whole catalogue, not every wire is worth a look: trials do not tell sequences apart
/// whose wires differ three times in stiffness (see alike_stiffness in the policy). Wires that answer alike are
/// looked at once. Of more than <see cref="ShortList"/>, those are left out that stand within a quarter of the
/// stiffness of one that is kept, round and rectangular apart; the one that can be bent farthest is kept. A short
/// list, such as most drawers, is looked at as it is. Nothing is left out from the working wire.
/// </remarks>
internal static class LadderChoice
{
    public const int ShortList = 16;
    private const double Band = 1.25;

    /// <summary>The wires in order of stiffness, the working wire last.</summary>
    /// <param name="wires">To choose from.</param>
    /// <param name="working">The wire to end with.</param>
    /// <param name="friction">How they rub: wires that rub otherwise are not alike.</param>
    public static ImmutableArray<LadderWire> Of(
        IEnumerable<CatalogueWire> wires, CatalogueWire working, FrictionChoice? friction = null)
    {
        LadderWire[] all =
        [
            .. wires.Append(working).DistinctBy(wire => wire.Id)
                .Where(wire => wire.Id == working.Id || WireSize.Compare(working, wire) < 0)
                .GroupBy(wire => (wire.Wire.Alloy.Young, wire.Wire.Alloy.Shear, wire.Section, friction?.On(wire.Alloy)))
                .Select(group => Together(group, working))
                .OrderBy(one => WireSize.Stiffness(one.Wire)),
        ];
        LadderWire[] rungs = [.. all.Where(one => one.Wire.Id != working.Id)];
        LadderWire last = all.First(one => one.Wire.Id == working.Id);
        IEnumerable<LadderWire> kept = rungs.Length <= ShortList ? rungs
            : Thinned(rungs.Where(one => one.Wire.Section.IsRound))
                .Concat(Thinned(rungs.Where(one => !one.Wire.Section.IsRound)))
                .OrderBy(one => WireSize.Stiffness(one.Wire));
        return [.. kept, last];
    }

    private static LadderWire Together(IEnumerable<CatalogueWire> alike, CatalogueWire working)
    {
        CatalogueWire[] group = [.. alike];
        CatalogueWire first = group.FirstOrDefault(wire => wire.Id == working.Id) ?? group[0];
        return new LadderWire(first, [.. group.Where(wire => wire.Id != first.Id)]);
    }

    // From soft to stiff: a band begins with a wire that stands clear of the one kept last.
    private static List<LadderWire> Thinned(IEnumerable<LadderWire> wires)
    {
        List<LadderWire> kept = [];
        double start = 0;
        foreach (LadderWire one in wires)
        {
            double stiffness = WireSize.Stiffness(one.Wire);
            if (stiffness > Band * start)
            {
                kept.Add(one);
                start = stiffness;
            }
            else if (one.Wire.ElasticStrainLimit > kept[^1].Wire.ElasticStrainLimit)
            {
                kept[^1] = one;
            }
        }

        return kept;
    }
}
