using System.Collections.Immutable;
using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Rods;

/// <summary>Shape of the wire before it is engaged.</summary>
public abstract record RestShape
{
    private protected RestShape()
    {
    }

    /// <summary>A smooth curve through the rest slots, tangent to their axes: passive there.</summary>
    public sealed record ThroughRestSlots : RestShape;

    /// <summary>A straight wire along the line of the rest slots.</summary>
    public sealed record Straight : RestShape;

    /// <summary>A smooth curve through given points.</summary>
    /// <param name="Path">At least two points, in order from the patient's right to the left [mm].</param>
    /// <param name="Outward">Direction of the section's width axis at each point; empty to follow the slots.</param>
    public sealed record Points(ImmutableArray<Vector3> Path, ImmutableArray<Vector3> Outward) : RestShape;
}
