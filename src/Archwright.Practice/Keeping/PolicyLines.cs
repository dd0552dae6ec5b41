using System.Globalization;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Policies;

namespace Archwright.Practice.Keeping;

/// <summary>A policy written out, a figure a line with where it comes from, so that the practice's record says what was
/// judged by and two of them can be held side by side.</summary>
public static class PolicyLines
{
    /// <summary>Thresholds, weights, intervals, alerts and the course of soreness.</summary>
    public static string Of(VisitPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(policy);
        return string.Join('\n', (string[])
        [
            $"judged load: {Words(policy.JudgedLoad)}",
            .. policy.Figures.Select(one => string.Create(
                CultureInfo.InvariantCulture,
                $"{one.Name}: {one.Value:0.####} {one.Figure.Unit} ({one.Figure.Source}; {one.Figure.How})")),
            .. policy.Intervals.Select(one => string.Create(
                CultureInfo.InvariantCulture,
                $"weeks, {Words(one.For)}: {one.Low} to {one.High}, usual {one.Usual} ({one.Source}; {one.How})")),
            .. policy.Alerts.Select(one => $"alert, {one.Alert}: {Words(one.Act)} ({one.Source}; {one.How})"),
            "soreness: " + string.Join(", ", policy.Soreness.Select(one => string.Create(
                CultureInfo.InvariantCulture, $"{one.Hour:0.#} h {one.Share:0.###}"))) + $" ({policy.SorenessSource})",
        ]);
    }

    /// <summary>The ceilings of a policy, a line for each tooth and kind of load.</summary>
    public static string Of(ForceCeilings ceilings)
    {
        ArgumentNullException.ThrowIfNull(ceilings);
        return string.Join('\n', ceilings.All.Select(one => string.Create(
            CultureInfo.InvariantCulture,
            $"{one.Tooth.Name} (ISO {one.Tooth.ToIso()}), {one.Kind.Words()}: {one.Limit.Value:0.###} {one.Limit.Unit} "
            + $"({one.Limit.Source}; {one.Limit.How})")));
    }

    /// <summary>What went and what came between two texts, line by line.</summary>
    /// <param name="before">The older text.</param>
    /// <param name="after">The newer one.</param>
    public static (IReadOnlyList<string> Went, IReadOnlyList<string> Came) Difference(string before, string after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        string[] old = before.Split('\n');
        string[] young = after.Split('\n');
        return ([.. old.Except(young)], [.. young.Except(old)]);
    }

    /// <summary>Which load is judged, in words.</summary>
    public static string Words(JudgedLoad load) => load switch
    {
        JudgedLoad.OnTyingIn => "on tying in, as if teeth were rigid",
        _ => "once the ligament has given: the load that stays",
    };

    /// <summary>What an interval is for, in words.</summary>
    public static string Words(IntervalKind kind) => kind switch
    {
        IntervalKind.TransformingRound => "round wire of an alloy that transforms",
        IntervalKind.TransformingRectangular => "rectangular wire of an alloy that transforms",
        IntervalKind.OtherRound => "round or stranded wire of another alloy",
        IntervalKind.OtherRectangular => "rectangular wire of another alloy",
        _ => "to be seen sooner",
    };

    /// <summary>What an alert does, in words.</summary>
    public static string Words(AlertAct act) => act switch
    {
        AlertAct.LookFirst => "look first",
        AlertAct.NoStepUp => "no heavier wire",
        AlertAct.NoNickel => "no wire above the share of nickel",
        _ => "lower ceilings",
    };
}
