using Archwright.Dentition.Positions;
using Archwright.Exchange.Json;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Writes where a slot is.</summary>
internal static class FrameWriting
{
    public static string Frame(SlotFrame frame) => JsonOut.OneLine(
        ("centre_mm", JsonOut.Vector3Text("centre_mm", frame.Centre)),
        ("along", JsonOut.Vector3Text("along", frame.Along)),
        ("outward", JsonOut.Vector3Text("outward", frame.Outward)));

    /// <summary>Writes <c>offset</c> where one is known and still gives the actual frame, else <c>actual</c>.</summary>
    public static void Place(
        JsonOut json, SlotFrame rest, SlotFrame actual, ClinicalAxes axes, ClinicalOffset? offset)
    {
        if (offset is not null && axes.Displaced(rest, offset) == actual)
            json.Raw("offset", Offset(offset));
        else
            json.Raw("actual", Frame(actual));
    }

    private static string Offset(ClinicalOffset offset) => JsonOut.OneLine(
        ("labial_mm", JsonOut.Figure("labial_mm", offset.Labial)),
        ("occlusal_mm", JsonOut.Figure("occlusal_mm", offset.Occlusal)),
        ("mesial_mm", JsonOut.Figure("mesial_mm", offset.Mesial)),
        ("rotation_deg", JsonOut.Figure("rotation_deg", PlainFigures.Degrees(offset.Rotation))),
        ("tip_deg", JsonOut.Figure("tip_deg", PlainFigures.Degrees(offset.Tip))),
        ("torque_deg", JsonOut.Figure("torque_deg", PlainFigures.Degrees(offset.Torque))));
}
