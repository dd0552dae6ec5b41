using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Rods;

/// <summary>A wire of fibres with memory.</summary>
internal sealed class FibreRod<TLaw> : RodLaw
    where TLaw : struct, IFibreLaw
{
    private const int MostReleaseSteps = 200;
    private const double ReleasedCurvature = 1e-7;

    private readonly FibreGrid _grid;
    private readonly FibreMemory _memory;
    private TLaw _law;

    public FibreRod(Wire wire, TLaw law, FibreGrid grid, FibreMemory memory)
        : base(new ElasticSection(wire.Section, wire.Alloy), wire.Alloy.Young * wire.Section.Area)
    {
        _law = law;
        _grid = grid;
        _memory = memory;
    }

    /// <inheritdoc/>
    public override bool Remembers => true;

    /// <inheritdoc/>
    public override bool HasHistory => _memory.HasHistory;

    /// <inheritdoc/>
    public override bool MayStayBent => HasHistory && !_law.ReturnsWhole;

    private FibreSection<TLaw> Section => new(_law, _grid, _memory, Initial);

    /// <inheritdoc/>
    public override double Energy(RodMesh mesh, double tie, ReadOnlySpan<double> q)
    {
        _memory.Prepare(mesh);
        return RodAssembly.Energy(mesh, Section, tie, q);
    }

    /// <inheritdoc/>
    public override double Add(
        RodMesh mesh, double tie, ReadOnlySpan<double> q, Span<double> gradient, BlockTridiagonal tangent,
        Tension tension)
    {
        _memory.Prepare(mesh);
        return Stiffening > 0
            ? RodAssembly.Add(
                mesh, new ElasticTangent<FibreSection<TLaw>>(Section, Initial, Stiffening), tie, q, gradient, tangent,
                tension)
            : RodAssembly.Add(mesh, Section, tie, q, gradient, tangent, tension);
    }

    /// <inheritdoc/>
    public override double AddGradient(RodMesh mesh, double tie, ReadOnlySpan<double> q, Span<double> gradient)
    {
        _memory.Prepare(mesh);
        return RodAssembly.AddGradient(mesh, Section, tie, q, gradient);
    }

    /// <inheritdoc/>
    public override void Warm(double temperature) => _law.Warm(temperature);

    /// <inheritdoc/>
    public override void Forget() => _memory.Forget();

    /// <inheritdoc/>
    public override void Keep() => _memory.Keep();

    /// <inheritdoc/>
    public override void PutBack() => _memory.PutBack();

    /// <summary>Every station of the wire takes the strain that the shape has there. Between the two Gauss points of an
    /// element the strain is taken as linear, and beyond them too: a node may be a contact, where it peaks.</summary>
    public override void Commit(RodMesh mesh, ReadOnlySpan<double> q)
    {
        FibreSection<TLaw> section = Section;
        ReadOnlySpan<double> s = mesh.S;
        int element = -1;
        SectionStrain a = default;
        SectionStrain b = default;
        for (int i = 0; i < _memory.Stations; i++)
        {
            double at = _memory.At(i);
            if (at < s[0] || at > s[^1])
                continue;

            int here = mesh.Find(at, Math.Max(element, 0));
            if (here != element)
            {
                element = here;
                a = RodAssembly.StrainAt(mesh, q, RodMesh.Points * element);
                b = RodAssembly.StrainAt(mesh, q, RodMesh.Points * element + 1);
            }

            double u = (at - s[element]) / mesh.Length(element);
            double share = (u - RodMesh.GaussAt[0]) / (RodMesh.GaussAt[1] - RodMesh.GaussAt[0]);
            SectionStrain strain = SectionStrain.Between(a, b, share);
            if (_memory.IsNewAt(i) && section.StaysElastic(strain))
                continue;

            _memory.Use(i, FibreSection<TLaw>.Commit(_law, _grid, strain, _memory.Of(i)));
        }

        CommitPoints(section, mesh, q);
    }

    private void CommitPoints(in FibreSection<TLaw> section, RodMesh mesh, ReadOnlySpan<double> q)
    {
        _memory.Prepare(mesh);
        for (int point = 0; point < RodMesh.Points * mesh.Elements; point++)
        {
            SectionStrain strain = RodAssembly.StrainAt(mesh, q, point);
            if (_memory.IsNew(point) && section.StaysElastic(strain))
                continue;

            _memory.UsePoint(point, FibreSection<TLaw>.Commit(_law, _grid, strain, _memory.OfPoint(point)));
        }

        _memory.Settle();
    }

    /// <inheritdoc/>
    public override double LargestTransformedShare()
    {
        double largest = 0;
        for (int i = 0; i < _memory.Stations; i++)
        {
            if (!_memory.IsNewAt(i))
                largest = Math.Max(largest, FibreSection<TLaw>.Transformed(_law, _grid, _memory.Of(i)));
        }

        return largest;
    }

    /// <inheritdoc/>
    public override int Stations => _memory.Stations;

    // A wire that is let go carries nothing anywhere, so each section goes back by itself. The elastic stiffness is
    // never too small, so every step goes down.
    /// <inheritdoc/>
    public override (double Place, SectionStrain Left) Released(int station)
    {
        SectionStrain left = default;
        if (_memory.IsNewAt(station))
            return (_memory.At(station), left);

        Initial.Respond(0, default, out _, out SectionTangent stiff);
        for (int pass = 0; pass < MostReleaseSteps; pass++)
        {
            FibreSection<TLaw>.Sum(_law, _grid, left, _memory.Of(station), out SectionForce force, out _);
            var step = new SectionStrain(
                force.Axial / stiff.AA, force.OverThickness / stiff.TT, force.OverWidth / stiff.WW,
                force.Twist / stiff.XX);
            left = new SectionStrain(
                left.Axial - step.Axial, left.OverThickness - step.OverThickness, left.OverWidth - step.OverWidth,
                left.Twist - step.Twist);
            if (Math.Abs(step.OverThickness) + Math.Abs(step.OverWidth) + Math.Abs(step.Twist) < ReleasedCurvature)
                break;
        }

        return (_memory.At(station), left);
    }
}
