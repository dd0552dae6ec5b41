using System.Reflection;
using System.Text;

namespace Archwright.Dentition.Tables;

/// <summary>Reads the data tables that come with the library: comma-separated text with a line of column names,
/// quotes where a cell holds a comma, lines that begin with # left out.</summary>
internal static class Table
{
    private const int MostBytes = 4_000_000;

    /// <summary>The rows of a table that is part of the library, by its path inside the project.</summary>
    public static IReadOnlyList<TableRow> Embedded(string path) => Embedded(typeof(Table).Assembly, path);

    /// <summary>The rows of a table that is part of another library of this project.</summary>
    public static IReadOnlyList<TableRow> Embedded(Assembly assembly, string path)
    {
        string name = assembly.GetName().Name + "." + path.Replace('/', '.');
        using Stream stream = assembly.GetManifestResourceStream(name)
            ?? throw new TableException($"The table {path} is missing from the library. Build it again.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return Parse(path, reader.ReadToEnd());
    }

    /// <summary>The rows of a table given as text.</summary>
    /// <exception cref="TableException">A line has too many or too few cells, a quote stays open, or two columns have
    /// the same name.</exception>
    public static IReadOnlyList<TableRow> Parse(string table, string text)
    {
        if (text.Length > MostBytes)
            throw new TableException(table, 1, "the table is too long.", $"At most {MostBytes} characters are read.");

        string[] lines = text.Split('\n');
        string[]? columns = null;
        List<TableRow> rows = [];
        for (int i = 0; i < lines.Length; i++)
        {
            string line = lines[i].TrimEnd('\r');
            if (line.Length == 0 || line[0] == '#')
                continue;

            List<string> cells = Cells(table, i + 1, line);
            if (columns is null)
            {
                columns = [.. cells];
                CheckColumns(table, i + 1, columns);
                continue;
            }

            rows.Add(Row(table, i + 1, columns, cells));
        }

        return rows;
    }

    private static TableRow Row(string table, int line, string[] columns, List<string> cells)
    {
        if (cells.Count != columns.Length)
        {
            throw new TableException(
                table, line, $"the row has {cells.Count} cells, the first line {columns.Length}.",
                "Put a text that holds a comma in quotes.");
        }

        var named = new Dictionary<string, string>(StringComparer.Ordinal);
        for (int i = 0; i < columns.Length; i++)
            named[columns[i]] = cells[i];
        return new TableRow(table, line, named);
    }

    private static void CheckColumns(string table, int line, string[] columns)
    {
        if (columns.Distinct(StringComparer.Ordinal).Count() != columns.Length)
            throw new TableException(table, line, "two columns have the same name.", "Name each column once.");
    }

    private static List<string> Cells(string table, int number, string line)
    {
        List<string> cells = [];
        var cell = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < line.Length; i++)
        {
            char c = line[i];
            if (quoted && c == '"' && i + 1 < line.Length && line[i + 1] == '"')
            {
                cell.Append('"');
                i++;
            }
            else if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString().Trim());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        if (quoted)
            throw new TableException(table, number, "a quote is not closed.", "Close it on the same line.");

        cells.Add(cell.ToString().Trim());
        return cells;
    }
}
