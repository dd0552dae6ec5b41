using Archwright.Dentition.Tables;
using Archwright.Mechanics.Alloys;

namespace Archwright.Dentition.Catalogue;

/// <summary>Reads the alloys of the catalogue.</summary>
internal static class AlloyTable
{
    public static IReadOnlyList<CatalogueAlloy> Read(IReadOnlyList<TableRow> names, IReadOnlyList<TableRow> figures)
    {
        CheckKnown(names, figures);
        return [.. names.Select(name => Alloy(name, new AlloyFigures(name, figures)))];
    }

    private static CatalogueAlloy Alloy(TableRow name, AlloyFigures figures)
    {
        Sourced young = figures.Needed("young");
        Sourced? poisson = figures.Optional("poisson");
        Sourced? shear = figures.Optional("shear");
        Sourced? yield = figures.Optional("yield");
        Sourced? plateau = figures.Optional("plateau_start");
        if (name.Required("limit") == "plateau" != plateau is not null)
        {
            throw name.Fault(
                "its limit and its plateau disagree.", "Give 'plateau_start' exactly where limit is plateau.");
        }

        Sourced elasticStrain = ElasticStrain(name, figures, young, yield ?? plateau);
        PlasticFigures? plasticity = PlasticityOf(name, figures, young, yield);
        TransformationFigures? transformation = plateau is null ? null : TransformationOf(name, figures, plateau);
        LinearElastic elastic = Law(name, young, poisson, shear);
        return new CatalogueAlloy
        {
            Id = name.Required("alloy"),
            Title = name.Required("title"),
            Young = young,
            Poisson = poisson,
            Shear = shear,
            Yield = yield,
            Plasticity = plasticity,
            Transformation = transformation,
            ElasticStrain = elasticStrain,
            FrictionDry = figures.Needed("friction_dry"),
            FrictionWet = figures.Needed("friction_wet"),
            Nickel = figures.Needed("nickel"),
            Alloy = elastic,
            WholeLaw = WholeLaw(elastic, poisson, plasticity, transformation),
        };
    }

    private static Alloy WholeLaw(
        LinearElastic elastic, Sourced? poisson, PlasticFigures? plasticity, TransformationFigures? transformation)
    {
        if (poisson is null)
            return elastic;

        if (transformation is not null)
            return transformation.Law(elastic.Young, poisson.Value);

        return plasticity is null
            ? elastic
            : new ElasticPlastic(elastic.Young, poisson.Value, plasticity.Yield.Value, plasticity.Hardening.Value);
    }

    private static LinearElastic Law(TableRow name, Sourced young, Sourced? poisson, Sourced? shear)
    {
        if (poisson is not null && shear is null)
            return new LinearElastic(young.Value, poisson.Value);

        return poisson is null && shear is not null
            ? LinearElastic.WithShear(young.Value, shear.Value)
            : throw name.Fault("its torsion is not settled.", "Give 'poisson' or 'shear', one of them.");
    }

    private static PlasticFigures? PlasticityOf(TableRow name, AlloyFigures figures, Sourced young, Sourced? yield)
    {
        if (yield is null)
        {
            return figures.HasAny("bending_yield", "hardening")
                ? throw name.Fault("it hardens but has no 'yield'.", "Add 'yield', or leave both out.")
                : null;
        }

        Sourced hardening = figures.Needed("hardening");
        return hardening.Value < young.Value
            ? new PlasticFigures(figures.Optional("bending_yield") ?? yield, hardening)
            : throw name.Fault("it hardens faster than it stretches.", "Give 'hardening' below 'young'.");
    }

    private static TransformationFigures TransformationOf(TableRow name, AlloyFigures figures, Sourced plateau)
    {
        var found = new TransformationFigures
        {
            AusteniteFinish = figures.Needed("austenite_finish"),
            ClausiusClapeyron = figures.Needed("clausius_clapeyron"),
            TransformationStrain = figures.Needed("transformation_strain"),
            YoungMartensite = figures.Needed("young_martensite"),
            ForwardStart = plateau,
            ForwardFinish = figures.Needed("forward_finish"),
            ReverseStart = figures.Needed("reverse_start"),
            ReverseFinish = figures.Needed("reverse_finish"),
            Asymmetry = figures.Needed("asymmetry"),
        };
        return found.IsInOrder
            ? found
            : throw name.Fault(
                "its loop is not in order.",
                "Loading rises from 'plateau_start' to 'forward_finish', unloading falls from 'reverse_start' to "
                + "'reverse_finish' below it; 'asymmetry' is below 1.");
    }

    private static Sourced ElasticStrain(TableRow name, AlloyFigures figures, Sourced young, Sourced? stress)
    {
        Sourced? given = figures.Optional("elastic_strain");
        if (given is null == stress is null)
        {
            throw name.Fault(
                "its elastic limit is not settled.", "Give 'yield', 'plateau_start' or 'elastic_strain', one of them.");
        }

        return given ?? new Sourced(
            stress!.Value / young.Value, "1", $"of {stress.Spread} MPa", stress.Source,
            $"computed from stress over modulus; stress {stress.How}; modulus {young.How}");
    }

    private static void CheckKnown(IReadOnlyList<TableRow> names, IReadOnlyList<TableRow> figures)
    {
        HashSet<string> known = new(StringComparer.Ordinal);
        foreach (TableRow name in names)
        {
            if (!known.Add(name.Required("alloy")))
                throw name.Fault($"'{name.Required("alloy")}' is listed twice.", "Keep one row.");
        }

        foreach (TableRow row in figures)
        {
            if (!known.Contains(row.Required("alloy")))
                throw row.Fault($"no alloy is called '{row.Required("alloy")}'.", "Name it among the alloys first.");
        }
    }
}
