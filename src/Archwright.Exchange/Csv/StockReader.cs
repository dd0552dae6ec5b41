using Archwright.Dentition.Catalogue;
using Archwright.Exchange.Files;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Csv;

/// <summary>Reads which wires a practice has in stock: ids of the catalogue, one a line, or a table with a column
/// <c>wire</c> whose other columns do not matter here.</summary>
public static class StockReader
{
    private const string Column = "wire";

    /// <summary>Reads a file.</summary>
    /// <param name="path">Its name.</param>
    /// <returns>Each wire once, in the order of the file.</returns>
    public static Read<IReadOnlyList<CatalogueWire>> Read(string path)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(path, problems), problems);
    }

    /// <summary>Reads a stream to its end; it is left open.</summary>
    /// <returns>Each wire once, in the order of the stream.</returns>
    public static Read<IReadOnlyList<CatalogueWire>> Read(Stream stream)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(stream, problems), problems);
    }

    private static Read<IReadOnlyList<CatalogueWire>> Read(byte[]? text, ProblemList problems)
    {
        if (text is null || CsvTable.Rows(text, problems) is not { } rows)
            return problems.Settle<IReadOnlyList<CatalogueWire>>(null);

        bool isTable = rows.Count > 0
            && (rows[0].Cells.Length > 1 || rows[0].Cells[0].Equals(Column, StringComparison.OrdinalIgnoreCase));
        List<CatalogueWire> wires = isTable ? Table(rows, problems) : List(rows, problems);
        if (wires.Count == 0 && problems.IsEmpty)
        {
            problems.Add(
                ProblemCodes.TableEmpty, Problem.WholeFile, "No wire is listed.",
                "Write the ids of the wires in stock, one a line: ss-016; “archwright wires” lists them.");
        }

        return problems.Settle<IReadOnlyList<CatalogueWire>>(wires);
    }

    private static List<CatalogueWire> Table(List<CsvRow> rows, ProblemList problems)
    {
        var wires = new List<CatalogueWire>();
        if (CsvColumns.Of(rows[0], [Column], known: null, problems) is not { } columns)
            return wires;

        foreach (CsvRow row in rows.Skip(1))
        {
            if (columns.Fits(row) && columns.NeedText(row, Column) is { } id)
                Add(wires, id, CsvColumns.Path(row, Column), problems);
        }

        return wires;
    }

    private static List<CatalogueWire> List(List<CsvRow> rows, ProblemList problems)
    {
        var wires = new List<CatalogueWire>();
        foreach (CsvRow row in rows)
        {
            foreach (string id in row.Cells.Where(cell => cell.Length > 0))
                Add(wires, id, $"line {row.Line}", problems);
        }

        return wires;
    }

    private static void Add(List<CatalogueWire> wires, string id, string path, ProblemList problems)
    {
        if (!WireCatalogue.Default.TryFind(id, out CatalogueWire? wire))
        {
            problems.Add(
                ProblemCodes.StockUnknown, path,
                $"There is no wire {Say.Quote(id)} in the catalogue."
                + Nearest.Hint(id, WireCatalogue.Default.Wires.Select(w => w.Id)),
                "Correct the id, or take the line out; “archwright wires” lists the catalogue.");
        }
        else if (!wires.Contains(wire))
        {
            wires.Add(wire);
        }
    }
}
