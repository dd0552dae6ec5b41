using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Rods;

/// <summary>Shape of a wire at one place along it, and how a state holds it (layout: see
/// <see cref="RodAssembly"/>).</summary>
internal static class NodalState
{
    /// <summary>Sets the unknowns of a node.</summary>
    /// <param name="q">State, 8 a node.</param>
    /// <param name="node">Index.</param>
    /// <param name="point">Position [mm].</param>
    /// <param name="slope">dr/ds.</param>
    /// <param name="turn">θ at the node [rad].</param>
    /// <param name="turnAfter">θ in the middle of the element after it [rad].</param>
    public static void Put(
        Span<double> q, int node, Vector3 point, Vector3 slope, double turn = 0, double turnAfter = 0)
    {
        Span<double> at = q.Slice(8 * node, 8);
        at[0] = point.X;
        at[1] = point.Y;
        at[2] = point.Z;
        at[3] = slope.X;
        at[4] = slope.Y;
        at[5] = slope.Z;
        at[6] = turn;
        at[7] = turnAfter;
    }

    /// <summary>Position [mm], dr/ds and θ [rad] at a place of an element.</summary>
    /// <param name="mesh">Nodes.</param>
    /// <param name="q">State.</param>
    /// <param name="element">Index.</param>
    /// <param name="s">Place along the wire, in the element [mm].</param>
    public static (Vector3 Point, Vector3 Slope, double Turn) At(
        RodMesh mesh, ReadOnlySpan<double> q, int element, double s)
    {
        Hermite shape = ShapeAt(mesh, element, s);
        Vector3 r0 = RodAssembly.Position(q, element);
        Vector3 r1 = RodAssembly.Position(q, element + 1);
        Vector3 t0 = RodAssembly.Slope(q, element);
        Vector3 t1 = RodAssembly.Slope(q, element + 1);
        return (shape.Point(r0, t0, r1, t1), shape.Slope(r0, t0, r1, t1), Turn(q, element, shape));
    }

    /// <summary>θ [rad] at a place of the wire.</summary>
    /// <param name="mesh">Nodes.</param>
    /// <param name="q">State.</param>
    /// <param name="s">Place along the wire [mm].</param>
    /// <param name="near">Element where to start looking.</param>
    public static double TurnAt(RodMesh mesh, ReadOnlySpan<double> q, double s, int near)
    {
        int element = mesh.Find(s, near);
        return Turn(q, element, ShapeAt(mesh, element, s));
    }

    /// <summary>θ [rad] where the shape functions of an element were taken.</summary>
    public static double Turn(ReadOnlySpan<double> q, int element, in Hermite shape) =>
        shape.M0 * q[8 * element + 6] + shape.Mm * q[8 * element + 7] + shape.M1 * q[8 * element + 14];

    private static Hermite ShapeAt(RodMesh mesh, int element, double s)
    {
        double h = mesh.Length(element);
        return new Hermite((s - mesh.S[element]) / h, h);
    }
}
