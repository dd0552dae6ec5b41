using System.Globalization;

namespace Archwright.Dentition.Tables;

/// <summary>One line of a data table, its cells by the names of the columns.</summary>
internal sealed class TableRow(string table, int line, IReadOnlyDictionary<string, string> cells)
{
    public int Line => line;

    /// <summary>A cell that may be empty.</summary>
    public string Text(string column) =>
        cells.TryGetValue(column, out string? value)
            ? value
            : throw Fault($"it has no column '{column}'.", "Add the column to the first line.");

    /// <summary>A cell that must not be empty.</summary>
    public string Required(string column)
    {
        string text = Text(column);
        return text.Length > 0 ? text : throw Fault($"'{column}' is empty.", "Every row states it.");
    }

    public double Number(string column) =>
        double.TryParse(Required(column), NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
        && double.IsFinite(value)
            ? value
            : throw Fault($"'{column}' is '{Text(column)}'.", "A plain number with a decimal point is wanted.");

    public int Integer(string column) =>
        int.TryParse(Required(column), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value)
            ? value
            : throw Fault($"'{column}' is '{Text(column)}'.", "A whole number is wanted.");

    /// <summary>The figure of this row with its source; a row without a source is refused.</summary>
    public Sourced Figure(string column = "value") =>
        new(Number(column), Required("unit"), Text("spread"), Source(), How());

    public string Source()
    {
        string source = Text("source");
        return source.Length > 0
            ? source
            : throw Fault("the row has no source.", "Name one, or write 'common practice, no source'.");
    }

    public string How()
    {
        string how = Text("how");
        return KnownWays.Any(way => how.StartsWith(way, StringComparison.Ordinal))
            ? how
            : throw Fault(
                $"'how' is '{how}'.", "Begin it with found, from memory, computed or common practice.");
    }

    public TableException Fault(string what, string mend) => new(table, line, what, mend);

    private static readonly string[] KnownWays = ["found", "from memory", "computed", "common practice"];
}
