using Archwright.Dentition.Tables;

namespace Archwright.Dentition.Catalogue;

/// <summary>The figures of one alloy by quantity, from the rows of the table.</summary>
internal sealed class AlloyFigures
{
    // Every quantity that a row may give, with the unit it is given in.
    private static readonly Dictionary<string, string> Units = new(StringComparer.Ordinal)
    {
        ["young"] = "MPa",
        ["poisson"] = "1",
        ["shear"] = "MPa",
        ["yield"] = "MPa",
        ["bending_yield"] = "MPa",
        ["hardening"] = "MPa",
        ["plateau_start"] = "MPa",
        ["elastic_strain"] = "1",
        ["nickel"] = "%",
        ["austenite_finish"] = "degC",
        ["clausius_clapeyron"] = "MPa/K",
        ["transformation_strain"] = "1",
        ["young_martensite"] = "MPa",
        ["forward_finish"] = "MPa",
        ["reverse_start"] = "MPa",
        ["reverse_finish"] = "MPa",
        ["asymmetry"] = "1",
        ["friction_dry"] = "1",
        ["friction_wet"] = "1",
    };

    // The only ones with a meaning below nil: martensite that stays without stress, and a finish below freezing.
    private static readonly string[] MayBeNegative = ["austenite_finish", "reverse_finish"];

    private readonly TableRow name;
    private readonly Dictionary<string, Sourced> figures = new(StringComparer.Ordinal);

    public AlloyFigures(TableRow name, IReadOnlyList<TableRow> rows)
    {
        this.name = name;
        foreach (TableRow row in rows.Where(row => row.Required("alloy") == name.Required("alloy")))
            Add(row);
    }

    public Sourced Needed(string quantity) => Optional(quantity)
        ?? throw name.Fault($"'{name.Required("alloy")}' has no '{quantity}'.", "Add the row to the alloys.");

    public Sourced? Optional(string quantity) => figures.GetValueOrDefault(quantity);

    /// <summary>True when any of these is given.</summary>
    public bool HasAny(params ReadOnlySpan<string> quantities)
    {
        foreach (string quantity in quantities)
        {
            if (figures.ContainsKey(quantity))
                return true;
        }

        return false;
    }

    private void Add(TableRow row)
    {
        string quantity = row.Required("quantity");
        if (!Units.TryGetValue(quantity, out string? unit))
            throw row.Fault($"'{quantity}' is no known quantity.", $"Known: {string.Join(", ", Units.Keys)}.");

        Sourced figure = row.Figure();
        if (figure.Unit != unit)
            throw row.Fault($"'{quantity}' is given in {figure.Unit}.", $"Give it in {unit}.");
        if (figure.Value < 0 && !MayBeNegative.Contains(quantity))
            throw row.Fault($"'{quantity}' is negative.", "This figure cannot be.");
        if (!figures.TryAdd(quantity, figure))
            throw row.Fault($"'{quantity}' is given twice.", "Keep one row.");
    }
}
