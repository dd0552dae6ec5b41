using System.Globalization;

namespace Archwright.Architecture.Tests;

/// <summary>Every figure of the trade in a data table names its source and how we have it. Rests on the house's own
/// rule; the readers of the tables refuse such rows too, this test reads the files without them.</summary>
[Trait("basis", "law")]
public sealed class TableTests
{
    private static readonly string[] Needed = ["source", "how"];

    [Fact]
    public void Every_row_of_every_data_table_names_its_source() =>
        Findings.None(
            "A figure without a source cannot be checked by the clinician who relies on it:",
            SourceTree.Under("src/", ".csv").SelectMany(file => Unsourced(file, SourceTree.Lines(file))));

    [Fact]
    public void A_planted_row_without_a_source_is_found()
    {
        Assert.Empty(Unsourced("a.csv", ["# note", "id,value,source,how", "a,1,\"Kusy, 1997\",found"]));
        Assert.Single(Unsourced("a.csv", ["id,value,source,how", "a,1,\"Kusy, 1997\",found", "b,2,,found"]));
        Assert.Single(Unsourced("a.csv", ["id,value", "a,1"]));
        Assert.Empty(Unsourced("a.csv", ["id,title", "ss,stainless steel"]));
    }

    private static IEnumerable<string> Unsourced(string file, string[] lines)
    {
        (int Index, string Item)[] rows =
            [.. lines.Index().Where(line => line.Item.Length > 0 && !line.Item.StartsWith('#'))];
        if (rows.Length == 0)
            return [$"{file} is empty"];

        string[] header = Cells(rows[0].Item);
        if (!rows.Any(row => Cells(row.Item).Any(cell => double.TryParse(cell, CultureInfo.InvariantCulture, out _))))
            return [];      // words alone: names and their spellings

        string[] absent = [.. Needed.Except(header, StringComparer.Ordinal)];
        if (absent.Length > 0)
            return [$"{file} has no column '{string.Join("', '", absent)}'"];

        return from row in rows.Skip(1)
               let cells = Cells(row.Item)
               from column in Needed
               let at = Array.IndexOf(header, column)
               where at >= cells.Length || string.IsNullOrWhiteSpace(cells[at])
               select $"{file}:{row.Index + 1} has no '{column}'";
    }

    // Commas inside double quotes do not part cells; no cell of our tables spans lines.
    private static string[] Cells(string line)
    {
        List<string> cells = [""];
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"')
                quoted = !quoted;
            else if (c == ',' && !quoted)
                cells.Add("");
            else
                cells[^1] += c;
        }

        return [.. cells.Select(cell => cell.Trim())];
    }
}
