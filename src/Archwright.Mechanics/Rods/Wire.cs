using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Rods;

/// <summary>A wire before anything is done to it: section and alloy.</summary>
/// <param name="Section">Outline and constants of the cross-section.</param>
/// <param name="Alloy">What it is made of.</param>
public sealed record Wire(Section Section, Alloy Alloy);

/// <summary>How the wire's ends are held back from sliding.</summary>
public enum WireEnds
{
    /// <summary>Both ends slide freely.</summary>
    Free,

    /// <summary>A stop mesial to each terminal tube keeps the wire from advancing distally through it.</summary>
    Stopped,

    /// <summary>The wire is bent behind each terminal tube and cannot be drawn out of it mesially.</summary>
    Cinched,
}
