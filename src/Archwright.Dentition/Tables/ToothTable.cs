using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Tables;

/// <summary>Figures by tooth and quantity, the same right and left, from rows with the columns jaw, position,
/// quantity and a sourced figure.</summary>
internal sealed class ToothTable
{
    private readonly string name;
    private readonly Dictionary<(ToothNumber, string), Sourced> figures = [];

    public ToothTable(string name, IEnumerable<TableRow> rows, string unit)
    {
        this.name = name;
        foreach (TableRow row in rows)
        {
            Sourced figure = row.Figure();
            if (figure.Unit != unit)
                throw row.Fault($"the figure is given in {figure.Unit}.", $"Give it in {unit}.");

            foreach (ToothNumber tooth in ToothRows.Teeth(row))
            {
                if (!figures.TryAdd((tooth, row.Required("quantity")), figure))
                    throw row.Fault($"'{row.Required("quantity")}' of this tooth is given twice.", "Keep one row.");
            }
        }
    }

    /// <summary>The teeth that have any figure.</summary>
    public IEnumerable<ToothNumber> Teeth => figures.Keys.Select(key => key.Item1).Distinct();

    public Sourced Of(ToothNumber tooth, string quantity) => figures.TryGetValue((tooth, quantity), out Sourced? figure)
        ? figure
        : throw new TableException($"{name}: tooth {tooth} has no '{quantity}'. Add the row.");
}
