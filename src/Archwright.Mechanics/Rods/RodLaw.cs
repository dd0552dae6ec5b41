using Archwright.Mechanics.Alloys;
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

    /// <summary>Whether what happened to the wire matters to its answer.</summary>
    public virtual bool Remembers => false;

    /// <summary>Whether anything has happened to the wire yet that it remembers.</summary>
    public virtual bool HasHistory => false;

    /// <summary>Whether the wire may not return to its rest shape when it is let go now.</summary>
    public virtual bool MayStayBent => false;

    /// <summary>Share of the elastic stiffness in the tangent of a wire with memory, from 0 to 1. A means of the
    /// search: forces and energy do not depend on it.</summary>
    public double Stiffening { get; set; }

    /// <summary>The law of a wire.</summary>
    /// <param name="wire">Section and alloy.</param>
    /// <param name="temperature">[°C]</param>
    /// <param name="from">First place of the wire that can be strained [mm].</param>
    /// <param name="to">Last one.</param>
    /// <param name="mostNodes">Most nodes of its mesh.</param>
    /// <param name="room">Where the history lies.</param>
    public static RodLaw Of(Wire wire, double temperature, double from, double to, int mostNodes, Room room)
    {
        FibreMemory Memory(FibreGrid grid) => new(grid.Count, from, to, RodMesh.Points * mostNodes, room);
        switch (wire.Alloy)
        {
            case Superelastic alloy:
                FibreGrid flags = FibreGrid.For(wire.Section, alloy);
                return new FibreRod<FlagLaw>(wire, new FlagLaw(alloy, temperature), flags, Memory(flags));
            case ElasticPlastic alloy:
                FibreGrid yields = FibreGrid.For(wire.Section, alloy);
                return new FibreRod<PlasticLaw>(wire, new PlasticLaw(alloy), yields, Memory(yields));
            default:
                return new ElasticRod(
                    new ElasticSection(wire.Section, wire.Alloy), wire.Alloy.Young * wire.Section.Area);
        }
    }

    /// <summary>Energy of the wire [N·mm]; see <see cref="RodAssembly.Energy"/>.</summary>
    public abstract double Energy(RodMesh mesh, double tie, ReadOnlySpan<double> q);

    /// <summary>Adds gradient and tangent; see <see cref="RodAssembly.Add"/>.</summary>
    /// <returns>Energy of the wire [N·mm].</returns>
    public abstract double Add(
        RodMesh mesh, double tie, ReadOnlySpan<double> q, Span<double> gradient, BlockTridiagonal tangent,
        Tension tension);

    /// <summary>Adds the gradient alone; see <see cref="RodAssembly.AddGradient"/>.</summary>
    /// <returns>Energy of the wire [N·mm].</returns>
    public abstract double AddGradient(RodMesh mesh, double tie, ReadOnlySpan<double> q, Span<double> gradient);

    /// <summary>Takes over the temperature [°C].</summary>
    public virtual void Warm(double temperature)
    {
    }

    /// <summary>Makes a converged shape part of the wire's history.</summary>
    public virtual void Commit(RodMesh mesh, ReadOnlySpan<double> q)
    {
    }

    /// <summary>A new wire.</summary>
    public virtual void Forget()
    {
    }

    /// <summary>Keeps the history as it is now, for <see cref="PutBack"/>.</summary>
    public virtual void Keep()
    {
    }

    /// <summary>Undoes what was committed since <see cref="Keep"/>.</summary>
    public virtual void PutBack()
    {
    }

    /// <summary>Largest share of a section that is transformed.</summary>
    public virtual double LargestTransformedShare() => 0;

    /// <summary>Number of stations where the history sits; none without memory.</summary>
    public virtual int Stations => 0;

    /// <summary>Place of a station [mm] and the strain that is left there when the section is let go; nothing is
    /// committed.</summary>
    public virtual (double Place, SectionStrain Left) Released(int station) =>
        throw new ArgumentOutOfRangeException(nameof(station), station, "A wire without memory has no stations.");
}

/// <summary>A wire without memory.</summary>
internal sealed class ElasticRod(ElasticSection section, double stretch) : RodLaw(section, stretch)
{
    /// <inheritdoc/>
    public override double Energy(RodMesh mesh, double tie, ReadOnlySpan<double> q) =>
        RodAssembly.Energy(mesh, Initial, tie, q);

    /// <inheritdoc/>
    public override double Add(
        RodMesh mesh, double tie, ReadOnlySpan<double> q, Span<double> gradient, BlockTridiagonal tangent,
        Tension tension) =>
        RodAssembly.Add(mesh, Initial, tie, q, gradient, tangent, tension);

    /// <inheritdoc/>
    public override double AddGradient(RodMesh mesh, double tie, ReadOnlySpan<double> q, Span<double> gradient) =>
        RodAssembly.AddGradient(mesh, Initial, tie, q, gradient);
}
