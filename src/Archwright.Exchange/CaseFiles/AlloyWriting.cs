using Archwright.Exchange.Json;
using Archwright.Mechanics.Alloys;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Writes what a wire is made of, with its law.</summary>
internal static class AlloyWriting
{
    /// <summary>The law of an alloy on one line; null for one that a case file has no word for.</summary>
    public static string? Law(Alloy alloy) => alloy switch
    {
        LinearElastic elastic => JsonOut.OneLine(
            ("law", "\"linear-elastic\""),
            Figure("young_MPa", elastic.Young),
            Figure("poisson", PlainFigures.Poisson(elastic))),
        ElasticPlastic plastic => JsonOut.OneLine(
            ("law", "\"elastic-plastic\""),
            Figure("young_MPa", plastic.Young),
            Figure("poisson", plastic.Poisson),
            Figure("yield_MPa", plastic.Yield),
            Figure("hardening_MPa", plastic.Hardening)),
        Superelastic superelastic => Law(superelastic.Figures),
        _ => null,
    };

    private static string Law(SuperelasticFigures figures) => JsonOut.OneLine(
        ("law", "\"superelastic\""),
        Figure("poisson", figures.Poisson),
        Figure("reference_temperature_degC", figures.ReferenceTemperature),
        Figure("young_austenite_MPa", figures.YoungAustenite),
        Figure("young_martensite_MPa", figures.YoungMartensite),
        Figure("transformation_strain", figures.TransformationStrain),
        Figure("forward_start_MPa", figures.ForwardStart),
        Figure("forward_finish_MPa", figures.ForwardFinish),
        Figure("reverse_start_MPa", figures.ReverseStart),
        Figure("reverse_finish_MPa", figures.ReverseFinish),
        Figure("clausius_clapeyron_MPa_per_K", figures.ClausiusClapeyron),
        Figure("asymmetry_alpha", figures.Asymmetry));

    private static (string Key, string Json) Figure(string key, double value) => (key, JsonOut.Figure(key, value));
}
