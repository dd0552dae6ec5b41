using System.Collections.Immutable;
using System.Text;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Csv;

/// <summary>One row of a table.</summary>
/// <param name="Line">Line of the file on which it starts, from 1.</param>
/// <param name="Cells">Trimmed texts.</param>
internal sealed record CsvRow(int Line, ImmutableArray<string> Cells);

/// <summary>Splits a text into rows and cells: commas, semicolons or tabs, cells in quotation marks where they hold one
/// of these or a line break (RFC 4180); blank lines and lines that begin with # are left out.</summary>
internal static class CsvTable
{
    /// <summary>Most rows that are read.</summary>
    public const int MostRows = 20_000;

    /// <summary>The rows, or null with a problem.</summary>
    public static List<CsvRow>? Rows(byte[] utf8, ProblemList problems)
    {
        string text = Encoding.UTF8.GetString(utf8);
        char separator = SeparatorOf(text);
        var rows = new List<CsvRow>();
        int at = 0;
        int line = 1;
        while (at < text.Length)
        {
            int start = line;
            if (text[at] == '#')
            {
                SkipLine(text, ref at, ref line);
                continue;
            }

            if (Row(text, separator, ref at, ref line) is not { } cells)
            {
                problems.Add(
                    ProblemCodes.QuoteOpen, $"line {start}", "A quotation mark is opened here and never closed.",
                    "Close it, or write two in a row where the mark itself is meant.");
                return null;
            }

            if (cells.TrueForAll(cell => cell.Length == 0))
                continue;

            if (rows.Count == MostRows)
            {
                problems.Add(
                    ProblemCodes.RowsTooMany, $"line {start}", $"The table has more than {MostRows} rows.",
                    "Check that it is the right file.");
                return null;
            }

            rows.Add(new CsvRow(start, [.. cells]));
        }

        return rows;
    }

    // The separator is the one that occurs most in the first line that says something.
    private static char SeparatorOf(string text)
    {
        foreach (string line in text.Split('\n', 200))
        {
            if (line.Trim().Length > 0 && line[0] != '#')
                return ",;\t".MaxBy(candidate => line.Count(c => c == candidate));
        }

        return ',';
    }

    private static void SkipLine(string text, ref int at, ref int line)
    {
        while (at < text.Length && text[at] != '\n')
            at++;
        at++;
        line++;
    }

    private static List<string>? Row(string text, char separator, ref int at, ref int line)
    {
        var cells = new List<string>();
        while (true)
        {
            if (Cell(text, separator, ref at, ref line) is not { } cell)
                return null;

            cells.Add(cell.Trim());
            if (at >= text.Length)
                return cells;

            char end = text[at++];
            if (end == '\n')
            {
                line++;
                return cells;
            }
        }
    }

    // Leaves the place at the separator or line end behind the cell; null when a quotation mark stays open.
    private static string? Cell(string text, char separator, ref int at, ref int line)
    {
        while (at < text.Length && text[at] == ' ')
            at++;
        if (at >= text.Length || text[at] != '"')
            return Plain(text, separator, ref at);

        var cell = new StringBuilder();
        at++;
        while (at < text.Length)
        {
            char c = text[at++];
            if (c == '\n')
                line++;

            if (c != '"')
                cell.Append(c);
            else if (at < text.Length && text[at] == '"')
                cell.Append(text[at++]);
            else
                return cell.Append(Plain(text, separator, ref at)).ToString();
        }

        return null;
    }

    private static string Plain(string text, char separator, ref int at)
    {
        int start = at;
        while (at < text.Length && text[at] != separator && text[at] != '\n')
            at++;
        return text[start..at];
    }
}
