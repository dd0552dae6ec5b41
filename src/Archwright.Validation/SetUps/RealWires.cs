using Archwright.Dentition.Catalogue;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Rods;

namespace Archwright.Validation.SetUps;

/// <summary>Wires of the catalogue with the whole law of their alloy: they transform or yield.</summary>
internal static class RealWires
{
    /// <summary>Section and whole law of a wire.</summary>
    public static Wire Of(CatalogueWire wire) => new(wire.Section, LawOf(wire.Alloy));

    private static Alloy LawOf(CatalogueAlloy alloy) => alloy switch
    {
        { Transformation: { } loop, Poisson: { } poisson } => new Superelastic(new SuperelasticFigures
        {
            Poisson = poisson.Value,
            ReferenceTemperature = TransformationFigures.ReferenceTemperature,
            YoungAustenite = alloy.Young.Value,
            YoungMartensite = loop.YoungMartensite.Value,
            TransformationStrain = loop.TransformationStrain.Value,
            ForwardStart = loop.ForwardStart.Value,
            ForwardFinish = loop.ForwardFinish.Value,
            ReverseStart = loop.ReverseStart.Value,
            ReverseFinish = loop.ReverseFinish.Value,
            ClausiusClapeyron = loop.ClausiusClapeyron.Value,
            Asymmetry = loop.Asymmetry.Value,
        }),
        { Plasticity: { } plastic, Poisson: { } poisson } => new ElasticPlastic(
            alloy.Young.Value, poisson.Value, plastic.Yield.Value, plastic.Hardening.Value),
        _ => alloy.Alloy,
    };
}
