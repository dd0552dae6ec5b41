using Archwright.Dentition.Catalogue;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Alloys;

namespace Archwright.Exchange.CaseFiles;

/// <summary>An alloy as a file gives it.</summary>
/// <param name="Alloy">The law; null when it cannot be used.</param>
/// <param name="Id">Catalogue id; null when it is written out.</param>
internal sealed record AlloyGiven(Alloy? Alloy, string? Id);

/// <summary>Reads what a wire is made of.</summary>
internal static class AlloyReading
{
    private const string LinearElastic = "linear-elastic";
    private const string ElasticPlastic = "elastic-plastic";
    private const string Superelastic = "superelastic";
    private const string Whose = "of the alloy";

    private static readonly KeySet[] Kinds =
        [CaseKeys.CatalogueAlloy, CaseKeys.LinearElastic, CaseKeys.ElasticPlastic, CaseKeys.Superelastic];

    public static AlloyGiven Alloy(Node node, ProblemList problems)
    {
        var none = new AlloyGiven(null, null);
        if (Fields.Of(node, Either(node), Whose, problems, Kinds) is not { } fields)
            return none;

        if (fields.Has("catalogue"))
            return FromCatalogue(fields, problems) ?? none;

        if (!fields.Has("law"))
        {
            problems.Add(
                ProblemCodes.AlloyUnsaid, node.Path, "The alloy has neither a catalogue id nor a law.",
                """Write { "catalogue": "ss" } or { "law": "linear-elastic", "young_MPa": …, "poisson": … }.""");
            return none;
        }

        return new AlloyGiven(ByLaw(fields, problems), null);
    }

    // Which keys may stand here is decided by what stands here.
    private static KeySet Either(Node node)
    {
        bool hasLaw = node.Members.Any(m => m.Key == "law");
        string law = node.Members.LastOrDefault(m => m.Key == "law").Value?.Text ?? "";
        return law switch
        {
            _ when hasLaw && node.Members.Any(m => m.Key == "catalogue") => Everything,
            LinearElastic => CaseKeys.LinearElastic,
            ElasticPlastic => CaseKeys.ElasticPlastic,
            Superelastic => CaseKeys.Superelastic,
            _ when hasLaw => Everything,
            _ => CaseKeys.CatalogueAlloy,
        };
    }

    private static KeySet Everything { get; } = new(
        "an alloy", "", [.. Kinds.SelectMany(kind => kind.Keys).Distinct(StringComparer.Ordinal)]);

    private static AlloyGiven? FromCatalogue(Fields fields, ProblemList problems)
    {
        if (fields.Has("law"))
        {
            problems.Add(
                ProblemCodes.AlloyTwice, fields.Node.Path, "The alloy has both a catalogue id and a law.",
                "Keep one of the two.");
            return null;
        }

        Node node = fields.Find("catalogue")!;
        if (NodeReading.Text(node, "catalogue id", Whose, problems) is not { } id)
            return null;

        if (WireCatalogue.Default.TryFindAlloy(id, out CatalogueAlloy? alloy))
            return new AlloyGiven(alloy.Alloy, alloy.Id);

        string[] known = [.. WireCatalogue.Default.Alloys.Select(a => a.Id)];
        problems.Add(
            ProblemCodes.AlloyUnknown, node.Path,
            $"There is no alloy {Say.Quote(id)} in the catalogue.{Nearest.Hint(id, known)}",
            $"Write one of {Say.List(known)}, or write the alloy out with its law.");
        return null;
    }

    private static Alloy? ByLaw(Fields fields, ProblemList problems) =>
        fields.Word("law", LinearElastic, ElasticPlastic, Superelastic) switch
        {
            LinearElastic => ReadElastic(fields),
            ElasticPlastic => ReadElasticPlastic(fields, problems),
            Superelastic => ReadSuperelastic(fields, problems),
            _ => null,
        };

    private static LinearElastic? ReadElastic(Fields fields)
    {
        double? young = fields.Number("young_MPa", Quantities.Young);
        double? poisson = fields.Number("poisson", Quantities.Poisson);
        return young is { } e && poisson is { } nu ? new LinearElastic(e, nu) : null;
    }

    private static ElasticPlastic? ReadElasticPlastic(Fields fields, ProblemList problems)
    {
        int before = problems.Count;
        double? young = fields.Number("young_MPa", Quantities.Young);
        double? poisson = fields.Number("poisson", Quantities.Poisson);
        double? yield = fields.Number("yield_MPa", Quantities.Yield);
        double? hardening = fields.Number("hardening_MPa", Quantities.Hardening);
        if (young is { } e && hardening is { } h && h >= e)
        {
            Contradict(
                fields, "hardening_MPa",
                $"The hardening modulus is {Say.Number(h)} MPa, Young's modulus {Say.Number(e)} MPa: behind the yield "
                + "point the wire must be softer than before it.",
                "Give a hardening modulus below Young's modulus; 0 is none.", problems);
        }

        return problems.Count == before
            ? new ElasticPlastic(young!.Value, poisson!.Value, yield!.Value, hardening!.Value)
            : null;
    }

    private static Superelastic? ReadSuperelastic(Fields fields, ProblemList problems)
    {
        int before = problems.Count;
        double Figure(string key, Quantity quantity) => fields.Number(key, quantity) ?? double.NaN;
        var figures = new SuperelasticFigures
        {
            Poisson = Figure("poisson", Quantities.Poisson),
            ReferenceTemperature = Figure("reference_temperature_degC", Quantities.ReferenceTemperature),
            YoungAustenite = Figure("young_austenite_MPa", Quantities.Young),
            YoungMartensite = Figure("young_martensite_MPa", Quantities.Young),
            TransformationStrain = Figure("transformation_strain", Quantities.TransformationStrain),
            ForwardStart = Figure("forward_start_MPa", Quantities.ForwardStress),
            ForwardFinish = Figure("forward_finish_MPa", Quantities.ForwardStress),
            ReverseStart = Figure("reverse_start_MPa", Quantities.ReverseStress),
            ReverseFinish = Figure("reverse_finish_MPa", Quantities.ReverseStress),
            ClausiusClapeyron = Figure("clausius_clapeyron_MPa_per_K", Quantities.ClausiusClapeyron),
            Asymmetry = Figure("asymmetry_alpha", Quantities.Asymmetry),
        };
        Ordered(fields, "forward_finish_MPa", figures.ForwardFinish, "forward_start_MPa", figures.ForwardStart,
            problems);
        Ordered(fields, "reverse_start_MPa", figures.ReverseStart, "reverse_finish_MPa", figures.ReverseFinish,
            problems);
        Ordered(fields, "forward_start_MPa", figures.ForwardStart, "reverse_finish_MPa", figures.ReverseFinish,
            problems);
        Ordered(fields, "forward_finish_MPa", figures.ForwardFinish, "reverse_start_MPa", figures.ReverseStart,
            problems);
        if (figures.ForwardStart + figures.ReverseFinish < SuperelasticFigures.LeastGap)
        {
            Contradict(
                fields, "reverse_finish_MPa",
                $"“reverse_finish_MPa” is {Say.Number(figures.ReverseFinish)} MPa and “forward_start_MPa” "
                + $"{Say.Number(figures.ForwardStart)} MPa: so cold a wire would turn back only beyond the stress that "
                + "transforms it the other way.",
                "Their sum must be 1 MPa or more; give the stresses at a higher reference temperature.", problems);
        }

        return problems.Count == before ? new Superelastic(figures) : null;
    }

    private static void Ordered(
        Fields fields, string upperKey, double upper, string lowerKey, double lower, ProblemList problems)
    {
        if (upper < lower)
        {
            Contradict(
                fields, upperKey,
                $"“{upperKey}” is {Say.Number(upper)} MPa and “{lowerKey}” {Say.Number(lower)} MPa: it must not be "
                + "the lower.",
                "The wire loads from forward_start up to forward_finish and unloads from reverse_start down to "
                + "reverse_finish, below the loading line.", problems);
        }
    }

    private static void Contradict(Fields fields, string key, string message, string remedy, ProblemList problems) =>
        problems.Add(ProblemCodes.AlloyFigures, fields.Node.PathOf(key), message, remedy);
}
