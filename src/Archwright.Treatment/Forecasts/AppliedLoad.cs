using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Forecasts;

/// <summary>Loads on teeth that do not come from the wire: a spring, a chain, a lip.</summary>
internal static class AppliedLoad
{
    /// <summary>A load at the slot in clinical words, at the centre of resistance in the axes of the slot. It goes
    /// along with the tooth.</summary>
    public static Six AtResistance(ToothNumber tooth, ToothSupport support, ClinicalLoad load)
    {
        ClinicalAxes axes = ClinicalAxes.For(tooth);
        var force = new Vector3(axes.Side * load.MesialForce, load.LabialForce, axes.Jaw * load.OcclusalForce);
        var moment = new Vector3(
            -axes.Jaw * load.TorqueMoment, axes.Side * axes.Jaw * load.TipMoment, axes.Side * load.RotationMoment);
        return new Six(force, moment - Vector3.Cross(support.ToResistance, force));
    }
}
