using Archwright.Dentition.Units;

namespace Archwright.Dentition.Positions;

/// <summary>Where a slot is, counted from where it should be, in the words of the clinic; the same words and signs in
/// all four quadrants.</summary>
/// <param name="Labial">Toward the lip or cheek [mm].</param>
/// <param name="Occlusal">Toward the biting plane, as by extrusion [mm].</param>
/// <param name="Mesial">Along the arch toward the midline [mm].</param>
/// <param name="Rotation">Mesial side turned labially [rad].</param>
/// <param name="Tip">Crown tipped toward the mesial [rad].</param>
/// <param name="Torque">Crown turned labially, root lingually [rad].</param>
/// <remarks><c>default</c>-like zero is <see cref="Zero"/>. The three angles are components of one rotation vector,
/// not turns one after the other.</remarks>
public sealed record ClinicalOffset(
    double Labial = 0,
    double Occlusal = 0,
    double Mesial = 0,
    double Rotation = 0,
    double Tip = 0,
    double Torque = 0)
{
    /// <summary>In its planned place.</summary>
    public static ClinicalOffset Zero { get; } = new();

    /// <summary>True when every part is a finite number.</summary>
    public bool IsFinite =>
        double.IsFinite(Labial) && double.IsFinite(Occlusal) && double.IsFinite(Mesial)
        && double.IsFinite(Rotation) && double.IsFinite(Tip) && double.IsFinite(Torque);

    /// <summary>An offset with its angles in degrees.</summary>
    /// <param name="labial">[mm]</param>
    /// <param name="occlusal">[mm]</param>
    /// <param name="mesial">[mm]</param>
    /// <param name="rotationDegrees">Mesial side turned labially.</param>
    /// <param name="tipDegrees">Crown toward the mesial.</param>
    /// <param name="torqueDegrees">Crown labially.</param>
    public static ClinicalOffset FromDegrees(
        double labial = 0,
        double occlusal = 0,
        double mesial = 0,
        double rotationDegrees = 0,
        double tipDegrees = 0,
        double torqueDegrees = 0) => new(
            labial,
            occlusal,
            mesial,
            Angle.FromDegrees(rotationDegrees),
            Angle.FromDegrees(tipDegrees),
            Angle.FromDegrees(torqueDegrees));

    /// <summary>The sum part by part, as for a finding on top of another. Exact for shifts; for angles as good as
    /// rotation vectors add, that is for small ones.</summary>
    public ClinicalOffset Plus(ClinicalOffset other) => new(
        Labial + other.Labial,
        Occlusal + other.Occlusal,
        Mesial + other.Mesial,
        Rotation + other.Rotation,
        Tip + other.Tip,
        Torque + other.Torque);
}
