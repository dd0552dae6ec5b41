using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Values;
using Archwright.Web.Drawing;

namespace Archwright.Web.Chair;

/// <summary>What a move of a finger on the picture means in clinical words.</summary>
internal static class DragGeometry
{
    /// <summary>The offset of a tooth after a drag.</summary>
    public static ToothOffset Moved(AdviceInputs inputs, ToothDrag drag, ToothOffset start, ArchView view)
    {
        ArchSetup arch = ArchModel.Build(inputs, "niti-014"); // any wire: the slots alone are looked at
        SlotFrame rest = arch.Slots[arch.Teeth.IndexOf(drag.Tooth)].Rest;
        ClinicalAxes axes = ClinicalAxes.For(drag.Tooth);
        if (drag.InSpace is { } free)
        {
            return start with
            {
                LabialMm = start.LabialMm + Vector3.Dot(free, ClinicalAxes.Labial(rest)),
                OcclusalMm = start.OcclusalMm + Vector3.Dot(free, axes.Occlusal(rest)),
                MesialMm = start.MesialMm + Vector3.Dot(free, axes.Mesial(rest)),
            };
        }

        Vector3 shift = view == ArchView.Occlusal
            ? new Vector3(-drag.X, inputs.Jaw == Jaw.Upper ? -drag.Y : drag.Y, 0)
            : drag.X * rest.Along + new Vector3(0, 0, -drag.Y);
        return view == ArchView.Occlusal
            ? start with
            {
                LabialMm = start.LabialMm + Vector3.Dot(shift, ClinicalAxes.Labial(rest)),
                MesialMm = start.MesialMm + Vector3.Dot(shift, axes.Mesial(rest)),
            }
            : start with
            {
                OcclusalMm = start.OcclusalMm + Vector3.Dot(shift, axes.Occlusal(rest)),
                MesialMm = start.MesialMm + Vector3.Dot(shift, axes.Mesial(rest)),
            };
    }
}
