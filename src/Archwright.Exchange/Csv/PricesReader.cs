using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Exchange.Files;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Csv;

/// <summary>Reads what wires cost: a table with the columns <c>id</c> and <c>price</c>, one row a wire, in one
/// currency.</summary>
public static class PricesReader
{
    private const string Id = "id";
    private const string Price = "price";

    private static readonly Quantity Limits = new(
        "price", "", 0, 100_000, "Give a plain figure, all in one currency.");

    /// <summary>Reads a file.</summary>
    /// <param name="path">Its name.</param>
    /// <returns>Price of one wire by its id.</returns>
    public static Read<ImmutableDictionary<string, decimal>> Read(string path)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(path, problems), problems);
    }

    /// <summary>Reads a stream to its end; it is left open.</summary>
    /// <returns>Price of one wire by its id.</returns>
    public static Read<ImmutableDictionary<string, decimal>> Read(Stream stream)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(stream, problems), problems);
    }

    private static Read<ImmutableDictionary<string, decimal>> Read(byte[]? text, ProblemList problems)
    {
        if (text is null || CsvTable.Rows(text, problems) is not { } rows)
            return problems.Settle<ImmutableDictionary<string, decimal>>(null);

        if (rows.Count < 2)
        {
            problems.Add(
                ProblemCodes.TableEmpty, Problem.WholeFile, "The table has no row below its names.",
                $"Write {Id},{Price} and below it one row a wire: ss-016,2.50.");
            return problems.Settle<ImmutableDictionary<string, decimal>>(null);
        }

        if (CsvColumns.Of(rows[0], [Id, Price], [], problems) is not { } columns)
            return problems.Settle<ImmutableDictionary<string, decimal>>(null);

        var prices = ImmutableDictionary.CreateBuilder<string, decimal>();
        foreach (CsvRow row in rows.Skip(1).Where(columns.Fits))
            Add(row, columns, prices, problems);
        return problems.Settle<ImmutableDictionary<string, decimal>>(problems.IsEmpty ? prices.ToImmutable() : null);
    }

    private static void Add(
        CsvRow row, CsvColumns columns, ImmutableDictionary<string, decimal>.Builder prices, ProblemList problems)
    {
        double? price = columns.Number(row, Price, Limits);
        if (columns.NeedText(row, Id) is not { } id)
            return;

        if (!WireCatalogue.Default.TryFind(id, out CatalogueWire? wire))
        {
            problems.Add(
                ProblemCodes.StockUnknown, CsvColumns.Path(row, Id),
                $"There is no wire {Say.Quote(id)} in the catalogue."
                + Nearest.Hint(id, WireCatalogue.Default.Wires.Select(w => w.Id)),
                "Correct the id, or take the line out; “archwright wires” lists the catalogue.");
        }
        else if (!prices.TryAdd(wire.Id, (decimal)(price ?? 0)))
        {
            problems.Add(
                ProblemCodes.RowTwice, CsvColumns.Path(row, Id), $"{wire.Id} has a price already.",
                "Keep one of the rows.");
        }
    }
}
