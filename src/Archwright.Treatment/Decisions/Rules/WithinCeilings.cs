using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;

namespace Archwright.Treatment.Decisions.Rules;

/// <summary>Is every tooth within the practice's ceilings, by kind of movement?</summary>
internal sealed class WithinCeilings : IVisitRule
{
    public const string Name = "ceilings";

    public Finding? Judge(WireFigures wire, VisitView view)
    {
        if (!wire.Engaged || wire.Loads.IsEmpty)
            return null;

        if (Nearest(wire, view) is not { } nearest)
            return new Finding(Name, FindingKind.Note, "No tooth of this arch has a ceiling in the policy.");

        string figure = view.Load(nearest.Kind, nearest.Figure);
        string ceiling = view.Load(nearest.Kind, nearest.Ceiling);
        string unit = nearest.Kind.Unit();
        if (nearest.Ratio <= 1)
        {
            return new Finding(
                Name, FindingKind.For,
                $"Keeps every tooth within its ceiling; nearest to it {view.Tooth(nearest.Slot)}: "
                + $"{nearest.Kind.Words()} {figure} of {ceiling}.",
                nearest.Figure, nearest.Ceiling, unit);
        }

        int teeth = Above(wire, view).Select(one => one.Slot).Distinct().Count();
        string count = teeth == 1 ? "Loads one tooth above its ceiling" : $"Loads {teeth} teeth above their ceilings";
        string bound = wire.IsUpperBound ? " (an upper bound: the alloy transforms there)" : "";
        return new Finding(
            Name, FindingKind.Against,
            $"{count}, most {view.Tooth(nearest.Slot)}: {nearest.Kind.Words()} {figure}, ceiling {ceiling}{bound}.",
            nearest.Figure, nearest.Ceiling, unit);
    }

    /// <summary>The tooth and kind that use the largest share of their ceiling; null where there is no ceiling.
    /// </summary>
    public static ToothAboveCeiling? Nearest(WireFigures wire, VisitView view) =>
        All(wire, view).MaxBy(one => one.Ratio);

    /// <summary>All teeth and kinds above their ceiling.</summary>
    public static IEnumerable<ToothAboveCeiling> Above(WireFigures wire, VisitView view) =>
        All(wire, view).Where(one => one.Ratio > 1);

    private static IEnumerable<ToothAboveCeiling> All(WireFigures wire, VisitView view)
    {
        for (int i = 0; i < wire.Loads.Length; i++)
        {
            ClinicalLoad load = wire.Loads[i];
            foreach (LoadKind kind in LoadKinds.All)
            {
                if (view.Ceilings.Find(view.Question.Tooth(i), kind) is { } ceiling)
                    yield return new ToothAboveCeiling(i, kind, kind.Of(load), ceiling.Limit.Value);
            }
        }
    }
}
