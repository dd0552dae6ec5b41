using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Archwright.Mechanics.Sections;
using V = System.Runtime.Intrinsics.Vector256<double>;

namespace Archwright.Mechanics.Alloys;

/// <summary>Fibres of a <see cref="Superelastic"/> alloy.</summary>
/// <remarks>
/// State: martensite as a pair Z, its length ξ the share and its direction m that of the strain it gives. In the plane
/// of <see cref="FibreAnswer"/>, x = S(ξ) s + ε_L Z. In a step, in this order:
/// <list type="number">
/// <item>Where m·s &lt; k L(ξ), Z shrinks along itself until m·s = k L(ξ), or is gone.</item>
/// <item>Where |s| &gt; k U(ξ) and ξ &lt; 1, Z grows along s: Z + λ n, n = (x − ε_L Z)/|x − ε_L Z|, until |s| = k U(ξ),
/// or ξ = 1.</item>
/// </list>
/// k is the asymmetry of the direction: 1 in tension, (1 + α)/(1 − α) in compression, their mean in pure shear. Without
/// shear this is the uniaxial flag, with its closed solution of a line (<see cref="OnLine"/>); with shear growing or
/// turning, three Newton steps on λ. Stated in docs/theory/alloys.md, equations (1) to (8).
/// </remarks>
internal struct FlagLaw : IFibreLaw
{
    private const double Turned = 1e-13;
    private const int NewtonSteps = 3;

    private readonly Superelastic _alloy;
    private readonly double _soft;          // 1/E_A
    private readonly double _softer;        // 1/E_M − 1/E_A
    private readonly double _strain;        // ε_L
    private readonly double _kMean;
    private readonly double _kHalf;
    private double _forward;
    private double _forwardRise;
    private double _reverse;
    private double _reverseRise;

    public FlagLaw(Superelastic alloy, double temperature)
    {
        _alloy = alloy;
        SuperelasticFigures f = alloy.Figures;
        _soft = 1 / f.YoungAustenite;
        _softer = 1 / f.YoungMartensite - _soft;
        _strain = f.TransformationStrain;
        double k = (1 + f.Asymmetry) / (1 - f.Asymmetry);
        _kMean = (k + 1) / 2;
        _kHalf = (k - 1) / 2;
        _forwardRise = f.ForwardFinish - f.ForwardStart;
        _reverseRise = f.ReverseStart - f.ReverseFinish;
        Warm(temperature);
    }

    /// <inheritdoc/>
    public double ElasticStrain { get; private set; }

    /// <inheritdoc/>
    public readonly bool ReturnsWhole => _reverse > 0;

    /// <inheritdoc/>
    public void Warm(double temperature)
    {
        SuperelasticFigures f = _alloy.Figures;
        double at = Math.Max(temperature, _alloy.ColdestTemperature);
        double shift = f.ClausiusClapeyron * (at - f.ReferenceTemperature);
        _forward = f.ForwardStart + shift;
        _reverse = f.ReverseFinish + shift;
        ElasticStrain = _forward * _soft * (_kMean - Math.Abs(_kHalf));
    }

    /// <inheritdoc/>
    public readonly V Transformed(V normalState, V shearState) =>
        Vector256.Sqrt(normalState * normalState + shearState * shearState);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Respond(V normal, V shear, V normalState, V shearState, out FibreAnswer answer)
    {
        if (TryElastic(normal, shear, normalState, shearState, out answer))
            return;

        V share = Vector256.Sqrt(normalState * normalState + shearState * shearState);
        V soft = share * _softer + Vector256.Create(_soft);
        answer.NormalState = normalState;
        answer.ShearState = shearState;
        answer.NormalNormal = V.One / soft;
        answer.ShearShear = answer.NormalNormal;
        answer.NormalShear = V.Zero;
        answer.Work = V.Zero;
        answer.Normal = (normal - normalState * _strain) / soft;
        answer.Shear = (shear - shearState * _strain) / soft;

        Shrink(normal, shear, ref share, ref soft, ref answer);
        Grow(normal, shear, ref share, ref soft, ref answer);
        answer.Work += 0.5 * soft * (answer.Normal * answer.Normal + answer.Shear * answer.Shear);
    }

    // Four new fibres below the line, as those near the middle of most sections: no root and no division.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly bool TryElastic(V normal, V shear, V normalState, V shearState, out FibreAnswer answer)
    {
        Unsafe.SkipInit(out answer);
        V squared = normal * normal + shear * shear;
        V beyond = Vector256.GreaterThanOrEqual(squared, Vector256.Create(ElasticStrain * ElasticStrain));
        V used = Vector256.Abs(normalState) + Vector256.Abs(shearState);
        if (Any(beyond | Vector256.GreaterThan(used, V.Zero)))
            return false;

        V young = Vector256.Create(1 / _soft);
        answer.Normal = normal * young;
        answer.Shear = shear * young;
        answer.NormalNormal = young;
        answer.ShearShear = young;
        answer.NormalShear = V.Zero;
        answer.NormalState = V.Zero;
        answer.ShearState = V.Zero;
        answer.Work = 0.5 * young * squared;
        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly void Shrink(V normal, V shear, ref V share, ref V soft, ref FibreAnswer answer)
    {
        V some = Vector256.GreaterThan(share, V.Zero);
        V inverse = Vector256.ConditionalSelect(some, V.One / share, V.Zero);
        V m = answer.NormalState * inverse;
        V mt = answer.ShearState * inverse;
        V k = Vector256.Create(_kMean) - m * _kHalf;
        V along = m * answer.Normal + mt * answer.Shear;
        V shrinks = some & Vector256.LessThan(along, k * (Vector256.Create(_reverse) + share * _reverseRise));
        if (!Any(shrinks))
            return;

        V line = OnLine(m * normal + mt * shear, k * _reverse, k * _reverseRise);
        V left = Vector256.ConditionalSelect(
            shrinks, Vector256.Min(Vector256.Max(line, V.Zero), share), share);
        V from = k * (Vector256.Create(_reverse) + share * _reverseRise);
        V to = k * (Vector256.Create(_reverse) + left * _reverseRise);
        answer.Work += (left - share) * AlongLine(from, to);
        share = left;
        soft = Vector256.ConditionalSelect(shrinks, left * _softer + Vector256.Create(_soft), soft);
        answer.NormalState = Vector256.ConditionalSelect(shrinks, left * m, answer.NormalState);
        answer.ShearState = Vector256.ConditionalSelect(shrinks, left * mt, answer.ShearState);
        answer.Normal = (normal - answer.NormalState * _strain) / soft;
        answer.Shear = (shear - answer.ShearState * _strain) / soft;

        // Along m the line's tangent, across it elastic; where all has turned back, elastic.
        V stiff = V.One / soft;
        V rise = k * _reverseRise;
        V inside = shrinks & Vector256.GreaterThan(left, V.Zero);
        V less = Vector256.ConditionalSelect(
            inside, rise / (rise * soft + to * _softer + Vector256.Create(_strain)) - stiff, V.Zero);
        answer.NormalNormal = stiff + less * m * m;
        answer.ShearShear = stiff + less * mt * mt;
        answer.NormalShear = less * m * mt;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly void Grow(V normal, V shear, ref V share, ref V soft, ref FibreAnswer answer)
    {
        V size = Vector256.Sqrt(answer.Normal * answer.Normal + answer.Shear * answer.Shear);
        V inverse = V.One / Vector256.Max(size, Vector256.Create(1e-30));
        V n = answer.Normal * inverse;
        V t = answer.Shear * inverse;
        V k = Vector256.Create(_kMean) - n * _kHalf;
        V from = k * (Vector256.Create(_forward) + share * _forwardRise);
        V grows = Vector256.GreaterThan(size, from) & Vector256.LessThan(share, V.One);
        if (!Any(grows))
            return;

        V length = size * soft;                                         // |x − ε_L Z|
        V c = answer.NormalState * n + answer.ShearState * t;
        V off = Vector256.Max(share * share - c * c, V.Zero);           // of Z, what lies across n, squared
        V more = Vector256.Max(OnLine(length + c * _strain, k * _forward, k * _forwardRise) - c, V.Zero);
        if (Any(grows & Vector256.GreaterThan(off, Vector256.Create(Turned))))
            more = Turning(length, c, off, k, more);

        V after = Vector256.Sqrt(off + (c + more) * (c + more));
        V full = Vector256.GreaterThanOrEqual(after, V.One);
        more = Vector256.ConditionalSelect(
            full, Vector256.Sqrt(Vector256.Max(V.One - off, V.Zero)) - c, more);
        more = Vector256.ConditionalSelect(grows, more, V.Zero);
        after = Vector256.ConditionalSelect(grows, Vector256.Min(after, V.One), share);
        V to = k * (Vector256.Create(_forward) + after * _forwardRise);
        answer.Work += Vector256.ConditionalSelect(
            grows,
            more * (0.5 * _strain) * (from + to)
                + (after - share) * (_softer / 6) * (from * from + from * to + to * to),
            V.Zero);
        answer.NormalState += more * n;
        answer.ShearState += more * t;
        soft = Vector256.ConditionalSelect(grows, after * _softer + Vector256.Create(_soft), soft);
        answer.Normal = (normal - answer.NormalState * _strain) / soft;
        answer.Shear = (shear - answer.ShearState * _strain) / soft;

        V inside = grows & Vector256.LessThan(after, V.One);
        V turn = (c + more) / Vector256.Max(after, Vector256.Create(1e-30));    // dξ/dλ
        V rise = k * _forwardRise * turn;
        V along = Vector256.ConditionalSelect(
            inside, rise / (rise * soft + to * _softer * turn + Vector256.Create(_strain)), V.One / soft);
        V across = (V.One - more * _strain / Vector256.Max(length, Vector256.Create(1e-30))) / soft;
        answer.NormalNormal = Vector256.ConditionalSelect(grows, along * n * n + across * t * t, answer.NormalNormal);
        answer.ShearShear = Vector256.ConditionalSelect(grows, along * t * t + across * n * n, answer.ShearShear);
        answer.NormalShear = Vector256.ConditionalSelect(grows, (along - across) * n * t, answer.NormalShear);
        share = after;
    }

    // S(ξ) k U(ξ) + ε_L λ = |x − ε_L Z| with ξ² = (Z·n + λ)² + off; nearly linear, so three steps reach rounding.
    private readonly V Turning(V length, V c, V off, V k, V more)
    {
        for (int pass = 0; pass < NewtonSteps; pass++)
        {
            V reach = c + more;
            V share = Vector256.Sqrt(off + reach * reach);
            V turn = reach / Vector256.Max(share, Vector256.Create(1e-30));
            V soft = share * _softer + Vector256.Create(_soft);
            V stress = k * (Vector256.Create(_forward) + share * _forwardRise);
            V miss = soft * stress + more * _strain - length;
            V slope = (_softer * stress + soft * k * _forwardRise) * turn + Vector256.Create(_strain);
            more = Vector256.Max(more - miss / slope, V.Zero);
        }

        return more;
    }

    // Share ξ on the line σ = s0 + b ξ at the strain e = σ S(ξ) + ε_L ξ:
    // b ΔS ξ² + (b S_A + s0 ΔS + ε_L) ξ + s0 S_A − e = 0, in the form that has no cancellation.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly V OnLine(V e, V s0, V b)
    {
        V square = b * _softer;
        V linear = b * _soft + s0 * _softer + Vector256.Create(_strain);
        V rest = s0 * _soft - e;
        V root = Vector256.Sqrt(Vector256.Max(linear * linear - 4 * square * rest, V.Zero));
        return -2 * rest / (linear + root);
    }

    // ∫ (ε_L σ + ½ ΔS σ²) dξ over a line from one stress to another, for each unit of ξ.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly V AlongLine(V from, V to) =>
        (from + to) * (0.5 * _strain) + (from * from + from * to + to * to) * (_softer / 6);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool Any(V mask) => mask.AsInt64() != Vector256<long>.Zero;
}
