using Archwright.Dentition.Tables;
using Archwright.Mechanics.Alloys;

namespace Archwright.Dentition.Catalogue;

/// <summary>Reads the alloys of the catalogue.</summary>
internal static class AlloyTable
{
    public static IReadOnlyList<CatalogueAlloy> Read(IReadOnlyList<TableRow> names, IReadOnlyList<TableRow> figures)
    {
        CheckKnown(names, figures);
        return [.. names.Select(name => Alloy(name, FiguresOf(name.Required("alloy"), figures)))];
    }

    private static CatalogueAlloy Alloy(TableRow name, Dictionary<string, Sourced> figures)
    {
        Sourced young = Needed(name, figures, "young", "MPa");
        Sourced? poisson = Optional(name, figures, "poisson", "1");
        Sourced? shear = Optional(name, figures, "shear", "MPa");
        Sourced? yield = Optional(name, figures, "yield", "MPa");
        Sourced? plateau = Optional(name, figures, "plateau_start", "MPa");
        if (name.Required("limit") == "plateau" != plateau is not null)
        {
            throw name.Fault(
                "its limit and its plateau disagree.", "Give 'plateau_start' exactly where limit is plateau.");
        }

        return new CatalogueAlloy
        {
            Id = name.Required("alloy"),
            Title = name.Required("title"),
            Young = young,
            Poisson = poisson,
            Shear = shear,
            Yield = yield,
            PlateauStart = plateau,
            ElasticStrain = ElasticStrain(name, figures, young, yield ?? plateau),
            Nickel = Needed(name, figures, "nickel", "%"),
            Alloy = Law(name, young, poisson, shear),
        };
    }

    private static LinearElastic Law(TableRow name, Sourced young, Sourced? poisson, Sourced? shear)
    {
        if (poisson is not null && shear is null)
            return new LinearElastic(young.Value, poisson.Value);

        return poisson is null && shear is not null
            ? LinearElastic.WithShear(young.Value, shear.Value)
            : throw name.Fault("its torsion is not settled.", "Give 'poisson' or 'shear', one of them.");
    }

    private static Sourced ElasticStrain(
        TableRow name, Dictionary<string, Sourced> figures, Sourced young, Sourced? stress)
    {
        Sourced? given = Optional(name, figures, "elastic_strain", "1");
        if (given is null == stress is null)
        {
            throw name.Fault(
                "its elastic limit is not settled.", "Give 'yield', 'plateau_start' or 'elastic_strain', one of them.");
        }

        return given ?? new Sourced(
            stress!.Value / young.Value, "1", $"of {stress.Spread} MPa", stress.Source,
            $"computed from stress over modulus; stress {stress.How}; modulus {young.How}");
    }

    private static Sourced Needed(TableRow name, Dictionary<string, Sourced> figures, string quantity, string unit) =>
        Optional(name, figures, quantity, unit)
            ?? throw name.Fault($"'{name.Required("alloy")}' has no '{quantity}'.", "Add the row to the alloys.");

    private static Sourced? Optional(TableRow name, Dictionary<string, Sourced> figures, string quantity, string unit)
    {
        if (!figures.TryGetValue(quantity, out Sourced? figure))
            return null;

        return figure.Unit == unit
            ? figure
            : throw name.Fault($"'{quantity}' is given in {figure.Unit}.", $"Give it in {unit}.");
    }

    private static Dictionary<string, Sourced> FiguresOf(string alloy, IReadOnlyList<TableRow> figures)
    {
        var found = new Dictionary<string, Sourced>(StringComparer.Ordinal);
        foreach (TableRow row in figures.Where(row => row.Required("alloy") == alloy))
        {
            Sourced figure = row.Figure();
            if (figure.Value < 0)
                throw row.Fault($"'{row.Required("quantity")}' is negative.", "None of these figures can be.");
            if (!found.TryAdd(row.Required("quantity"), figure))
                throw row.Fault($"'{row.Required("quantity")}' is given twice.", "Keep one row.");
        }

        return found;
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
            if (!Quantities.Contains(row.Required("quantity")))
            {
                throw row.Fault(
                    $"'{row.Required("quantity")}' is no known quantity.", $"Known: {string.Join(", ", Quantities)}.");
            }
        }
    }

    private static readonly string[] Quantities =
        ["young", "poisson", "shear", "yield", "plateau_start", "elastic_strain", "nickel"];
}
