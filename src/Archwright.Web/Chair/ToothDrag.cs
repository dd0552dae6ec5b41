using Archwright.Dentition.Teeth;

namespace Archwright.Web.Chair;

/// <summary>A finger that moves a tooth on the picture.</summary>
/// <param name="Tooth">Which.</param>
/// <param name="Begins">True for the first move of a drag.</param>
/// <param name="X">To the right since the drag began [mm].</param>
/// <param name="Y">Down since the drag began [mm].</param>
public sealed record ToothDrag(ToothNumber Tooth, bool Begins, double X, double Y);
