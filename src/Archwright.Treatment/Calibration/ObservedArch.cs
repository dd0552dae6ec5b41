using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;

namespace Archwright.Treatment.Calibration;

/// <summary>Where teeth were found at a visit.</summary>
/// <param name="Week">Weeks after the wire was fitted, above 0.</param>
/// <param name="Teeth">Teeth that were measured; the others are not known.</param>
public sealed record ObservedArch(double Week, ImmutableDictionary<ToothNumber, ObservedTooth> Teeth);

/// <summary>Where a tooth was found, against its planned place, in clinical words; null for what was not
/// measured.</summary>
/// <param name="Labial">[mm]</param>
/// <param name="Occlusal">[mm]</param>
/// <param name="Mesial">[mm]</param>
/// <param name="Rotation">[rad]</param>
/// <param name="Tip">[rad]</param>
/// <param name="Torque">[rad]</param>
public sealed record ObservedTooth(
    double? Labial = null,
    double? Occlusal = null,
    double? Mesial = null,
    double? Rotation = null,
    double? Tip = null,
    double? Torque = null)
{
    /// <summary>A tooth of which all six parts were measured.</summary>
    public static ObservedTooth Of(ClinicalOffset offset)
    {
        ArgumentNullException.ThrowIfNull(offset);
        return new ObservedTooth(
            offset.Labial, offset.Occlusal, offset.Mesial, offset.Rotation, offset.Tip, offset.Torque);
    }

    internal bool IsFinite => new[] { Labial, Occlusal, Mesial, Rotation, Tip, Torque }
        .All(part => part is not double value || double.IsFinite(value));
}
