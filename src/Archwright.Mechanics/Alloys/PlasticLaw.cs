using System.Runtime.Intrinsics;
using Archwright.Mechanics.Sections;
using V = System.Runtime.Intrinsics.Vector256<double>;

namespace Archwright.Mechanics.Alloys;

/// <summary>Fibres of an <see cref="ElasticPlastic"/> alloy: radial return in the plane of normal strain and
/// shear.</summary>
/// <remarks>
/// State: plastic strain p. Trial η = E(x − p) − H p; where |η| exceeds the yield strength Y,
/// <code>
///     Δ = (|η| − Y)/(E + H),   p += Δ n,   n = η/|η|,   s = E(x − p),
///     ds/dx = E [ 1 − E/(E + H) n nᵀ − (E Δ/|η|)(1 − n nᵀ) ],
///     work = ½ E |x − p|² + ½ H (|p|² − |p₀|²) + Y Δ.
/// </code>
/// J. C. Simo, T. J. R. Hughes, <i>Computational Inelasticity</i>, Springer 1998, radial return (from memory).
/// </remarks>
internal struct PlasticLaw : IFibreLaw
{
    private readonly double _young;
    private readonly double _yield;
    private readonly double _hardening;

    public PlasticLaw(ElasticPlastic alloy)
    {
        _young = alloy.Young;
        _yield = alloy.Yield;
        _hardening = alloy.Hardening;
    }

    /// <inheritdoc/>
    public readonly double ElasticStrain => _yield / _young;

    /// <inheritdoc/>
    public readonly bool ReturnsWhole => false;

    /// <inheritdoc/>
    public readonly void Respond(V normal, V shear, V normalState, V shearState, out FibreAnswer answer)
    {
        V young = Vector256.Create(_young);
        V one = Vector256<double>.One;
        V n = (normal - normalState) * young - normalState * _hardening;
        V t = (shear - shearState) * young - shearState * _hardening;
        V size = Vector256.Max(Vector256.Sqrt(n * n + t * t), Vector256.Create(1e-30));
        V flow = Vector256.Max(size - Vector256.Create(_yield), V.Zero) / (_young + _hardening);
        n /= size;
        t /= size;
        answer.NormalState = normalState + flow * n;
        answer.ShearState = shearState + flow * t;
        V left = normal - answer.NormalState;
        V leftShear = shear - answer.ShearState;
        answer.Normal = left * young;
        answer.Shear = leftShear * young;

        V yields = Vector256.GreaterThan(flow, V.Zero);
        V along = Vector256.ConditionalSelect(yields, Vector256.Create(_young / (_young + _hardening)), V.Zero);
        V across = flow * young / size;
        answer.NormalNormal = young * (one - along * n * n - across * t * t);
        answer.ShearShear = young * (one - along * t * t - across * n * n);
        answer.NormalShear = young * n * t * (across - along);
        answer.Work = 0.5 * _young * (left * left + leftShear * leftShear) + _yield * flow
            + 0.5 * _hardening * (answer.NormalState * answer.NormalState + answer.ShearState * answer.ShearState
                - normalState * normalState - shearState * shearState);
    }

    /// <inheritdoc/>
    public readonly V Transformed(V normalState, V shearState) => V.Zero;

    /// <inheritdoc/>
    public readonly void Warm(double temperature)
    {
        // Yield and modulus hardly change between a cold and a hot drink.
    }
}
