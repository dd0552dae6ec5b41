using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;

namespace Archwright.Treatment.Calibration;

/// <summary>Where teeth were found at a visit.</summary>
/// <param name="Week">Weeks after the wire was fitted, above 0.</param>
/// <param name="Offsets">Teeth that were measured, against their planned places; the others are not known.</param>
public sealed record ObservedArch(double Week, ImmutableDictionary<ToothNumber, ClinicalOffset> Offsets);
