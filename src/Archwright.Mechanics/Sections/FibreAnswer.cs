using V = System.Runtime.Intrinsics.Vector256<double>;

namespace Archwright.Mechanics.Sections;

/// <summary>What four fibres answer to a strain.</summary>
/// <remarks>
/// A fibre has a normal strain ε along the wire and a shear γ from twist. With g = √(G/E), the pair x = (ε, gγ) and
/// the pair s = (σ, τ/g) are conjugate, s·dx = σ dε + τ dγ, and Hooke's law is s = E x: the fibre is as a spring in a
/// plane. |x| is the equivalent strain, |s| the equivalent stress √(σ² + τ²E/G); von Mises has 3 in place of
/// E/G = 2(1 + ν), which is 2.67 for NiTi (docs/theory/alloys.md).
/// </remarks>
internal struct FibreAnswer
{
    /// <summary>s [MPa].</summary>
    public V Normal, Shear;

    /// <summary>ds/dx, symmetric [MPa].</summary>
    public V NormalNormal, NormalShear, ShearShear;

    /// <summary>The fibre's state after the step: martensite and its direction, or plastic strain.</summary>
    public V NormalState, ShearState;

    /// <summary>Elastic energy now, and the work spent on change of state in the step [N/mm²].</summary>
    public V Work;
}

/// <summary>A uniaxial law in its form for a pair of strains, four fibres at once. Implemented by structs; holds no
/// state.</summary>
internal interface IFibreLaw
{
    /// <summary>Largest equivalent strain at which a new fibre is elastic.</summary>
    double ElasticStrain { get; }

    /// <summary>Whether a fibre that is let go returns by itself to where it was when new, whatever it has gone
    /// through.</summary>
    bool ReturnsWhole { get; }

    /// <summary>Answer to a strain, from a committed state.</summary>
    /// <param name="normal">ε.</param>
    /// <param name="shear">gγ.</param>
    /// <param name="normalState">Committed state.</param>
    /// <param name="shearState">Committed state.</param>
    /// <param name="answer">Stresses, tangent, new state.</param>
    void Respond(V normal, V shear, V normalState, V shearState, out FibreAnswer answer);

    /// <summary>Share that is transformed, of a state.</summary>
    V Transformed(V normalState, V shearState);

    /// <summary>Takes over the temperature [°C].</summary>
    void Warm(double temperature);
}
