using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using V = System.Runtime.Intrinsics.Vector256<double>;

namespace Archwright.Mechanics.Sections;

/// <summary>A cross-section made of fibres, each with its own history.</summary>
/// <remarks>
/// Plane sections, and Saint-Venant's shear: a fibre at (x₂, x₃) has ε = axial − κw x₂ + κt x₃ and gγ = b τ, b its
/// lever. Forces are sums over the fibres, the tangent likewise, and symmetric. As long as a section is new and no
/// fibre reaches the limit of the alloy, the closed elastic form answers: it is the same to rounding, and most of an
/// arch is never bent beyond it.
/// </remarks>
internal readonly struct FibreSection<TLaw> : ISectionLaw
    where TLaw : struct, IFibreLaw
{
    private readonly TLaw _law;
    private readonly FibreGrid _grid;
    private readonly FibreMemory _memory;
    private readonly ElasticSection _elastic;
    private readonly double _limit;

    public FibreSection(in TLaw law, FibreGrid grid, FibreMemory memory, in ElasticSection elastic)
    {
        _law = law;
        _grid = grid;
        _memory = memory;
        _elastic = elastic;
        _limit = law.ElasticStrain;
    }

    /// <inheritdoc/>
    public double Respond(int point, in SectionStrain strain, out SectionForce force, out SectionTangent tangent)
    {
        if (_memory.IsNew(point) && StaysElastic(strain))
            return _elastic.Respond(point, strain, out force, out tangent);

        return Sum(_law, _grid, strain, _memory.OfPoint(point), out force, out tangent);
    }

    /// <inheritdoc/>
    public double Energy(int point, in SectionStrain strain) => Respond(point, strain, out _, out _);

    /// <summary>Whether no fibre of a new section reaches the limit.</summary>
    public bool StaysElastic(in SectionStrain strain)
    {
        (double width, double thickness, double lever) = _grid.Reach;
        double bending = Math.Abs(strain.Axial) + Math.Abs(strain.OverWidth) * width
            + Math.Abs(strain.OverThickness) * thickness;
        double shear = strain.Twist * lever;
        return bending * bending + shear * shear <= _limit * _limit;
    }

    /// <summary>Force, tangent and work of the fibres [N].</summary>
    /// <param name="law">Law.</param>
    /// <param name="grid">Fibres.</param>
    /// <param name="strain">Strain of the section.</param>
    /// <param name="state">Committed state: normal parts of all fibres, then shear parts.</param>
    /// <param name="force">Answer.</param>
    /// <param name="tangent">∂force/∂strain.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]      // a wire is solved before the runtime has seen it twice
    public static double Sum(
        in TLaw law, FibreGrid grid, in SectionStrain strain, ReadOnlySpan<double> state,
        out SectionForce force, out SectionTangent tangent)
    {
        V n = V.Zero, mt = V.Zero, mw = V.Zero, t = V.Zero, work = V.Zero;
        V aa = V.Zero, at = V.Zero, aw = V.Zero, ax = V.Zero, tt = V.Zero;
        V tw = V.Zero, tx = V.Zero, ww = V.Zero, wx = V.Zero, xx = V.Zero;
        for (int i = 0; i < grid.Vectors; i++)
        {
            Fibres at4 = Fibres.Load(grid, i);
            (V normal, V shear) = at4.Strain(strain);
            nuint from = (nuint)(FibreGrid.Lanes * i);
            ref double z = ref MemoryMarshal.GetReference(state);
            law.Respond(
                normal, shear, Vector256.LoadUnsafe(ref z, from),
                Vector256.LoadUnsafe(ref z, from + (nuint)grid.Count), out FibreAnswer fibre);

            V normalForce = fibre.Normal * at4.Area;
            V shearForce = fibre.Shear * at4.Area;
            n += normalForce;
            mt += normalForce * at4.OverThickness;
            mw -= normalForce * at4.OverWidth;
            t += shearForce * at4.Lever;
            work += fibre.Work * at4.Area;

            V d = fibre.NormalNormal * at4.Area;
            V dt = d * at4.OverThickness;
            V dw = d * at4.OverWidth;
            aa += d;
            at += dt;
            aw -= dw;
            tt += dt * at4.OverThickness;
            tw -= dt * at4.OverWidth;
            ww += dw * at4.OverWidth;
            V mixed = fibre.NormalShear * at4.Area * at4.Lever;
            ax += mixed;
            tx += mixed * at4.OverThickness;
            wx -= mixed * at4.OverWidth;
            xx += fibre.ShearShear * at4.Area * at4.Lever * at4.Lever;
        }

        force = new SectionForce(
            Vector256.Sum(n), Vector256.Sum(mt), Vector256.Sum(mw), Vector256.Sum(t));
        tangent = new SectionTangent
        {
            AA = Vector256.Sum(aa),
            AT = Vector256.Sum(at),
            AW = Vector256.Sum(aw),
            AX = Vector256.Sum(ax),
            TT = Vector256.Sum(tt),
            TW = Vector256.Sum(tw),
            TX = Vector256.Sum(tx),
            WW = Vector256.Sum(ww),
            WX = Vector256.Sum(wx),
            XX = Vector256.Sum(xx),
        };
        return Vector256.Sum(work);
    }

    /// <summary>Takes a strain for good: the state becomes that after it.</summary>
    /// <returns>Whether any fibre is no longer new.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static bool Commit(in TLaw law, FibreGrid grid, in SectionStrain strain, Span<double> state)
    {
        V any = V.Zero;
        ref double z = ref MemoryMarshal.GetReference(state);
        for (int i = 0; i < grid.Vectors; i++)
        {
            (V normal, V shear) = Fibres.Load(grid, i).Strain(strain);
            nuint from = (nuint)(FibreGrid.Lanes * i);
            nuint second = from + (nuint)grid.Count;
            law.Respond(
                normal, shear, Vector256.LoadUnsafe(ref z, from), Vector256.LoadUnsafe(ref z, second),
                out FibreAnswer fibre);
            fibre.NormalState.StoreUnsafe(ref z, from);
            fibre.ShearState.StoreUnsafe(ref z, second);
            any += Vector256.Abs(fibre.NormalState) + Vector256.Abs(fibre.ShearState);
        }

        return Vector256.Sum(any) > 0;
    }

    /// <summary>Share of the section that is transformed.</summary>
    public static double Transformed(in TLaw law, FibreGrid grid, ReadOnlySpan<double> state)
    {
        V sum = V.Zero;
        V area = V.Zero;
        ref double z = ref MemoryMarshal.GetReference(state);
        for (int i = 0; i < grid.Vectors; i++)
        {
            nuint from = (nuint)(FibreGrid.Lanes * i);
            V at = Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(grid.Area), from);
            sum += at * law.Transformed(
                Vector256.LoadUnsafe(ref z, from), Vector256.LoadUnsafe(ref z, from + (nuint)grid.Count));
            area += at;
        }

        return Vector256.Sum(sum) / Vector256.Sum(area);
    }

    private readonly struct Fibres
    {
        public readonly V OverWidth;
        public readonly V OverThickness;
        public readonly V Area;
        public readonly V Lever;

        private Fibres(V overWidth, V overThickness, V area, V lever)
        {
            OverWidth = overWidth;
            OverThickness = overThickness;
            Area = area;
            Lever = lever;
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static Fibres Load(FibreGrid grid, int vector)
        {
            nuint from = (nuint)(FibreGrid.Lanes * vector);
            return new Fibres(
                Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(grid.OverWidth), from),
                Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(grid.OverThickness), from),
                Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(grid.Area), from),
                Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(grid.Lever), from));
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public (V Normal, V Shear) Strain(in SectionStrain strain) => (
            Vector256.Create(strain.Axial) - OverWidth * strain.OverWidth + OverThickness * strain.OverThickness,
            Lever * strain.Twist);
    }
}
