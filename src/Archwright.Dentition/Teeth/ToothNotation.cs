namespace Archwright.Dentition.Teeth;

/// <summary>How tooth numbers are written for people. Inside, teeth are always numbered by ISO 3950.</summary>
/// <remarks>A bare "11" is an upper right central incisor in one notation and an upper left canine in another:
/// whatever shows a number shows its notation too.</remarks>
public enum ToothNotation
{
    /// <summary>ISO 3950: quadrant, then position from the midline.</summary>
    Iso,

    /// <summary>1 to 32, from the upper right third molar round to the lower right one.</summary>
    Universal,

    /// <summary>Quadrant in letters, then position: UR3.</summary>
    Palmer,
}
