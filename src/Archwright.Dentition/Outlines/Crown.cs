namespace Archwright.Dentition.Outlines;

/// <summary>Size of a crown, for drawing alone [mm].</summary>
/// <param name="Position">1 central incisor to 8 third molar.</param>
/// <param name="Width">Mesiodistal.</param>
/// <param name="Height">From neck to edge or cusp.</param>
/// <param name="Depth">Labiolingual.</param>
/// <param name="SlotToEdge">From the slot's centre to the edge or cusp.</param>
/// <param name="SlotToFace">From the slot's centre to the crown's labial face.</param>
public sealed record Crown(
    int Position, double Width, double Height, double Depth, double SlotToEdge, double SlotToFace);
