using System.Collections.Immutable;
using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.Files;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Csv;

/// <summary>One lot of a list.</summary>
/// <param name="WireId">Id of the wire in the catalogue, or the practice's own name of it.</param>
/// <param name="Jaw">Arch it is formed for; null for either.</param>
/// <param name="Form">Form, as "ovoid"; may be empty.</param>
/// <param name="Lot">Lot as on the label.</param>
/// <param name="Gtin">Number of the article, GTIN-14; empty when the list has none.</param>
/// <param name="Expires">Last day of use; null when the label has none.</param>
/// <param name="Pieces">Pieces there.</param>
/// <param name="ReorderAt">Pieces at which it is to be ordered again.</param>
public sealed record StockLotRow(
    string WireId, Jaw? Jaw, string Form, string Lot, string Gtin, DateOnly? Expires, int Pieces, int ReorderAt);

/// <summary>Reads a list of lots, with the columns of <see cref="Columns"/>. All that is wrong is listed with its line;
/// where anything is, nothing is taken, so that nothing is lost between the rows that read well.</summary>
public static class StockLotsReader
{
    private const string WireColumn = "wire";
    private const string JawColumn = "arch";
    private const string FormColumn = "form";
    private const string LotColumn = "lot";
    private const string GtinColumn = "gtin";
    private const string ExpiresColumn = "expires";
    private const string PiecesColumn = "pieces";
    private const string ReorderColumn = "reorder_at";

    private static readonly Quantity Count = new("count", "pieces", 0, 9999, "Give a whole number of pieces.");

    /// <summary>The columns, as a list is written; <c>wire</c>, <c>lot</c> and <c>pieces</c> are needed.</summary>
    public static ImmutableArray<string> Columns { get; } =
        [WireColumn, JawColumn, FormColumn, LotColumn, GtinColumn, ExpiresColumn, PiecesColumn, ReorderColumn];

    /// <summary>Reads a stream to its end; it is left open.</summary>
    /// <param name="stream">The list.</param>
    /// <param name="own">The practice's own names of wires that the catalogue has not, as on its shelf; null for
    /// none.</param>
    public static Read<IReadOnlyList<StockLotRow>> Read(Stream stream, IReadOnlyCollection<string>? own = null)
    {
        var problems = new ProblemList();
        if (InputFile.Load(stream, problems) is not { } text || CsvTable.Rows(text, problems) is not { } rows)
            return problems.Settle<IReadOnlyList<StockLotRow>>(null);

        if (rows.Count < 2)
        {
            problems.Add(
                ProblemCodes.TableEmpty, Problem.WholeFile, "The list has no lot below its names.",
                $"Write {string.Join(",", Columns)} and below it one row a lot.");
            return problems.Settle<IReadOnlyList<StockLotRow>>(null);
        }

        string[] needed = [WireColumn, LotColumn, PiecesColumn];
        if (CsvColumns.Of(rows[0], needed, [.. Columns.Except(needed, StringComparer.Ordinal)], problems)
            is not { } columns)
        {
            return problems.Settle<IReadOnlyList<StockLotRow>>(null);
        }

        List<StockLotRow> lots = [];
        foreach (CsvRow row in rows.Skip(1).Where(columns.Fits))
            Add(row, columns, own ?? [], lots, problems);
        return problems.Settle<IReadOnlyList<StockLotRow>>(lots);
    }

    private static void Add(
        CsvRow row, CsvColumns columns, IReadOnlyCollection<string> own, List<StockLotRow> lots, ProblemList problems)
    {
        int before = problems.Count;
        string? wire = Wire(row, columns, own, problems);
        string? lot = columns.NeedText(row, LotColumn);
        Jaw? jaw = JawOf(row, columns, problems);
        string gtin = Gtin(row, columns, problems);
        DateOnly? expires = Day(row, columns, problems);
        int? pieces = Whole(row, columns, PiecesColumn, null, problems);
        int? reorder = Whole(row, columns, ReorderColumn, 0, problems);
        if (problems.Count > before || wire is null || lot is null || pieces is null || reorder is null)
            return;

        if (lots.Any(one => one.WireId == wire && one.Lot == lot && one.Jaw == jaw))
        {
            problems.Add(
                ProblemCodes.RowTwice, CsvColumns.Path(row, LotColumn),
                $"Lot {Say.Quote(lot)} of {wire} has been given before.",
                "Keep one of the rows, with the sum of both.");
            return;
        }

        lots.Add(new StockLotRow(
            wire, jaw, columns.Text(row, FormColumn), lot, gtin, expires, pieces.Value, reorder.Value));
    }

    private static string? Wire(
        CsvRow row, CsvColumns columns, IReadOnlyCollection<string> own, ProblemList problems)
    {
        if (columns.NeedText(row, WireColumn) is not { } id)
            return null;

        if (WireCatalogue.Default.TryFind(id, out CatalogueWire? wire))
            return wire.Id;
        if (own.Contains(id, StringComparer.Ordinal))
            return id;

        problems.Add(
            ProblemCodes.StockUnknown, CsvColumns.Path(row, WireColumn),
            $"There is no wire {Say.Quote(id)} in the catalogue."
            + Nearest.Hint(id, WireCatalogue.Default.Wires.Select(one => one.Id)),
            "Correct the id, or take the line out; “archwright wires” lists the catalogue.");
        return null;
    }

    private static Jaw? JawOf(CsvRow row, CsvColumns columns, ProblemList problems)
    {
        string text = columns.Text(row, JawColumn);
        if (text.Equals("upper", StringComparison.OrdinalIgnoreCase))
            return Jaw.Upper;
        if (text.Equals("lower", StringComparison.OrdinalIgnoreCase))
            return Jaw.Lower;
        if (text.Length > 0 && !text.Equals("either", StringComparison.OrdinalIgnoreCase))
            Unreadable(row, JawColumn, $"{Say.Quote(text)} is no arch.", "Write upper, lower or either.", problems);
        return null;
    }

    private static string Gtin(CsvRow row, CsvColumns columns, ProblemList problems)
    {
        string text = columns.Text(row, GtinColumn);
        if (text.Length == 0)
            return "";

        if (text.Length is 8 or 12 or 13 or 14 && text.All(char.IsAsciiDigit) && IsChecked(text))
            return text.PadLeft(14, '0');

        Unreadable(
            row, GtinColumn, $"{Say.Quote(text)} is no number of an article: its length or its last digit is wrong.",
            "Copy the digits under the barcode, 8 to 14 of them, or leave the cell empty.", problems);
        return "";
    }

    // GS1 General Specifications, section 7.9: from the right, digits count three and one by turns, and the sum is a
    // multiple of ten. From memory.
    private static bool IsChecked(string digits)
    {
        int sum = 0;
        for (int i = 0; i < digits.Length; i++)
            sum += (digits[digits.Length - 1 - i] - '0') * (i % 2 == 0 ? 1 : 3);
        return sum % 10 == 0;
    }

    private static DateOnly? Day(CsvRow row, CsvColumns columns, ProblemList problems)
    {
        string text = columns.Text(row, ExpiresColumn);
        if (text.Length == 0)
            return null;

        if (DateOnly.TryParseExact(
            text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
        {
            return day;
        }

        Unreadable(row, ExpiresColumn, $"{Say.Quote(text)} is no day.", "Write year-month-day: 2027-03-31.", problems);
        return null;
    }

    private static int? Whole(CsvRow row, CsvColumns columns, string column, double? fallback, ProblemList problems)
    {
        if (columns.Number(row, column, Count, fallback) is not { } number)
            return null;

        if (number == Math.Floor(number))
            return (int)number;

        Unreadable(
            row, column, $"{Say.Quote(columns.Text(row, column))} is no whole number.", Count.Remedy, problems);
        return null;
    }

    private static void Unreadable(
        CsvRow row, string column, string message, string remedy, ProblemList problems) =>
        problems.Add(ProblemCodes.StockCell, CsvColumns.Path(row, column), message, remedy);
}
