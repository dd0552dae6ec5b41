using System.Collections.Immutable;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Reads the shape of a wire before it is engaged.</summary>
internal static class RestReading
{
    /// <summary>Most points of a rest shape: an arch of 110 mm in steps of 0.02 mm.</summary>
    public const int MostPoints = 5000;

    /// <summary>Points nearer than this coincide [mm].</summary>
    public const double NearestPoints = 1e-3;

    /// <summary>Cosine above which an outward direction runs along the wire: 11 degrees.</summary>
    private const double AlongWire = 0.98;

    private const string Whose = "of the rest shape";

    public static RestShape? Rest(Node node, ProblemList problems)
    {
        string shape = node.Members.LastOrDefault(m => m.Key == "shape").Value?.Text ?? "";
        KeySet keys = shape == "points" ? CaseKeys.PointsRest : CaseKeys.PlainRest;
        if (Fields.Of(node, keys, Whose, problems, CaseKeys.PointsRest) is not { } fields)
            return null;

        return fields.Word("shape", "through-rest-slots", "straight", "points") switch
        {
            "through-rest-slots" => new RestShape.ThroughRestSlots(),
            "straight" => new RestShape.Straight(),
            "points" => Points(fields, problems),
            _ => null,
        };
    }

    private static RestShape.Points? Points(Fields fields, ProblemList problems)
    {
        ImmutableArray<Vector3>? path = Path(fields, problems);
        ImmutableArray<Vector3>? outward = Outward(fields, problems);
        if (path is not { } p || outward is not { } o)
            return null;

        if (o.IsEmpty || FitsPath(fields, p, o, problems))
            return new RestShape.Points(p, o);

        return null;
    }

    private static ImmutableArray<Vector3>? Path(Fields fields, ProblemList problems)
    {
        if (fields.Need("points_mm") is not { } node
            || NodeReading.List(node, "points", 2, MostPoints, problems) is not { } items)
        {
            return null;
        }

        int before = problems.Count;
        var path = ImmutableArray.CreateBuilder<Vector3>(items.Count);
        foreach (Node item in items)
        {
            if (NodeReading.Vector(item, Quantities.Coordinate with { Name = "point" }, Whose, problems) is { } point)
                path.Add(point);
        }

        if (problems.Count > before)
            return null;

        for (int i = 1; i < path.Count; i++)
        {
            if ((path[i] - path[i - 1]).Length >= NearestPoints)
                continue;

            problems.Add(
                ProblemCodes.PointsCoincide, items[i].Path,
                $"Point {i} of the rest shape lies on point {i - 1} (within {NearestPoints} mm).",
                "Leave one of the two out.");
        }

        return problems.Count > before ? null : path.ToImmutable();
    }

    private static ImmutableArray<Vector3>? Outward(Fields fields, ProblemList problems)
    {
        if (fields.Find("outward") is not { } node)
            return [];

        if (NodeReading.List(node, "outward directions", 2, MostPoints, problems) is not { } items)
            return null;

        int before = problems.Count;
        var outward = ImmutableArray.CreateBuilder<Vector3>(items.Count);
        foreach (Node item in items)
        {
            if (FrameReading.Direction(item, "outward", Whose, problems) is { } direction)
                outward.Add(direction);
        }

        return problems.Count > before ? null : outward.ToImmutable();
    }

    private static bool FitsPath(
        Fields fields, ImmutableArray<Vector3> path, ImmutableArray<Vector3> outward, ProblemList problems)
    {
        Node node = fields.Find("outward")!;
        if (path.Length != outward.Length)
        {
            problems.Add(
                ProblemCodes.OutwardCount, node.Path,
                $"There are {path.Length} points and {outward.Length} outward directions.",
                "Give one outward direction a point, or leave “outward” out: the section then follows the slots.");
            return false;
        }

        int before = problems.Count;
        for (int i = 0; i < path.Length; i++)
        {
            Vector3 tangent = (path[Math.Min(i + 1, path.Length - 1)] - path[Math.Max(i - 1, 0)]);
            if (tangent.Length > 0 && Math.Abs(Vector3.Dot(tangent.Unit(), outward[i].Unit())) > AlongWire)
            {
                problems.Add(
                    ProblemCodes.OutwardAlongWire, node.Items[i].Path,
                    $"At point {i} the outward direction runs along the wire.",
                    "Give the direction of the section's width, across the wire.");
            }
        }

        return problems.Count == before;
    }
}
