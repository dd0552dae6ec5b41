using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Rods;

/// <summary>Energy, gradient and tangent stiffness of a wire.</summary>
/// <remarks>
/// <para>
/// Unknowns: eight a node, in the order x y z, x′ y′ z′ (derivatives by length along the rest shape), θ at the node, θ
/// in the middle of the element after it (unused at the last node). The centre line is cubic Hermite, so its tangent is
/// continuous and a contact may slide from one element into the next without a jump; θ is quadratic. Strains are taken
/// at the two Gauss points of each element only: there the curvature of a cubic is accurate to a higher order, and an
/// element can bend without stretching. (C. de Boor, B. Swartz, "Collocation at Gaussian points", SIAM J. Numer. Anal.
/// 10 (1973) 582–606, from memory: fourth order.)
/// </para>
/// <para>
/// Two points leave one free mode on the whole wire: |r′| growing at all nodes alike while the stretch at the Gauss
/// points stays nil. A small energy ½ γ EA h (|r′| − 1)² at the nodes removes it; a larger γ stiffens coarse meshes a
/// little, a much smaller one lets the mode return (docs/theory/rod.md).
/// </para>
/// <para>
/// Sketch of the cost: about 500 scalar operations a point for the kinematics, 150 vector operations for the
/// assembly; near 0.4 µs an element, a third of a microsecond for its share of the factorisation.
/// </para>
/// </remarks>
internal static class RodAssembly
{
    /// <summary>Share of the axial stiffness that ties the length of the nodal slopes: γ. Searches that start far off
    /// want a firm tie, results a fine one.</summary>
    public const double FirmTie = 0.1;

    /// <summary>γ for results.</summary>
    public const double FineTie = 0.004;

    /// <summary>Energy of the wire [N·mm].</summary>
    /// <param name="mesh">Nodes and rest shape.</param>
    /// <param name="law">Section law.</param>
    /// <param name="tie">γ EA [N], for the tie of the slopes.</param>
    /// <param name="q">State, 8 a node.</param>
    public static double Energy<TLaw>(RodMesh mesh, in TLaw law, double tie, ReadOnlySpan<double> q)
        where TLaw : struct, ISectionLaw
    {
        ref double state = ref MemoryMarshal.GetReference(q);
        ref double weights = ref MemoryMarshal.GetReference(mesh.Weights);
        ReadOnlySpan<RestPoint> rest = mesh.Rest;
        double sum = 0;
        for (int e = 0; e < mesh.Elements; e++)
        {
            double half = mesh.Length(e) / 2;
            for (int g = 0; g < RodMesh.Points; g++)
            {
                int point = RodMesh.Points * e + g;
                Local(ref state, ref weights, e, point, out Vector3 p, out Vector3 c, out double turn, out double rate);
                SectionStrain strain = PointKernel.StrainOf(rest[point], p, c, turn, rate);
                sum += half * law.Energy(point, strain);
            }
        }

        for (int i = 0; i < mesh.Nodes; i++)
        {
            double excess = Slope(q, i).Length - 1;
            sum += 0.5 * SlopeTie(mesh, tie, i) * excess * excess;
        }

        return sum;
    }

    /// <summary>Adds the gradient [N, N·mm] and the tangent stiffness of the wire.</summary>
    /// <param name="mesh">Nodes and rest shape.</param>
    /// <param name="law">Section law.</param>
    /// <param name="tie">γ EA [N].</param>
    /// <param name="q">State, 8 a node.</param>
    /// <param name="gradient">8 a node, added to.</param>
    /// <param name="tangent">Added to.</param>
    /// <returns>Energy of the wire [N·mm], as <see cref="Energy"/>.</returns>
    public static double Add<TLaw>(
        RodMesh mesh, in TLaw law, double tie, ReadOnlySpan<double> q, Span<double> gradient, BlockTridiagonal tangent)
        where TLaw : struct, ISectionLaw
    {
        ref double state = ref MemoryMarshal.GetReference(q);
        ref double weights = ref MemoryMarshal.GetReference(mesh.Weights);
        ref double g0 = ref MemoryMarshal.GetReference(gradient);
        ReadOnlySpan<RestPoint> rest = mesh.Rest;
        Span<double> local = stackalloc double[8];
        Span<double> rows = stackalloc double[32];
        Span<double> hessian = stackalloc double[64];
        PointKernel kernel = default;
        double energy = 0;
        for (int e = 0; e < mesh.Elements; e++)
        {
            double half = mesh.Length(e) / 2;
            for (int g = 0; g < RodMesh.Points; g++)
            {
                int point = RodMesh.Points * e + g;
                Local(ref state, ref weights, e, point, out Vector3 p, out Vector3 c, out double turn, out double rate);
                ref readonly RestPoint at = ref rest[point];
                kernel.Evaluate(at, p, c, turn, rate);
                energy += half * law.Respond(
                    point, kernel.Strain, out SectionForce force, out SectionTangent stiffness);
                kernel.Gradient(force, local);
                kernel.StrainRows(rows);
                kernel.Geometric(at, force, hessian);
                AddMaterial(stiffness, rows, hessian);
                Scatter(ref weights, point, half, local, hessian, ref g0, e, tangent);
            }
        }

        for (int i = 0; i < mesh.Nodes; i++)
            energy += AddSlopeTie(SlopeTie(mesh, tie, i), q, i, gradient, tangent);

        // The middle turn of the element after the last node does not exist.
        tangent.Diagonal(mesh.Nodes - 1)[63] += 1;
        return energy;
    }

    /// <summary>Adds the gradient alone [N, N·mm], and returns the energy [N·mm].</summary>
    /// <param name="mesh">Nodes and rest shape.</param>
    /// <param name="law">Section law.</param>
    /// <param name="tie">γ EA [N].</param>
    /// <param name="q">State, 8 a node.</param>
    /// <param name="gradient">Added to, 8 a node.</param>
    public static double AddGradient<TLaw>(
        RodMesh mesh, in TLaw law, double tie, ReadOnlySpan<double> q, Span<double> gradient)
        where TLaw : struct, ISectionLaw
    {
        ref double state = ref MemoryMarshal.GetReference(q);
        ref double weights = ref MemoryMarshal.GetReference(mesh.Weights);
        ref double g0 = ref MemoryMarshal.GetReference(gradient);
        ReadOnlySpan<RestPoint> rest = mesh.Rest;
        Span<double> local = stackalloc double[8];
        PointKernel kernel = default;
        double energy = 0;
        for (int e = 0; e < mesh.Elements; e++)
        {
            double half = mesh.Length(e) / 2;
            for (int g = 0; g < RodMesh.Points; g++)
            {
                int point = RodMesh.Points * e + g;
                Local(ref state, ref weights, e, point, out Vector3 p, out Vector3 c, out double turn, out double rate);
                kernel.Evaluate(rest[point], p, c, turn, rate);
                energy += half * law.Respond(point, kernel.Strain, out SectionForce force, out _);
                kernel.Gradient(force, local);
                ScatterGradient(ref weights, point, half, local, ref g0, e);
            }
        }

        for (int i = 0; i < mesh.Nodes; i++)
        {
            Vector3 slope = Slope(q, i);
            double l = slope.Length;
            double pull = SlopeTie(mesh, tie, i) * (l - 1);
            Vector3 along = slope * (pull / l);
            energy += pull * (l - 1) / 2;
            gradient[8 * i + 3] += along.X;
            gradient[8 * i + 4] += along.Y;
            gradient[8 * i + 5] += along.Z;
        }

        return energy;
    }

    /// <summary>Slope dr/ds of a node.</summary>
    public static Vector3 Slope(ReadOnlySpan<double> q, int node) => new(q[8 * node + 3], q[8 * node + 4], q[8 * node
        + 5]);

    /// <summary>Position of a node [mm].</summary>
    public static Vector3 Position(ReadOnlySpan<double> q, int node) => new(q[8 * node], q[8 * node + 1], q[8 * node
        + 2]);

    /// <summary>Strain at a Gauss point.</summary>
    public static SectionStrain StrainAt(RodMesh mesh, ReadOnlySpan<double> q, int point)
    {
        ref double state = ref MemoryMarshal.GetReference(q);
        ref double weights = ref MemoryMarshal.GetReference(mesh.Weights);
        Local(ref state, ref weights, point / RodMesh.Points, point, out Vector3 p, out Vector3 c, out double turn,
            out double rate);
        return PointKernel.StrainOf(mesh.Rest[point], p, c, turn, rate);
    }

    private static double SlopeTie(RodMesh mesh, double tie, int node)
    {
        double length = (node > 0 ? mesh.Length(node - 1) : 0) + (node < mesh.Elements ? mesh.Length(node) : 0);
        return tie * length / 2;
    }

    // ½ k (|r′| − 1)²: gradient k (l − 1) t, second derivative k (t tᵀ + (l − 1)/l (I − t tᵀ)).
    private static double AddSlopeTie(
        double k, ReadOnlySpan<double> q, int node, Span<double> gradient, BlockTridiagonal tangent)
    {
        Vector3 slope = Slope(q, node);
        double l = slope.Length;
        Vector3 t = slope / l;
        double along = k * (l - 1);
        gradient[8 * node + 3] += along * t.X;
        gradient[8 * node + 4] += along * t.Y;
        gradient[8 * node + 5] += along * t.Z;

        Span<double> d = tangent.Diagonal(node);
        Span<double> unit = [t.X, t.Y, t.Z];
        double across = along / l;
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
                d[8 * (3 + i) + 3 + j] += (k - across) * unit[i] * unit[j] + (i == j ? across : 0);
        }

        return along * (l - 1) / 2;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Local(
        ref double state, ref double weights, int element, int point,
        out Vector3 p, out Vector3 c, out double turn, out double rate)
    {
        nuint w = (nuint)(point * HermiteWeights.Count);
        Vector512<double> start = Vector512.LoadUnsafe(ref state, (nuint)(8 * element));
        Vector512<double> end = Vector512.LoadUnsafe(ref state, (nuint)(8 * element + 8));
        Vector512<double> first = start * Vector512.LoadUnsafe(ref weights, w)
            + end * Vector512.LoadUnsafe(ref weights, w + 16);
        Vector512<double> second = start * Vector512.LoadUnsafe(ref weights, w + 8)
            + end * Vector512.LoadUnsafe(ref weights, w + 24);
        p = new Vector3(first[0] + first[3], first[1] + first[4], first[2] + first[5]);
        c = new Vector3(second[0] + second[3], second[1] + second[4], second[2] + second[5]);
        turn = first[6] + first[7];
        rate = second[6] + second[7];
    }

    // H += Bᵀ C B, B the four rows of strain derivatives.
    private static void AddMaterial(in SectionTangent s, Span<double> rows, Span<double> hessian)
    {
        ref double r = ref MemoryMarshal.GetReference(rows);
        ref double h = ref MemoryMarshal.GetReference(hessian);
        Vector512<double> axial = Vector512.LoadUnsafe(ref r);
        Vector512<double> thickness = Vector512.LoadUnsafe(ref r, 8);
        Vector512<double> width = Vector512.LoadUnsafe(ref r, 16);
        Vector512<double> twist = Vector512.LoadUnsafe(ref r, 24);
        Vector512<double> onAxial = axial * s.AA + thickness * s.AT + width * s.AW + twist * s.AX;
        Vector512<double> onThickness = axial * s.AT + thickness * s.TT + width * s.TW + twist * s.TX;
        Vector512<double> onWidth = axial * s.AW + thickness * s.TW + width * s.WW + twist * s.WX;
        Vector512<double> onTwist = axial * s.AX + thickness * s.TX + width * s.WX + twist * s.XX;
        for (int i = 0; i < 8; i++)
        {
            Vector512<double> row = Vector512.LoadUnsafe(ref h, (nuint)(8 * i));
            row += onAxial * rows[i] + onThickness * rows[8 + i] + onWidth * rows[16 + i] + onTwist * rows[24 + i];
            row.StoreUnsafe(ref h, (nuint)(8 * i));
        }
    }

    // From (P, C, θ, θ′) to the sixteen unknowns of the element's two nodes, times the weight of the point.
    private static void Scatter(
        ref double weights, int point, double weight, Span<double> local, Span<double> hessian,
        ref double gradient, int element, BlockTridiagonal tangent)
    {
        ScatterGradient(ref weights, point, weight, local, ref gradient, element);
        nuint w = (nuint)(point * HermiteWeights.Count);
        Vector512<double> start1 = Vector512.LoadUnsafe(ref weights, w);
        Vector512<double> start2 = Vector512.LoadUnsafe(ref weights, w + 8);
        Vector512<double> end1 = Vector512.LoadUnsafe(ref weights, w + 16);
        Vector512<double> end2 = Vector512.LoadUnsafe(ref weights, w + 24);

        ref double h = ref MemoryMarshal.GetReference(hessian);
        Span<double> toStart = stackalloc double[64];
        Span<double> toEnd = stackalloc double[64];
        ref double s0 = ref MemoryMarshal.GetReference(toStart);
        ref double e0 = ref MemoryMarshal.GetReference(toEnd);
        for (int i = 0; i < 8; i++)
        {
            Vector512<double> row = Vector512.LoadUnsafe(ref h, (nuint)(8 * i)) * weight;
            Spread(row, start1, start2).StoreUnsafe(ref s0, (nuint)(8 * i));
            Spread(row, end1, end2).StoreUnsafe(ref e0, (nuint)(8 * i));
        }

        ref double dStart = ref MemoryMarshal.GetReference(tangent.Diagonal(element));
        ref double eStart = ref MemoryMarshal.GetReference(tangent.Coupling(element));
        ref double dEnd = ref MemoryMarshal.GetReference(tangent.Diagonal(element + 1));
        ref double wPoint = ref Unsafe.Add(ref weights, (int)w);
        AddRows(ref wPoint, 0, ref s0, ref dStart);
        AddRows(ref wPoint, 0, ref e0, ref eStart);
        AddRows(ref wPoint, 16, ref e0, ref dEnd);
    }

    private static void ScatterGradient(
        ref double weights, int point, double weight, Span<double> local, ref double gradient, int element)
    {
        nuint w = (nuint)(point * HermiteWeights.Count);
        Vector512<double> g = Vector512.LoadUnsafe(ref MemoryMarshal.GetReference(local)) * weight;
        nuint at = (nuint)(8 * element);
        Vector512<double> onStart = Spread(
            g, Vector512.LoadUnsafe(ref weights, w), Vector512.LoadUnsafe(ref weights, w + 8));
        Vector512<double> onEnd = Spread(
            g, Vector512.LoadUnsafe(ref weights, w + 16), Vector512.LoadUnsafe(ref weights, w + 24));
        (Vector512.LoadUnsafe(ref gradient, at) + onStart).StoreUnsafe(ref gradient, at);
        (Vector512.LoadUnsafe(ref gradient, at + 8) + onEnd).StoreUnsafe(ref gradient, at + 8);
    }

    // Row of unknown i: its weight on P (or θ) times that row of the half-spread matrix, plus its weight on C (or θ′).
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void AddRows(ref double weights, int from, ref double half, ref double target)
    {
        for (int i = 0; i < 8; i++)
        {
            int first = i < 6 ? i % 3 : 6;
            int second = i < 6 ? 3 + i % 3 : 7;
            Vector512<double> row = Vector512.LoadUnsafe(ref target, (nuint)(8 * i));
            row += Vector512.LoadUnsafe(ref half, (nuint)(8 * first)) * Unsafe.Add(ref weights, from + i)
                + Vector512.LoadUnsafe(ref half, (nuint)(8 * second)) * Unsafe.Add(ref weights, from + 8 + i);
            row.StoreUnsafe(ref target, (nuint)(8 * i));
        }
    }

    // (P, C, θ, θ′) to the eight unknowns of a node.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Spread(Vector512<double> v, Vector512<double> first, Vector512<double> second) =>
        Vector512.Shuffle(v, Vector512.Create(0L, 1, 2, 0, 1, 2, 6, 6)) * first
        + Vector512.Shuffle(v, Vector512.Create(3L, 4, 5, 3, 4, 5, 7, 7)) * second;
}
