namespace Archwright.Mechanics.Sections;

/// <summary>What deforms at a cross-section, measured from the rest shape.</summary>
/// <param name="Axial">Stretch of the centre line.</param>
/// <param name="OverThickness">Change of curvature about the outward director; it strains the thickness [1/mm].</param>
/// <param name="OverWidth">Change of curvature about the third director; it strains the width [1/mm].</param>
/// <param name="Twist">Change of twist about the centre line [rad/mm].</param>
internal readonly record struct SectionStrain(double Axial, double OverThickness, double OverWidth, double Twist)
{
    /// <summary>On the straight line through two strains: 0 is the first, 1 the second.</summary>
    public static SectionStrain Between(in SectionStrain a, in SectionStrain b, double share) => new(
        a.Axial + share * (b.Axial - a.Axial),
        a.OverThickness + share * (b.OverThickness - a.OverThickness),
        a.OverWidth + share * (b.OverWidth - a.OverWidth),
        a.Twist + share * (b.Twist - a.Twist));
}

/// <summary>What the section answers, work-conjugate to <see cref="SectionStrain"/>.</summary>
/// <param name="Axial">Axial force [N].</param>
/// <param name="OverThickness">Bending moment [N·mm].</param>
/// <param name="OverWidth">Bending moment [N·mm].</param>
/// <param name="Twist">Torque [N·mm].</param>
internal readonly record struct SectionForce(double Axial, double OverThickness, double OverWidth, double Twist);

/// <summary>Consistent tangent of a section: ∂force/∂strain, symmetric; the order is axial (A), bending over the
/// thickness (T), bending over the width (W), twist (X).</summary>
internal struct SectionTangent
{
    public double AA, AT, AW, AX, TT, TW, TX, WW, WX, XX;
}

/// <summary>How the cross-sections of a wire answer. Implemented by structs, so that the call is inlined in the
/// solver. A law with memory keeps one state a point and commits it only on converged steps.</summary>
internal interface ISectionLaw
{
    /// <summary>Force and tangent for a strain.</summary>
    /// <param name="point">Index of the integration point; a law with memory finds its state by it.</param>
    /// <param name="strain">Strain from rest.</param>
    /// <param name="force">Answer.</param>
    /// <param name="tangent">∂force/∂strain.</param>
    /// <returns>As <see cref="Energy"/>.</returns>
    double Respond(int point, in SectionStrain strain, out SectionForce force, out SectionTangent tangent);

    /// <summary>Energy stored a unit of length [N]; for a law with memory, the elastic energy now and the work spent on
    /// change of state since the last committed one.</summary>
    double Energy(int point, in SectionStrain strain);
}
