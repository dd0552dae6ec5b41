using Archwright.Dentition.Catalogue;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Alloys;

namespace Archwright.Exchange.CaseFiles;

/// <summary>An alloy as a file gives it.</summary>
/// <param name="Alloy">The law; null when it cannot be used.</param>
/// <param name="Id">Catalogue id; null when it is written out.</param>
internal sealed record AlloyGiven(Alloy? Alloy, string? Id);

/// <summary>Reads what a wire is made of. Laws that this version does not solve are read and checked all the same, and
/// then refused by a code of their own: never computed as something else.</summary>
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

    private static Alloy? ByLaw(Fields fields, ProblemList problems)
    {
        string? law = fields.Word("law", LinearElastic, ElasticPlastic, Superelastic);
        int before = problems.Count;
        switch (law)
        {
            case LinearElastic:
                double? young = fields.Number("young_MPa", Quantities.Young);
                double? poisson = fields.Number("poisson", Quantities.Poisson);
                return young is { } e && poisson is { } nu ? new LinearElastic(e, nu) : null;
            case ElasticPlastic:
                CheckElasticPlastic(fields, problems);
                break;
            case Superelastic:
                CheckSuperelastic(fields, problems);
                break;
            default:
                return null;
        }

        if (problems.Count == before)
            NotYet(fields, law, problems);
        return null;
    }

    private static void NotYet(Fields fields, string law, ProblemList problems) => problems.Add(
        ProblemCodes.LawNotYet, fields.Node.PathOf("law"),
        $"The {law} law is described correctly, but this version computes linear-elastic wires only.",
        "Use a version that computes it; or, for strains that stay elastic, write the law \"linear-elastic\" with the "
        + "initial modulus and compare the largest strain of the result with the elastic limit yourself.");

    private static void CheckElasticPlastic(Fields fields, ProblemList problems)
    {
        double? young = fields.Number("young_MPa", Quantities.Young);
        fields.Number("poisson", Quantities.Poisson);
        fields.Number("yield_MPa", Quantities.Yield);
        double? hardening = fields.Number("hardening_MPa", Quantities.Hardening);
        if (young is { } e && hardening is { } h && h >= e)
        {
            Contradict(
                fields, "hardening_MPa",
                $"The hardening modulus is {Say.Number(h)} MPa, Young's modulus {Say.Number(e)} MPa: behind the yield "
                + "point the wire must be softer than before it.",
                "Give a hardening modulus below Young's modulus; 0 is none.", problems);
        }
    }

    private static void CheckSuperelastic(Fields fields, ProblemList problems)
    {
        fields.Number("poisson", Quantities.Poisson);
        fields.Number("reference_temperature_degC", Quantities.ReferenceTemperature);
        fields.Number("young_austenite_MPa", Quantities.Young);
        fields.Number("young_martensite_MPa", Quantities.Young);
        fields.Number("transformation_strain", Quantities.TransformationStrain);
        double? forwardStart = fields.Number("forward_start_MPa", Quantities.ForwardStress);
        double? forwardFinish = fields.Number("forward_finish_MPa", Quantities.ForwardStress);
        double? reverseStart = fields.Number("reverse_start_MPa", Quantities.ReverseStress);
        double? reverseFinish = fields.Number("reverse_finish_MPa", Quantities.ReverseStress);
        fields.Number("clausius_clapeyron_MPa_per_K", Quantities.ClausiusClapeyron);
        fields.Number("asymmetry_alpha", Quantities.Asymmetry);

        Ordered(fields, "forward_finish_MPa", forwardFinish, "forward_start_MPa", forwardStart, problems);
        Ordered(fields, "reverse_start_MPa", reverseStart, "reverse_finish_MPa", reverseFinish, problems);
        Ordered(fields, "forward_start_MPa", forwardStart, "reverse_finish_MPa", reverseFinish, problems);
        Ordered(fields, "forward_finish_MPa", forwardFinish, "reverse_start_MPa", reverseStart, problems);
    }

    private static void Ordered(
        Fields fields, string upperKey, double? upper, string lowerKey, double? lower, ProblemList problems)
    {
        if (upper is { } u && lower is { } l && u < l)
        {
            Contradict(
                fields, upperKey,
                $"“{upperKey}” is {Say.Number(u)} MPa and “{lowerKey}” {Say.Number(l)} MPa: it must not be the lower.",
                "The wire loads from forward_start up to forward_finish and unloads from reverse_start down to "
                + "reverse_finish, below the loading line.", problems);
        }
    }

    private static void Contradict(Fields fields, string key, string message, string remedy, ProblemList problems) =>
        problems.Add(ProblemCodes.AlloyFigures, fields.Node.PathOf(key), message, remedy);
}
