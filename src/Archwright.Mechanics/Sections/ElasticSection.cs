using Archwright.Mechanics.Alloys;

namespace Archwright.Mechanics.Sections;

/// <summary>Linear-elastic section: four stiffnesses, no coupling, no memory.</summary>
internal readonly struct ElasticSection : ISectionLaw
{
    private readonly double _stretch;
    private readonly double _overThickness;
    private readonly double _overWidth;
    private readonly double _twist;

    /// <param name="stretch">EA [N].</param>
    /// <param name="overThickness">E·I of bending that strains the thickness [N·mm²].</param>
    /// <param name="overWidth">E·I of bending that strains the width [N·mm²].</param>
    /// <param name="twist">G·J [N·mm²].</param>
    public ElasticSection(double stretch, double overThickness, double overWidth, double twist)
    {
        _stretch = stretch;
        _overThickness = overThickness;
        _overWidth = overWidth;
        _twist = twist;
    }

    public ElasticSection(Section section, Alloy alloy)
        : this(
            alloy.Young * section.Area,
            alloy.Young * section.BendingOverThickness,
            alloy.Young * section.BendingOverWidth,
            alloy.Shear * section.Torsion)
    {
    }

    /// <inheritdoc/>
    public double Respond(int point, in SectionStrain strain, out SectionForce force, out SectionTangent tangent)
    {
        force = new SectionForce(
            _stretch * strain.Axial,
            _overThickness * strain.OverThickness,
            _overWidth * strain.OverWidth,
            _twist * strain.Twist);
        tangent = new SectionTangent { AA = _stretch, TT = _overThickness, WW = _overWidth, XX = _twist };
        return Energy(point, strain);
    }

    /// <inheritdoc/>
    public double Energy(int point, in SectionStrain strain) =>
        0.5 * (_stretch * strain.Axial * strain.Axial
            + _overThickness * strain.OverThickness * strain.OverThickness
            + _overWidth * strain.OverWidth * strain.OverWidth
            + _twist * strain.Twist * strain.Twist);
}
