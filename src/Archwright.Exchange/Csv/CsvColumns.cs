using System.Globalization;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Csv;

/// <summary>Access to the cells of a table by the names in its first row. Whatever is wrong goes to the
/// problems.</summary>
internal sealed class CsvColumns
{
    private readonly Dictionary<string, int> _index = new(StringComparer.OrdinalIgnoreCase);
    private readonly ProblemList _problems;
    private readonly CsvRow _head;

    private CsvColumns(CsvRow head, ProblemList problems)
    {
        _head = head;
        _problems = problems;
    }

    /// <summary>Checks the first row.</summary>
    /// <param name="head">It.</param>
    /// <param name="needed">Columns that must be there.</param>
    /// <param name="known">Further columns that may; null when any may.</param>
    /// <param name="problems">Where problems go.</param>
    /// <returns>Null when a needed column is not there.</returns>
    public static CsvColumns? Of(
        CsvRow head, IReadOnlyList<string> needed, IReadOnlyList<string>? known, ProblemList problems)
    {
        var columns = new CsvColumns(head, problems);
        string[] all = [.. needed, .. known ?? []];
        foreach ((int i, string name) in head.Cells.Index())
        {
            bool counts = all.Contains(name, StringComparer.OrdinalIgnoreCase);
            if (!counts && known is not null)
            {
                problems.Add(
                    ProblemCodes.ColumnUnknown, $"line {head.Line}, column {i + 1}",
                    $"{Say.Quote(name)} is no column of this table.{Nearest.Hint(name, all)}",
                    $"The columns are {Say.List(all)}.");
            }
            else if (!columns._index.TryAdd(name, i) && counts)
            {
                problems.Add(
                    ProblemCodes.ColumnTwice, $"line {head.Line}, column {i + 1}",
                    $"The column {Say.Quote(name)} is there twice.", "Keep one of the two.");
            }
        }

        string[] missing = [.. needed.Where(name => !columns._index.ContainsKey(name))];
        foreach (string name in missing)
        {
            problems.Add(
                ProblemCodes.ColumnMissing, $"line {head.Line}", $"The column {Say.Quote(name)} is missing.",
                $"Begin the table with a row of names: {string.Join(",", all)}.");
        }

        return missing.Length == 0 ? columns : null;
    }

    /// <summary>True when the column is there.</summary>
    public bool Has(string column) => _index.ContainsKey(column);

    /// <summary>Reports a row that has not one cell a column.</summary>
    public bool Fits(CsvRow row)
    {
        if (row.Cells.Length == _head.Cells.Length)
            return true;

        _problems.Add(
            ProblemCodes.RowWidth, $"line {row.Line}",
            $"The row has {row.Cells.Length} cells, the first row {_head.Cells.Length}.",
            "Give one cell a column; put a text that holds a comma in quotation marks, and write decimal fractions "
            + "with a point.");
        return false;
    }

    /// <summary>Text of a cell; empty when the column is not there.</summary>
    public string Text(CsvRow row, string column) =>
        _index.TryGetValue(column, out int i) && i < row.Cells.Length ? row.Cells[i] : "";

    /// <summary>Text of a cell that must not be empty; null and a problem when it is.</summary>
    public string? NeedText(CsvRow row, string column)
    {
        string text = Text(row, column);
        if (text.Length > 0)
            return text;

        _problems.Add(
            ProblemCodes.CellEmpty, Path(row, column), $"The cell of {Say.Quote(column)} is empty.", "Fill it in.");
        return null;
    }

    /// <summary>A figure within its limits; null without a problem where the cell is empty.</summary>
    public double? NumberIfAny(CsvRow row, string column, Quantity quantity) =>
        Text(row, column).Length == 0 ? null : Number(row, column, quantity);

    /// <summary>A figure within its limits; an empty cell is <paramref name="fallback"/> where there is
    /// one.</summary>
    public double? Number(CsvRow row, string column, Quantity quantity, double? fallback = null)
    {
        string text = Text(row, column);
        if (text.Length == 0 && fallback is not null)
            return fallback;

        bool isNumber = double.TryParse(
            text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
            CultureInfo.InvariantCulture, out double value) && !double.IsNaN(value);
        if (isNumber && value >= quantity.Low && value <= quantity.High)
            return value;

        string shown = text.Length <= 24 ? text : text[..24] + "…";
        _problems.Add(
            ProblemCodes.CellNumber, Path(row, column),
            isNumber
                ? $"The {quantity.Name} is {quantity.WithUnit(shown)}; it must lie {quantity.Range}."
                : $"The {quantity.Name} is {Say.Quote(text)}, not a number.",
            isNumber ? quantity.Remedy : $"Write a number {quantity.Range}, with a decimal point and without a unit.");
        return null;
    }

    /// <summary>Place of a cell.</summary>
    public static string Path(CsvRow row, string column) => $"line {row.Line}, {column}";
}
