using System.Collections.Immutable;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;

namespace Archwright.Treatment.Decisions.Rules;

/// <summary>Is every tooth within the practice's ceilings, by kind of movement?</summary>
/// <remarks>Ceilings are for loads that stay: they are held against the load once the ligament has given, or as the
/// policy says; see <see cref="WireFigures.JudgedLoads"/>.</remarks>
internal sealed class WithinCeilings : IVisitRule
{
    public const string Name = "ceilings";

    public Finding? Judge(WireFigures wire, VisitView view)
    {
        if (!wire.Engaged || wire.Loads.IsEmpty)
            return null;

        if (Nearest(wire, view) is not { } nearest)
            return new Finding(Name, FindingKind.Note, "No tooth of this arch has a ceiling in the policy.");

        string figure = view.Load(nearest.Kind, nearest.Figure) + OnTyingIn(nearest, wire, view);
        string ceiling = view.Load(nearest.Kind, nearest.Ceiling);
        string unit = nearest.Kind.Unit();
        if (nearest.Ratio <= 1)
        {
            return new Finding(
                Name, FindingKind.For,
                $"Keeps every tooth within its ceiling; nearest to it {view.Tooth(nearest.Slot)}: "
                + $"{nearest.Kind.Words()} {figure}, ceiling {ceiling}.",
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

    // The load of the moment stands beside the one that stays, so that nobody takes the one for the other.
    private static string OnTyingIn(ToothAboveCeiling nearest, WireFigures wire, VisitView view) =>
        !wire.IsJudgedOnceGiven(view.Policy) ? " on tying in"
            : $" once the ligament has given ({view.Load(nearest.Kind, nearest.Kind.Of(wire.Loads[nearest.Slot]))} on "
                + "tying in)";

    /// <summary>The tooth and kind that use the largest share of their ceiling; null where there is no ceiling.
    /// </summary>
    public static ToothAboveCeiling? Nearest(WireFigures wire, VisitView view) =>
        All(wire, view).MaxBy(one => one.Ratio);

    /// <summary>All teeth and kinds above their ceiling.</summary>
    public static IEnumerable<ToothAboveCeiling> Above(WireFigures wire, VisitView view) =>
        All(wire, view).Where(one => one.Ratio > 1);

    private static IEnumerable<ToothAboveCeiling> All(WireFigures wire, VisitView view)
    {
        ImmutableArray<ClinicalLoad> loads = wire.JudgedLoads(view.Policy);
        for (int i = 0; i < loads.Length; i++)
        {
            ClinicalLoad load = loads[i];
            foreach (LoadKind kind in LoadKinds.All)
            {
                if (view.Ceilings.Find(view.Question.Tooth(i), kind) is { } ceiling)
                    yield return new ToothAboveCeiling(i, kind, kind.Of(load), ceiling.Limit.Value);
            }
        }
    }
}
