namespace Archwright.Dentition.Positions;

/// <summary>What the wire does to a tooth, in the words of the clinic: force, and moment about the centre of the
/// actual slot, in the axes of the actual slot.</summary>
/// <param name="LabialForce">Toward the lip or cheek [N].</param>
/// <param name="OcclusalForce">Extruding [N].</param>
/// <param name="MesialForce">Toward the midline along the arch [N].</param>
/// <param name="RotationMoment">Turning the mesial side labially [N·mm].</param>
/// <param name="TipMoment">Tipping the crown toward the mesial [N·mm].</param>
/// <param name="TorqueMoment">Turning the crown labially [N·mm].</param>
public sealed record ClinicalLoad(
    double LabialForce,
    double OcclusalForce,
    double MesialForce,
    double RotationMoment,
    double TipMoment,
    double TorqueMoment)
{
    /// <summary>Size of the force [N].</summary>
    public double Force => Math.Sqrt(
        LabialForce * LabialForce + OcclusalForce * OcclusalForce + MesialForce * MesialForce);

    /// <summary>Size of the moment [N·mm].</summary>
    public double Moment => Math.Sqrt(
        RotationMoment * RotationMoment + TipMoment * TipMoment + TorqueMoment * TorqueMoment);
}
