using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Alloys;

/// <summary>Figures of a superelastic alloy at its reference temperature.</summary>
/// <remarks>Stresses are those of a fibre in tension. See <see cref="Superelastic"/> for the law.</remarks>
public sealed record SuperelasticFigures
{
    /// <summary>Least sum of <see cref="ForwardStart"/> and <see cref="ReverseFinish"/> [MPa]; at nil a fibre could be
    /// in any state.</summary>
    public const double LeastGap = 1;

    /// <summary>Poisson's ratio, above −1 and at most 0.5.</summary>
    public required double Poisson { get; init; }

    /// <summary>Temperature at which the four stresses hold [°C].</summary>
    public required double ReferenceTemperature { get; init; }

    /// <summary>Modulus of austenite [MPa].</summary>
    public required double YoungAustenite { get; init; }

    /// <summary>Modulus of martensite [MPa].</summary>
    public required double YoungMartensite { get; init; }

    /// <summary>Strain gained by full transformation; the same in tension and compression.</summary>
    public required double TransformationStrain { get; init; }

    /// <summary>Stress at which loading begins to transform [MPa].</summary>
    public required double ForwardStart { get; init; }

    /// <summary>Stress at which loading has transformed all [MPa].</summary>
    public required double ForwardFinish { get; init; }

    /// <summary>Stress at which full martensite begins to turn back [MPa].</summary>
    public required double ReverseStart { get; init; }

    /// <summary>Stress at which all has turned back [MPa].</summary>
    public required double ReverseFinish { get; init; }

    /// <summary>Rise of all four stresses with temperature [MPa/K].</summary>
    public required double ClausiusClapeyron { get; init; }

    /// <summary>Asymmetry α: stresses in compression are (1 + α)/(1 − α) times those in tension.</summary>
    public double Asymmetry { get; init; }
}

/// <summary>An alloy that transforms under load and back again: the piecewise-linear flag.</summary>
/// <remarks>
/// A fibre holds the share ξ of martensite, formed in the direction of its strain then. Its strain is σ·S(ξ) + ξ·ε_L in
/// that direction, S(ξ) = (1 − ξ)/E_A + ξ/E_M. Loading follows forward_start + ξ (forward_finish − forward_start),
/// unloading reverse_finish + ξ (reverse_start − reverse_finish), all four moved by temperature; between the lines the
/// fibre is elastic at its present ξ. Form: F. Auricchio, E. Sacco, "A one-dimensional model for superelastic
/// shape-memory alloys with different elastic properties between austenite and martensite", Int. J. Non-Linear Mech.
/// 32 (1997) 1101–1114 (from memory); derivation and torsion in docs/theory/alloys.md.
/// </remarks>
public sealed record Superelastic : Alloy
{
    /// <summary>A superelastic alloy.</summary>
    /// <param name="figures">Its figures.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of range, or the lines are out of
    /// order.</exception>
    public Superelastic(SuperelasticFigures figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        Require.Positive(figures.YoungAustenite, "MPa");
        Require.Positive(figures.YoungMartensite, "MPa");
        Require.Between(figures.Poisson, -0.999, 0.5, "");
        Require.Between(figures.TransformationStrain, 1e-6, 0.2, "");
        Require.Between(figures.ClausiusClapeyron, 0, 100, "MPa/K");
        Require.Between(figures.Asymmetry, -0.9, 0.9, "");
        Require.Between(figures.ReferenceTemperature, -273, 1000, "°C");
        Require.Between(figures.ForwardStart, 1, 1e5, "MPa");
        Require.Between(figures.ForwardFinish, figures.ForwardStart, 1e5, "MPa");
        Require.Between(figures.ReverseStart, figures.ReverseFinish, figures.ForwardFinish, "MPa");
        Require.Between(
            figures.ReverseFinish, SuperelasticFigures.LeastGap - figures.ForwardStart, figures.ForwardStart, "MPa");
        Figures = figures;
    }

    /// <summary>Its figures.</summary>
    public SuperelasticFigures Figures { get; }

    /// <inheritdoc/>
    public override double Young => Figures.YoungAustenite;

    /// <inheritdoc/>
    public override double Shear => Figures.YoungAustenite / (2 * (1 + Figures.Poisson));

    /// <summary>Coldest temperature at which the law has a meaning [°C]: below it the loading line would start lower
    /// than the unloading line of the opposite sense ends. A colder wire is computed at this temperature.</summary>
    public double ColdestTemperature => Figures.ClausiusClapeyron > 0
        ? Figures.ReferenceTemperature
            - (Figures.ForwardStart + Figures.ReverseFinish - SuperelasticFigures.LeastGap)
                / (2 * Figures.ClausiusClapeyron)
        : double.NegativeInfinity;
}
