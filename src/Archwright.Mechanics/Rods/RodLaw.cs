using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Rods;

/// <summary>How a whole wire answers to its shape: the one place where the alloy's law is chosen. One call an
/// evaluation comes through here; what is called a Gauss point is compiled for its law.</summary>
internal abstract class RodLaw
{
    /// <param name="initial">The section as long as it is elastic and new.</param>
    /// <param name="stretch">Initial EA [N].</param>
    private protected RodLaw(ElasticSection initial, double stretch)
    {
        Initial = initial;
        Stretch = stretch;
    }

    /// <summary>The section as long as it is elastic and new.</summary>
    public ElasticSection Initial { get; }

    /// <summary>Initial EA [N].</summary>
    public double Stretch { get; }

    /// <summary>The law of a wire.</summary>
    public static RodLaw Of(Wire wire) => new ElasticRod(
        new ElasticSection(wire.Section, wire.Alloy), wire.Alloy.Young * wire.Section.Area);

    /// <summary>Energy of the wire [N·mm]; see <see cref="RodAssembly.Energy"/>.</summary>
    public abstract double Energy(RodMesh mesh, double tie, ReadOnlySpan<double> q);

    /// <summary>Adds gradient and tangent; see <see cref="RodAssembly.Add"/>.</summary>
    /// <returns>Energy of the wire [N·mm].</returns>
    public abstract double Add(
        RodMesh mesh, double tie, ReadOnlySpan<double> q, Span<double> gradient, BlockTridiagonal tangent);
}

/// <summary>A wire without memory.</summary>
internal sealed class ElasticRod(ElasticSection section, double stretch) : RodLaw(section, stretch)
{
    /// <inheritdoc/>
    public override double Energy(RodMesh mesh, double tie, ReadOnlySpan<double> q) =>
        RodAssembly.Energy(mesh, Initial, tie, q);

    /// <inheritdoc/>
    public override double Add(
        RodMesh mesh, double tie, ReadOnlySpan<double> q, Span<double> gradient, BlockTridiagonal tangent) =>
        RodAssembly.Add(mesh, Initial, tie, q, gradient, tangent);
}
