using Archwright.Dentition.Positions;
using Archwright.Dentition.Units;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Reads where a slot is: frames and offsets.</summary>
internal static class FrameReading
{
    /// <summary>Shortest direction that counts as one.</summary>
    private const double ShortestDirection = 1e-3;

    /// <summary>A frame: centre and two directions at right angles.</summary>
    public static SlotFrame? Frame(Node node, string whose, ProblemList problems)
    {
        if (Fields.Of(node, CaseKeys.Frame, whose, problems) is not { } fields)
            return null;

        Vector3? centre = Vector(fields, "centre_mm", Quantities.Coordinate, problems);
        Vector3? along = Direction(fields, "along", problems);
        Vector3? outward = Direction(fields, "outward", problems);
        return centre is { } c && along is { } a && outward is { } o && AtRightAngles(fields, a, o, problems)
            ? SlotFrame.Create(c, a, o)
            : null;
    }

    /// <summary>An offset; parts that are left out are zero.</summary>
    public static ClinicalOffset? Offset(Node node, string whose, ProblemList problems)
    {
        if (Fields.Of(node, CaseKeys.Offset, whose, problems) is not { } fields)
            return null;

        double? labial = fields.Number("labial_mm", Quantities.Shift with { Name = "labial offset" }, 0);
        double? occlusal = fields.Number("occlusal_mm", Quantities.Shift with { Name = "occlusal offset" }, 0);
        double? mesial = fields.Number("mesial_mm", Quantities.Shift with { Name = "mesial offset" }, 0);
        double? rotation = fields.Number("rotation_deg", Quantities.Turn with { Name = "rotation" }, 0);
        double? tip = fields.Number("tip_deg", Quantities.Turn with { Name = "tip" }, 0);
        double? torque = fields.Number("torque_deg", Quantities.Turn with { Name = "torque" }, 0);
        return labial is { } l && occlusal is { } o && mesial is { } m && rotation is { } r && tip is { } t
            && torque is { } q
            ? ClinicalOffset.FromDegrees(l, o, m, r, t, q)
            : null;
    }

    /// <summary>A direction of the rest shape or of a frame; not zero.</summary>
    public static Vector3? Direction(Node node, string name, string whose, ProblemList problems)
    {
        Quantity quantity = Quantities.Direction with { Name = name };
        if (NodeReading.Vector(node, quantity, whose, problems) is not { } vector)
            return null;

        if (vector.Length >= ShortestDirection)
            return vector;

        problems.Add(
            ProblemCodes.DirectionZero, node.Path,
            $"The direction {Say.Quote(name)} {whose} is {Show(vector)}: it has no length.",
            "Give a direction, for example [-0.6, 0.8, 0]; its length does not matter.");
        return null;
    }

    private static Vector3? Direction(Fields fields, string key, ProblemList problems) =>
        fields.Need(key) is { } node ? Direction(node, key, fields.Whose, problems) : null;

    private static Vector3? Vector(Fields fields, string key, Quantity quantity, ProblemList problems) =>
        fields.Need(key) is { } node
            ? NodeReading.Vector(node, quantity with { Name = "centre" }, fields.Whose, problems)
            : null;

    private static bool AtRightAngles(Fields fields, Vector3 along, Vector3 outward, ProblemList problems)
    {
        double cosine = Vector3.Dot(along.Unit(), outward.Unit());
        if (Math.Abs(cosine) <= SlotFrame.RightAngleTolerance)
            return true;

        double degrees = Angle.ToDegrees(Math.Acos(Math.Clamp(cosine, -1, 1)));
        problems.Add(
            ProblemCodes.NotPerpendicular, fields.Node.PathOf("outward"),
            $"The directions “along” and “outward” {fields.Whose} stand at {degrees:0.0}° to each other; it must be "
            + "90° within half a degree.",
            "Correct one of the two: along runs along the arch from the patient's right to the left, outward toward "
            + "lip or cheek.");
        return false;
    }

    private static string Show(Vector3 v) => $"[{Say.Number(v.X)}, {Say.Number(v.Y)}, {Say.Number(v.Z)}]";
}
