namespace Archwright.Mechanics.Sections;

/// <summary>The forces of a law, its tangent drawn toward the elastic one: a means of the search, see
/// <see cref="Rods.RodLaw.Stiffening"/>.</summary>
internal readonly struct ElasticTangent<TLaw>(TLaw law, ElasticSection elastic, double share) : ISectionLaw
    where TLaw : struct, ISectionLaw
{
    /// <inheritdoc/>
    public double Respond(int point, in SectionStrain strain, out SectionForce force, out SectionTangent tangent)
    {
        double energy = law.Respond(point, strain, out force, out tangent);
        elastic.Respond(point, strain, out _, out SectionTangent stiff);
        tangent.AA += share * (stiff.AA - tangent.AA);
        tangent.TT += share * (stiff.TT - tangent.TT);
        tangent.WW += share * (stiff.WW - tangent.WW);
        tangent.XX += share * (stiff.XX - tangent.XX);
        tangent.AT -= share * tangent.AT;
        tangent.AW -= share * tangent.AW;
        tangent.AX -= share * tangent.AX;
        tangent.TW -= share * tangent.TW;
        tangent.TX -= share * tangent.TX;
        tangent.WX -= share * tangent.WX;
        return energy;
    }

    /// <inheritdoc/>
    public double Energy(int point, in SectionStrain strain) => law.Energy(point, strain);
}
