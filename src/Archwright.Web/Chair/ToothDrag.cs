using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;

namespace Archwright.Web.Chair;

/// <summary>A finger that moves a tooth on the picture.</summary>
/// <param name="Tooth">Which.</param>
/// <param name="Begins">True for the first move of a drag.</param>
/// <param name="X">To the right since the drag began [mm].</param>
/// <param name="Y">Down since the drag began [mm].</param>
public sealed record ToothDrag(ToothNumber Tooth, bool Begins, double X, double Y)
{
    /// <summary>Since the drag began, in the frame of the patient [mm], where the view is one in space; null on a flat
    /// picture.</summary>
    public Vector3? InSpace { get; init; }
}
