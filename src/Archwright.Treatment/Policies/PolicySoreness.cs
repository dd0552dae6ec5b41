using System.Collections.Immutable;

namespace Archwright.Treatment.Policies;

/// <summary>Reads the time course of soreness.</summary>
internal static class PolicySoreness
{
    private const double LastHour = 336;

    public static (ImmutableArray<SorenessPoint> Points, string Source) Read(PolicyNode root)
    {
        if (root.Need("soreness") is not { } node || !node.HasKeys("source", "how", "points"))
            return ([], "");

        string source = node.Text("source") ?? "";
        node.Text("how");
        List<SorenessPoint> points = [];
        foreach (PolicyNode point in node.Items("points"))
        {
            if (!point.HasKeys("hour", "share"))
                continue;

            double? hour = point.Number("hour", 0, LastHour, "hours");
            double? share = point.Number("share", 0, 1, "of the peak");
            if (hour is { } at && points.Count > 0 && at <= points[^1].Hour)
                point.Fault("The points are not in order of time.", "Write the earlier ones first, each hour once.");
            else if (hour is { } then && share is { } level)
                points.Add(new SorenessPoint(then, level));
        }

        if (points.Count < 3 || points.All(point => point.Share < 1))
        {
            node.Fault(
                "The course has too few points, or none of them is its peak.",
                "Give three points or more, the peak with share 1.");
        }

        return ([.. points], source);
    }
}
