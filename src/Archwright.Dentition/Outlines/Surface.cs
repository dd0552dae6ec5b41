using System.Collections.Immutable;

namespace Archwright.Dentition.Outlines;

/// <summary>A surface of triangles.</summary>
/// <param name="Points">Three coordinates a point, one point after the other [mm].</param>
/// <param name="Triangles">Three indices of points a triangle, counter-clockwise as seen from outside.</param>
public sealed record Surface(ImmutableArray<float> Points, ImmutableArray<int> Triangles);
