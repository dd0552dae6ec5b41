using System.Globalization;
using System.Text;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.Csv;
using Archwright.Practice.Stock;

namespace Archwright.Web.Keeping;

/// <summary>The lots of the shelf as a list that its reader takes in again.</summary>
internal static class StockList
{
    /// <summary>The list.</summary>
    public static string Write(IEnumerable<StockLot> lots)
    {
        var list = new StringBuilder(string.Join(',', StockLotsReader.Columns)).Append('\n');
        foreach (StockLot lot in lots)
        {
            list.AppendJoin(',', new[]
            {
                lot.WireId, lot.Jaw?.Word() ?? "either", lot.Form, lot.Lot, lot.Gtin,
                lot.Expires?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
                lot.OnHand.ToString(CultureInfo.InvariantCulture), lot.ReorderAt.ToString(CultureInfo.InvariantCulture),
            }.Select(Cell)).Append('\n');
        }

        return list.ToString();
    }

    /// <summary>A lot from a row that was read.</summary>
    public static StockLot Lot(StockLotRow row) => StockLot.Receive(
        row.WireId, row.Jaw, row.Form, row.Lot, row.Expires, row.Pieces, row.ReorderAt, row.Gtin);

    // RFC 4180: quotation marks around what holds a comma, a mark or a line end; marks inside are doubled.
    private static string Cell(string text) => text.AsSpan().IndexOfAny(",\"\n\r") < 0
        ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
