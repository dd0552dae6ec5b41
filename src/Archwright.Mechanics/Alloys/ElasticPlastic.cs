using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Alloys;

/// <summary>An alloy that yields: steel, cobalt-chromium, beta-titanium, stabilised NiTi beyond its limit.</summary>
/// <remarks>Elastic up to the yield strength; beyond it the stress rises with the plastic strain by the hardening
/// modulus H, that is with the whole strain by E·H/(E + H). The yield surface moves with the plastic strain and keeps
/// its size (W. Prager's kinematic hardening), so that a wire that was bent yields earlier when it is bent back.
/// </remarks>
public sealed record ElasticPlastic : Alloy
{
    /// <summary>An elastic-plastic alloy.</summary>
    /// <param name="young">Young's modulus [MPa].</param>
    /// <param name="poisson">Poisson's ratio, above −1 and at most 0.5.</param>
    /// <param name="yield">Stress at which a fibre begins to flow [MPa].</param>
    /// <param name="hardening">Rise of stress with plastic strain, 0 for none [MPa].</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of range.</exception>
    public ElasticPlastic(double young, double poisson, double yield, double hardening)
    {
        Require.Positive(young, "MPa");
        Require.Between(poisson, -0.999, 0.5, "");
        Require.Positive(yield, "MPa");
        Require.Between(hardening, 0, 1e6, "MPa");
        Young = young;
        Poisson = poisson;
        Yield = yield;
        Hardening = hardening;
    }

    /// <inheritdoc/>
    public override double Young { get; }

    /// <summary>Poisson's ratio.</summary>
    public double Poisson { get; }

    /// <inheritdoc/>
    public override double Shear => Young / (2 * (1 + Poisson));

    /// <summary>Stress at which a fibre begins to flow [MPa].</summary>
    public double Yield { get; }

    /// <summary>Rise of stress with plastic strain [MPa].</summary>
    public double Hardening { get; }
}
