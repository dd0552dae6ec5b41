using System.Globalization;
using Archwright.Cli.Solving;
using Archwright.Cli.Units;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Engagement;

namespace Archwright.Cli.Tables;

/// <summary>What a clinician should know first about an engaged wire, in sentences.</summary>
internal static class Findings
{
    /// <summary>A force below this rounds to nothing in every unit [N].</summary>
    private const double Felt = 0.005;

    /// <summary>The sentences, the weightiest first.</summary>
    public static IEnumerable<string> Of(
        CaseFile file, SolvedState state, ToothWords words, ForceUnit unit, CeilingCheck check)
    {
        yield return Largest(state, words, unit);
        if (!check.Above.IsEmpty)
            yield return Above(words, unit, check);
        if (state.Result.LargestStrain > 0)
            yield return Strain(file, state.Result, words);
        if (Pull(state.Result, words, unit) is { } pull)
            yield return pull;
        if (Friction(state.Result, words, unit) is { } friction)
            yield return friction;
    }

    private static string? Friction(EngagementResult result, ToothWords words, ForceUnit unit)
    {
        int most = 0;
        for (int i = 1; i < result.Slots.Length; i++)
        {
            if (Math.Abs(result.Slots[i].Friction) > Math.Abs(result.Slots[most].Friction))
                most = i;
        }

        double largest = Math.Abs(result.Slots[most].Friction);
        return largest < Felt
            ? null
            : $"Friction holds the wire along the arch, with {unit.Force(largest)} at most, at {words.Name(most)}.";
    }

    private static string Largest(SolvedState state, ToothWords words, ForceUnit unit)
    {
        int force = IndexOfLargest(state, load => load.Force);
        if (state.Loads[force].Force < Felt)
            return "The wire is passive: it loads no tooth.";

        int moment = IndexOfLargest(state, load => load.Moment);
        return $"Largest force {unit.Force(state.Loads[force].Force)} on {words.Name(force)}; "
            + $"largest moment {unit.Moment(state.Loads[moment].Moment)} on {words.Name(moment)}.";
    }

    private static string Above(ToothWords words, ForceUnit unit, CeilingCheck check)
    {
        int teeth = check.Above.Select(one => one.Slot).Distinct().Count();
        ToothAboveCeiling worst = check.Above.MaxBy(one => one.Ratio)!;
        string figure = worst.Kind.IsForce() ? unit.Force(worst.Figure) : unit.Moment(worst.Figure);
        string ceiling = worst.Kind.IsForce() ? unit.Force(worst.Ceiling) : unit.Moment(worst.Ceiling);
        string count = teeth == 1 ? "One tooth is" : $"{teeth} teeth are";
        return $"{count} above a ceiling; the worst is {words.Name(worst.Slot)}: {worst.Kind.Words()} {figure}, "
            + $"ceiling {ceiling}.";
    }

    private static string Strain(CaseFile file, EngagementResult result, ToothWords words)
    {
        string strain = WiresTable.Percent(result.LargestStrain);
        string near = result.LargestStrainNear >= 0 && result.LargestStrainNear < file.Arrangement.Slots.Length
            ? $" near {words.Name(result.LargestStrainNear)}"
            : "";
        if (WholeLaw.Holds(file))
            return $"Largest strain of the wire {strain}{near}. " + Memory(result);

        if (CaseWords.Alloy(file) is not { } alloy)
            return $"Largest strain of the wire {strain}{near}; its elastic limit is not given.";

        string limit = WiresTable.Percent(alloy.ElasticStrain.Value);
        if (result.LargestStrain <= alloy.ElasticStrain.Value)
            return $"Largest strain of the wire {strain}{near}: elastic (limit {limit}).";

        return alloy.InitialModulusOnly
            ? $"Largest strain of the wire {strain}{near}: beyond its elastic range ({limit}), so it transforms there "
                + "and pushes less than computed."
            : $"Largest strain of the wire {strain}{near}: above its elastic limit ({limit}), so it would stay bent.";
    }

    private static string Memory(EngagementResult result)
    {
        string transformed = result.TransformedShare > 0
            ? $"Up to {WiresTable.Percent(result.TransformedShare)} of a section is transformed. "
            : "";
        return transformed + (result.Set < 0.005
            ? "Taken out now, it would spring back."
            : $"Taken out now, it would stay bent by {result.Set.ToString("0.00", CultureInfo.InvariantCulture)} mm.");
    }

    private static string? Pull(EngagementResult result, ToothWords words, ForceUnit unit)
    {
        int most = 0;
        for (int i = 1; i < result.Slots.Length; i++)
        {
            if (result.Slots[i].PullOnTie > result.Slots[most].PullOnTie)
                most = i;
        }

        double pull = result.Slots[most].PullOnTie;
        return pull > 0.05 ? $"Largest pull on a tie {unit.Force(pull)}, at {words.Name(most)}." : null;
    }

    private static int IndexOfLargest(SolvedState state, Func<ClinicalLoad, double> figure)
    {
        int largest = 0;
        for (int i = 1; i < state.Loads.Length; i++)
        {
            if (figure(state.Loads[i]) > figure(state.Loads[largest]))
                largest = i;
        }

        return largest;
    }
}
