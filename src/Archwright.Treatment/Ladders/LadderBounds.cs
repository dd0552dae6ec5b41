using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;

namespace Archwright.Treatment.Ladders;

/// <summary>The least that any way from a wire to the working wire can cost, whatever the teeth do.</summary>
/// <remarks>Each wire on the way is in for one visit at least and for its kind's shortest interval, and no step is
/// longer than the policy lets it be. Nothing about the arch goes in, so the figures are lower bounds of every
/// ladder.</remarks>
internal sealed class LadderBounds(
    ImmutableArray<LadderWire> wires, CatalogueWire working, LadderRules rules)
{
    private readonly Dictionary<string, (int Changes, int Weeks)> _known = new(StringComparer.Ordinal);

    /// <summary>Stands for "no way".</summary>
    public const int Never = int.MaxValue / 4;

    /// <summary>Least number of changes of wire until the working wire is in; nil for the working wire.</summary>
    public int Changes(CatalogueWire from) => Of(from).Changes;

    /// <summary>Least number of weeks in wires between this one and the working wire.</summary>
    public int Weeks(CatalogueWire from) => Of(from).Weeks;

    private (int Changes, int Weeks) Of(CatalogueWire from)
    {
        if (from.Id == working.Id)
            return (0, 0);
        if (_known.TryGetValue(from.Id, out var known))
            return known;

        (int Changes, int Weeks) least = (Never, Never);
        foreach (LadderWire next in wires)
        {
            if (!rules.IsStep(from, next.Wire, working))
                continue;

            (int changes, int weeks) = Of(next.Wire);
            int own = next.Wire.Id == working.Id ? 0 : rules.Policy.Interval(Intervals.KindOf(next.Wire)).Low;
            least = (Math.Min(least.Changes, changes + 1), Math.Min(least.Weeks, weeks + own));
        }

        return _known[from.Id] = least;
    }
}
