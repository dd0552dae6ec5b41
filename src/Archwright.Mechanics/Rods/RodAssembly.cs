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
/// Sketch of the cost: about 500 scalar operations a point for the kinematics, 300 operations on vectors of four for
/// the assembly; near 0.8 µs an element, a quarter of a microsecond for its share of the factorisation.
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
    /// <param name="tension">Forces along the wire as the last step foresaw them.</param>
    /// <returns>Energy of the wire [N·mm], as <see cref="Energy"/>.</returns>
    public static double Add<TLaw>(
        RodMesh mesh, in TLaw law, double tie, ReadOnlySpan<double> q, Span<double> gradient, BlockTridiagonal tangent,
        Tension tension)
        where TLaw : struct, ISectionLaw
    {
        ref double state = ref MemoryMarshal.GetReference(q);
        ref double weights = ref MemoryMarshal.GetReference(mesh.Weights);
        ref double g0 = ref MemoryMarshal.GetReference(gradient);
        ReadOnlySpan<RestPoint> rest = mesh.Rest;
        Span<double> local = stackalloc double[8];
        Span<double> rows = stackalloc double[32];
        Span<double> hessian = stackalloc double[64];
        Span<double> work = stackalloc double[128];
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
                double along = tension.AtPoint(point, force.Axial, stiffness.AA);
                kernel.Geometric(at, force with { Axial = along }, hessian);
                AddMaterial(stiffness, rows, hessian);
                Scatter(ref weights, point, half, local, hessian, work, ref g0, e, tangent);
            }
        }

        for (int i = 0; i < mesh.Nodes; i++)
            energy += AddSlopeTie(SlopeTie(mesh, tie, i), q, i, gradient, tangent, tension);

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
        double k, ReadOnlySpan<double> q, int node, Span<double> gradient, BlockTridiagonal tangent, Tension tension)
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
        double across = tension.AtNode(node, along, k) / l;
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
                d[8 * (3 + i) + 3 + j] += (k - across) * unit[i] * unit[j] + (i == j ? across : 0);
        }

        return along * (l - 1) / 2;
    }

    /// <summary>Slope dr/ds at a Gauss point, or its change where <paramref name="state"/> is one.</summary>
    public static Vector3 Slope(ref double state, ref double weights, int element, int point)
    {
        ref double w = ref Unsafe.Add(ref weights, point * HermiteWeights.Count);
        ref double q = ref Unsafe.Add(ref state, 8 * element);
        Vector256<double> low = Vector256.LoadUnsafe(ref q) * Vector256.LoadUnsafe(ref w)
            + Vector256.LoadUnsafe(ref q, 8) * Vector256.LoadUnsafe(ref w, 16);
        Vector256<double> high = Vector256.LoadUnsafe(ref q, 4) * Vector256.LoadUnsafe(ref w, 4)
            + Vector256.LoadUnsafe(ref q, 12) * Vector256.LoadUnsafe(ref w, 20);
        return new Vector3(low[0] + low[3], low[1] + high[0], low[2] + high[1]);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Local(
        ref double state, ref double weights, int element, int point,
        out Vector3 p, out Vector3 c, out double turn, out double rate)
    {
        ref double w = ref Unsafe.Add(ref weights, point * HermiteWeights.Count);
        ref double q = ref Unsafe.Add(ref state, 8 * element);
        Vector256<double> startLow = Vector256.LoadUnsafe(ref q);
        Vector256<double> startHigh = Vector256.LoadUnsafe(ref q, 4);
        Vector256<double> endLow = Vector256.LoadUnsafe(ref q, 8);
        Vector256<double> endHigh = Vector256.LoadUnsafe(ref q, 12);
        Vector256<double> low = startLow * Vector256.LoadUnsafe(ref w) + endLow * Vector256.LoadUnsafe(ref w, 16);
        Vector256<double> high = startHigh * Vector256.LoadUnsafe(ref w, 4) + endHigh * Vector256.LoadUnsafe(ref w, 20);
        p = new Vector3(low[0] + low[3], low[1] + high[0], low[2] + high[1]);
        turn = high[2] + high[3];
        low = startLow * Vector256.LoadUnsafe(ref w, 8) + endLow * Vector256.LoadUnsafe(ref w, 24);
        high = startHigh * Vector256.LoadUnsafe(ref w, 12) + endHigh * Vector256.LoadUnsafe(ref w, 28);
        c = new Vector3(low[0] + low[3], low[1] + high[0], low[2] + high[1]);
        rate = high[2] + high[3];
    }

    // H += Bᵀ C B, B the four rows of strain derivatives. In halves of a row, here and below: a machine whose vectors
    // hold four numbers does operations on eight by calls, which took most of the time of an assembly.
    private static void AddMaterial(in SectionTangent s, Span<double> rows, Span<double> hessian)
    {
        ref double r = ref MemoryMarshal.GetReference(rows[..32]);
        ref double h = ref MemoryMarshal.GetReference(hessian[..64]);
        for (nuint half = 0; half < 8; half += 4)
        {
            Vector256<double> axial = Vector256.LoadUnsafe(ref r, half);
            Vector256<double> thickness = Vector256.LoadUnsafe(ref r, half + 8);
            Vector256<double> width = Vector256.LoadUnsafe(ref r, half + 16);
            Vector256<double> twist = Vector256.LoadUnsafe(ref r, half + 24);
            Vector256<double> onAxial = axial * s.AA + thickness * s.AT + width * s.AW + twist * s.AX;
            Vector256<double> onThickness = axial * s.AT + thickness * s.TT + width * s.TW + twist * s.TX;
            Vector256<double> onWidth = axial * s.AW + thickness * s.TW + width * s.WW + twist * s.WX;
            Vector256<double> onTwist = axial * s.AX + thickness * s.TX + width * s.WX + twist * s.XX;
            for (int i = 0; i < 8; i++)
            {
                nuint at = (nuint)(8 * i) + half;
                (Vector256.LoadUnsafe(ref h, at)
                    + onAxial * Unsafe.Add(ref r, i) + onThickness * Unsafe.Add(ref r, 8 + i)
                    + onWidth * Unsafe.Add(ref r, 16 + i) + onTwist * Unsafe.Add(ref r, 24 + i))
                    .StoreUnsafe(ref h, at);
            }
        }
    }

    // From (P, C, θ, θ′) to the sixteen unknowns of the element's two nodes, times the weight of the point. `work`
    // holds the columns spread so: eight rows for the start node, eight for the end.
    private static void Scatter(
        ref double weights, int point, double weight, Span<double> local, Span<double> hessian, Span<double> work,
        ref double gradient, int element, BlockTridiagonal tangent)
    {
        ScatterGradient(ref weights, point, weight, local, ref gradient, element);
        ref double w = ref Unsafe.Add(ref weights, point * HermiteWeights.Count);
        ref double start = ref MemoryMarshal.GetReference(work[..128]);
        ref double end = ref Unsafe.Add(ref start, 64);
        SpreadColumns(ref w, weight, ref MemoryMarshal.GetReference(hessian[..64]), ref start, ref end);

        // Row of unknown i: its weight on P (or θ) times that row of the spread matrix, plus its weight on C (or θ′).
        ref double dStart = ref MemoryMarshal.GetReference(tangent.Diagonal(element));
        ref double eStart = ref MemoryMarshal.GetReference(tangent.Coupling(element));
        ref double dEnd = ref MemoryMarshal.GetReference(tangent.Diagonal(element + 1));
        for (int i = 0; i < 8; i++)
        {
            double onStart = Unsafe.Add(ref w, i);
            double onStartRate = Unsafe.Add(ref w, 8 + i);
            double onEnd = Unsafe.Add(ref w, 16 + i);
            double onEndRate = Unsafe.Add(ref w, 24 + i);
            for (nuint half = 0; half < 8; half += 4)
            {
                nuint at = (nuint)(8 * i) + half;
                nuint first = (nuint)(8 * FirstOf[i]) + half;
                nuint second = (nuint)(8 * SecondOf[i]) + half;
                Vector256<double> toEnd = Vector256.LoadUnsafe(ref end, first);
                Vector256<double> toEndRate = Vector256.LoadUnsafe(ref end, second);
                (Vector256.LoadUnsafe(ref dStart, at) + Vector256.LoadUnsafe(ref start, first) * onStart
                    + Vector256.LoadUnsafe(ref start, second) * onStartRate).StoreUnsafe(ref dStart, at);
                (Vector256.LoadUnsafe(ref eStart, at) + toEnd * onStart + toEndRate * onStartRate)
                    .StoreUnsafe(ref eStart, at);
                (Vector256.LoadUnsafe(ref dEnd, at) + toEnd * onEnd + toEndRate * onEndRate)
                    .StoreUnsafe(ref dEnd, at);
            }
        }
    }

    private static ReadOnlySpan<byte> FirstOf => [0, 1, 2, 0, 1, 2, 6, 6];

    private static ReadOnlySpan<byte> SecondOf => [3, 4, 5, 3, 4, 5, 7, 7];

    private static void ScatterGradient(
        ref double weights, int point, double weight, Span<double> local, ref double gradient, int element)
    {
        ref double w = ref Unsafe.Add(ref weights, point * HermiteWeights.Count);
        ref double g = ref MemoryMarshal.GetReference(local[..8]);
        ref double at = ref Unsafe.Add(ref gradient, 8 * element);
        var row = new SpreadRow(
            Vector256.LoadUnsafe(ref g) * weight, Vector256.LoadUnsafe(ref g, 4) * weight);
        (Vector256.LoadUnsafe(ref at) + row.Low(ref w, 0)).StoreUnsafe(ref at);
        (Vector256.LoadUnsafe(ref at, 4) + row.High(ref w, 0)).StoreUnsafe(ref at, 4);
        (Vector256.LoadUnsafe(ref at, 8) + row.Low(ref w, 16)).StoreUnsafe(ref at, 8);
        (Vector256.LoadUnsafe(ref at, 12) + row.High(ref w, 16)).StoreUnsafe(ref at, 12);
    }

    private static void SpreadColumns(
        ref double weights, double weight, ref double hessian, ref double start, ref double end)
    {
        for (nuint i = 0; i < 64; i += 8)
        {
            var row = new SpreadRow(
                Vector256.LoadUnsafe(ref hessian, i) * weight, Vector256.LoadUnsafe(ref hessian, i + 4) * weight);
            row.Low(ref weights, 0).StoreUnsafe(ref start, i);
            row.High(ref weights, 0).StoreUnsafe(ref start, i + 4);
            row.Low(ref weights, 16).StoreUnsafe(ref end, i);
            row.High(ref weights, 16).StoreUnsafe(ref end, i + 4);
        }
    }

    // (P, C, θ, θ′) laid out as the eight unknowns of a node: (P, P, θ, θ) for the first weights, (C, C, θ′, θ′) for
    // the second.
    private readonly ref struct SpreadRow
    {
        private readonly Vector256<double> _firstLow, _firstHigh, _secondLow, _secondHigh;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public SpreadRow(Vector256<double> low, Vector256<double> high)
        {
            _firstLow = Vector256.Shuffle(low, Vector256.Create(0L, 1, 2, 0));
            _firstHigh = Vector256.ConditionalSelect(
                Vector256.Create(0L, 0, -1, -1).AsDouble(), Vector256.Shuffle(high, Vector256.Create(2L, 2, 2, 2)),
                Vector256.Shuffle(low, Vector256.Create(1L, 2, 1, 2)));
            _secondLow = Vector256.ConditionalSelect(
                Vector256.Create(0L, -1, -1, 0).AsDouble(), Vector256.Shuffle(high, Vector256.Create(0L, 0, 1, 0)),
                Vector256.Shuffle(low, Vector256.Create(3L, 3, 3, 3)));
            _secondHigh = Vector256.Shuffle(high, Vector256.Create(0L, 1, 3, 3));
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public Vector256<double> Low(ref double weights, nuint from) =>
            _firstLow * Vector256.LoadUnsafe(ref weights, from)
            + _secondLow * Vector256.LoadUnsafe(ref weights, from + 8);

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public Vector256<double> High(ref double weights, nuint from) =>
            _firstHigh * Vector256.LoadUnsafe(ref weights, from + 4)
            + _secondHigh * Vector256.LoadUnsafe(ref weights, from + 12);
    }
}
