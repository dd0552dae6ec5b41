using Archwright.Dentition.Tables;
using Archwright.Dentition.Units;

namespace Archwright.Dentition.Prescriptions;

/// <summary>The angles built into the slot of one tooth [degrees in the table, as the trade states them].</summary>
/// <param name="TipDegrees">Crown toward the mesial.</param>
/// <param name="TorqueDegrees">Crown labially, root lingually.</param>
/// <param name="RotationDegrees">Counter-rotation or molar offset as printed, its sense in words under
/// <see cref="Sourced.How"/>; for the record, used in no computation.</param>
/// <param name="Reason">Why it differs from the set; empty when it does not.</param>
public sealed record PrescribedAngles(
    Sourced TipDegrees, Sourced TorqueDegrees, Sourced RotationDegrees, string Reason = "")
{
    /// <summary>Crown toward the mesial [rad].</summary>
    public double Tip => Angle.FromDegrees(TipDegrees.Value);

    /// <summary>Crown labially, root lingually [rad].</summary>
    public double Torque => Angle.FromDegrees(TorqueDegrees.Value);
}
