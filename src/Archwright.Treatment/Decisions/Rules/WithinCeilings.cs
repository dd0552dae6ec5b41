using System.Collections.Immutable;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;

namespace Archwright.Treatment.Decisions.Rules;

/// <summary>Is every tooth within the practice's ceilings, by kind of movement?</summary>
/// <remarks>Ceilings are for loads that stay: they are held against the load once the ligament has given, or as the
/// policy says; see <see cref="WireFigures.JudgedLoads"/>. A force above its ceiling that stays below the figure at
/// which harm is named (<see cref="Policies.VisitPolicy.BriefFactor"/>) is held against it after
/// <see cref="Policies.VisitPolicy.BriefDays"/>: what is gone by then is brief and let pass.</remarks>
internal sealed class WithinCeilings : IVisitRule
{
    public const string Name = "ceilings";

    public Finding? Judge(WireFigures wire, VisitView view)
    {
        if (!wire.Engaged || wire.Loads.IsEmpty)
            return null;

        HeldLoad[] held = [.. Held(wire, view)];
        if (held.MaxBy(one => one.Ratio) is not { Load: var nearest } most)
            return new Finding(Name, FindingKind.Note, "No tooth of this arch has a ceiling in the policy.");

        string figure = view.Load(nearest.Kind, nearest.Figure) + When(most, wire, view);
        string ceiling = view.Load(nearest.Kind, nearest.Ceiling);
        string unit = nearest.Kind.Unit();
        if (nearest.Ratio <= 1)
        {
            return new Finding(
                Name, FindingKind.For,
                $"Keeps every tooth within its ceiling; nearest to it {view.Tooth(nearest.Slot)}: "
                + $"{nearest.Kind.Words()} {figure}, ceiling {ceiling}." + Brief(held, view),
                nearest.Figure, nearest.Ceiling, unit);
        }

        int teeth = held.Where(one => one.Ratio > 1).Select(one => one.Load.Slot).Distinct().Count();
        string count = teeth == 1 ? "Loads one tooth above its ceiling" : $"Loads {teeth} teeth above their ceilings";
        string bound = wire.IsUpperBound ? " (an upper bound: the alloy transforms there)" : "";
        return new Finding(
            Name, FindingKind.Against,
            $"{count}, most {view.Tooth(nearest.Slot)}: {nearest.Kind.Words()} {figure}, ceiling {ceiling}{bound}.",
            nearest.Figure, nearest.Ceiling, unit);
    }

    // The load of the moment stands beside the one that counts, so that nobody takes the one for the other.
    private static string When(HeldLoad held, WireFigures wire, VisitView view)
    {
        if (!wire.IsJudgedOnceGiven(view.Policy))
            return " on tying in";

        LoadKind kind = held.Load.Kind;
        return held.Days > 0
            ? $" after {Days(held.Days)} ({view.Load(kind, held.AtFirst)} once the ligament has given)"
            : $" once the ligament has given ({view.Load(kind, kind.Of(wire.Loads[held.Load.Slot]))} on tying in)";
    }

    private static string Brief(HeldLoad[] held, VisitView view)
    {
        HeldLoad[] brief = [.. held.Where(one => one.IsBrief).OrderByDescending(one => one.AtFirst / one.Load.Ceiling)];
        if (brief.Length == 0)
            return "";

        ToothAboveCeiling load = brief[0].Load;
        string more = brief.Length == 1 ? "" : FormattableString.Invariant($", and {brief.Length - 1} more");
        return FormattableString.Invariant(
            $" Brief, and let pass: {load.Kind.Words()} of {view.Load(load.Kind, brief[0].AtFirst)} on ")
            + $"{view.Tooth(load.Slot)}, within its ceiling after {Days(brief[0].Days)}{more}.";
    }

    private static string Days(int days) => days == 1 ? "a day" : FormattableString.Invariant($"{days} days");

    /// <summary>The tooth and kind that use the largest share of their ceiling; null where there is no ceiling.
    /// </summary>
    public static ToothAboveCeiling? Nearest(WireFigures wire, VisitView view) =>
        Held(wire, view).MaxBy(one => one.Ratio)?.Load;

    /// <summary>Whether what it loads at first keeps out every thicker wire of the alloy as well, which loads more. A
    /// load that is not brief enough does not: a stiffer wire has done its work sooner.</summary>
    public static bool KeepsThickerOut(WireFigures wire, VisitView view)
    {
        bool mayBeBrief = wire.IsJudgedOnceGiven(view.Policy) && view.LetsBriefLoadsPass;
        return AtFirst(wire, view).Any(
            one => one.Ratio > (mayBeBrief ? view.Policy.BriefFactor(one.Load.Kind) : 1));
    }

    /// <summary>Every load that has a ceiling.</summary>
    public static IEnumerable<HeldLoad> Held(WireFigures wire, VisitView view)
    {
        HeldLoad[] first = [.. AtFirst(wire, view)];
        bool mayBeBrief = wire.IsJudgedOnceGiven(view.Policy) && view.LetsBriefLoadsPass
            && first.Any(one => one.Ratio > 1)
            && first.All(one => one.Ratio <= view.Policy.BriefFactor(one.Load.Kind)); // else nothing is gained
        if (!mayBeBrief || wire.After(view.Policy.BriefDays) is not { } later)
            return first;

        return first.Select(one => one.Ratio <= 1 ? one : one with
        {
            Load = one.Load with { Figure = one.Load.Kind.Of(later[one.Load.Slot]) }, Days = view.Policy.BriefDays,
        });
    }

    private static IEnumerable<HeldLoad> AtFirst(WireFigures wire, VisitView view)
    {
        ImmutableArray<ClinicalLoad> loads = wire.JudgedLoads(view.Policy);
        for (int i = 0; i < loads.Length; i++)
        {
            foreach (LoadKind kind in LoadKinds.All)
            {
                if (view.Ceilings.Find(view.Question.Tooth(i), kind) is { } ceiling)
                {
                    double figure = kind.Of(loads[i]);
                    yield return new HeldLoad(
                        new ToothAboveCeiling(i, kind, figure, ceiling.Limit.Value), figure, Days: 0);
                }
            }
        }
    }
}
