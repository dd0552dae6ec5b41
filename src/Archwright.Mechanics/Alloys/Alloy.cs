using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Alloys;

/// <summary>What a wire is made of. One derived record a law; a law with memory keeps its memory in the workspace
/// of the solver, never here.</summary>
public abstract record Alloy
{
    private protected Alloy()
    {
    }

    /// <summary>Initial Young's modulus [MPa].</summary>
    public abstract double Young { get; }

    /// <summary>Initial shear modulus [MPa].</summary>
    public abstract double Shear { get; }
}

/// <summary>Hooke's law without limit. The elastic limit of the real wire is no part of it: the largest strain of a
/// result is to be compared with it.</summary>
public sealed record LinearElastic : Alloy
{
    /// <inheritdoc/>
    public override double Young { get; }

    /// <inheritdoc/>
    public override double Shear { get; }

    /// <summary>An isotropic elastic alloy.</summary>
    /// <param name="young">Young's modulus [MPa].</param>
    /// <param name="poisson">Poisson's ratio, above −1 and at most 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">The modulus is not positive, or the ratio out of
    /// range.</exception>
    public LinearElastic(double young, double poisson)
    {
        Require.Positive(young, "MPa");
        if (!(poisson > -1 && poisson <= 0.5))
            throw new ArgumentOutOfRangeException(nameof(poisson), poisson, "It must be above -1 and at most 0.5.");

        Young = young;
        Shear = young / (2 * (1 + poisson));
    }

    private LinearElastic(double young, double shear, bool _)
    {
        Young = young;
        Shear = shear;
    }

    /// <summary>An elastic wire whose bending and torsion moduli were found apart, as for stranded wires.</summary>
    /// <param name="young">Effective modulus in bending [MPa].</param>
    /// <param name="shear">Effective modulus in torsion [MPa].</param>
    /// <exception cref="ArgumentOutOfRangeException">A modulus is not positive and finite.</exception>
    public static LinearElastic WithShear(double young, double shear)
    {
        Require.Positive(young, "MPa");
        Require.Positive(shear, "MPa");
        return new LinearElastic(young, shear, true);
    }
}
