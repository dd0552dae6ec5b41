using Archwright.Dentition.Comparison;
using Archwright.Practice.Keeping;
using Archwright.Treatment.Policies;

namespace Archwright.Practice.Tests.Keeping;

/// <summary>A policy written out for the record. Rests on the policy itself.</summary>
[Trait("basis", "law")]
public sealed class PolicyLinesTests
{
    [Fact]
    public void Every_figure_interval_alert_and_ceiling_stands_there_with_its_source()
    {
        VisitPolicy policy = VisitPolicy.Default;
        string[] lines = PolicyLines.Of(policy).Split('\n');
        string[] ceilings = PolicyLines.Of(policy.Ceilings).Split('\n');

        Assert.Equal(1 + policy.Figures.Count + policy.Intervals.Length + policy.Alerts.Length + 1, lines.Length);
        Assert.All(policy.Figures, one => Assert.Contains(lines, line => line.StartsWith(
            one.Name + ": ", StringComparison.Ordinal) && line.Contains(one.Figure.Source, StringComparison.Ordinal)));
        Assert.All(policy.Alerts, one => Assert.Contains(lines, line => line.Contains(
            one.Source, StringComparison.Ordinal)));
        Assert.Equal(policy.Ceilings.All.Count, ceilings.Length);
        Assert.Equal(ceilings.Length, ceilings.Distinct().Count());
        Assert.All(policy.Ceilings.All.Zip(ceilings), pair => Assert.Contains(
            pair.First.Limit.Source, pair.Second, StringComparison.Ordinal));
    }

    [Fact]
    public void What_changed_between_two_is_told_and_nothing_else()
    {
        VisitPolicy other = VisitPolicy.Default.With("largest_set", 0.2);
        ForceCeiling first = other.Ceilings.All[0];
        var ceilings = other.Ceilings.With([first with { Limit = first.Limit with { Value = 7 } }]);

        (IReadOnlyList<string> went, IReadOnlyList<string> came) =
            PolicyLines.Difference(PolicyLines.Of(VisitPolicy.Default), PolicyLines.Of(other));
        (IReadOnlyList<string> lower, IReadOnlyList<string> higher) =
            PolicyLines.Difference(PolicyLines.Of(other.Ceilings), PolicyLines.Of(ceilings));

        Assert.StartsWith("largest_set: 0.1 mm", Assert.Single(went), StringComparison.Ordinal);
        Assert.StartsWith("largest_set: 0.2 mm", Assert.Single(came), StringComparison.Ordinal);
        Assert.Contains(first.Tooth.Name, Assert.Single(lower), StringComparison.Ordinal);
        Assert.Contains(": 7 ", Assert.Single(higher), StringComparison.Ordinal);
    }
}
