using Archwright.Dentition.Positions;
using Archwright.Dentition.Units;

namespace Archwright.Practice.Values;

/// <summary>Where a tooth's slot is against where it should be, as a person measures and writes it: millimetres and
/// degrees. Words and signs are those of <see cref="ClinicalOffset"/>.</summary>
/// <param name="LabialMm">Toward the lip or cheek.</param>
/// <param name="OcclusalMm">Toward the biting plane.</param>
/// <param name="MesialMm">Toward the midline along the arch.</param>
/// <param name="RotationDegrees">Mesial side turned labially.</param>
/// <param name="TipDegrees">Crown toward the mesial.</param>
/// <param name="TorqueDegrees">Crown labially, root lingually.</param>
public sealed record ToothOffset(
    double LabialMm = 0,
    double OcclusalMm = 0,
    double MesialMm = 0,
    double RotationDegrees = 0,
    double TipDegrees = 0,
    double TorqueDegrees = 0)
{
    /// <summary>Farthest that a slot may be noted from its place; beyond it a slip of the pen is likelier [mm].
    /// Common practice, no source.</summary>
    public const double LargestShiftMm = 15;

    /// <summary>Largest turn that may be noted, either way [°]. Common practice, no source.</summary>
    public const double LargestTurnDegrees = 90;

    /// <summary>In its planned place.</summary>
    public static ToothOffset Zero { get; } = new();

    /// <summary>True when every part is a finite number in its range.</summary>
    public bool IsPlausible =>
        new[] { LabialMm, OcclusalMm, MesialMm }.All(part => Math.Abs(part) <= LargestShiftMm)
        && new[] { RotationDegrees, TipDegrees, TorqueDegrees }.All(part => Math.Abs(part) <= LargestTurnDegrees);

    /// <summary>The same for the computation.</summary>
    public ClinicalOffset ToClinical() => ClinicalOffset.FromDegrees(
        LabialMm, OcclusalMm, MesialMm, RotationDegrees, TipDegrees, TorqueDegrees);

    /// <summary>An offset of the computation as people write it.</summary>
    public static ToothOffset From(ClinicalOffset offset) => new(
        offset.Labial,
        offset.Occlusal,
        offset.Mesial,
        Angle.ToDegrees(offset.Rotation),
        Angle.ToDegrees(offset.Tip),
        Angle.ToDegrees(offset.Torque));
}
