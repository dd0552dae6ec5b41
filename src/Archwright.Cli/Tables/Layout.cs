using System.Globalization;
using Archwright.Cli.Running;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Archwright.Cli.Tables;

/// <summary>The look of every table and paragraph on the screen.</summary>
internal static class Layout
{
    /// <summary>An empty table: one rule under the heading, figures to the right.</summary>
    public static Table Table(params (string Heading, bool IsFigure)[] columns)
    {
        var table = new Table { Border = new RuleOnly(), UseSafeBorder = false, ShowRowSeparators = false };
        foreach ((string heading, bool isFigure) in columns)
        {
            var column = new TableColumn(new Text(heading))
            {
                Padding = new Padding(0, 0, 2, 0), NoWrap = isFigure,
            };
            table.AddColumn(isFigure ? column.RightAligned() : column);
        }

        return table;
    }

    /// <summary>A whole number.</summary>
    public static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A heading.</summary>
    public static void Heading(Terminal terminal, string text) =>
        terminal.Console.Write(new Text(text + "\n", new Style(decoration: Decoration.Bold)));

    /// <summary>A paragraph, wrapped to the width.</summary>
    public static void Paragraph(Terminal terminal, string text, string indent = "", Style? style = null)
    {
        foreach (string line in Wrap.Lines(text, terminal.Width - indent.Length))
            terminal.Console.Write(new Text(indent + line + "\n", style));
    }

    /// <summary>An empty line.</summary>
    public static void Gap(Terminal terminal) => terminal.Console.Write(new Text("\n"));

    /// <summary>Writes a table.</summary>
    public static void Write(Terminal terminal, Table table)
    {
        foreach (string line in Lines(terminal, table))
            terminal.Output.WriteLine(line);
    }

    /// <summary>The lines of a table, without blanks at their ends.</summary>
    public static IReadOnlyList<string> Lines(Terminal terminal, Table table)
    {
        using var text = new StringWriter { NewLine = "\n" };
        IAnsiConsole console = terminal.ConsoleOver(text);
        console.Profile.Width = terminal.Width + table.Columns.Count + 1; // it counts borders that we do not draw
        console.Write(table);
        return [.. text.ToString().TrimEnd('\n').Split('\n').Select(line => line.TrimEnd())];
    }

    /// <summary>For what needs a second look; never the only sign of it.</summary>
    public static Style Warning { get; } = new(Color.DarkOrange3, decoration: Decoration.Bold);

    /// <summary>For names.</summary>
    public static Style Strong { get; } = new(decoration: Decoration.Bold);

    /// <summary>For small print.</summary>
    public static Style Quiet { get; } = new(decoration: Decoration.Dim);

    private sealed class RuleOnly : TableBorder
    {
        public override string GetPart(TableBorderPart part) => part switch
        {
            TableBorderPart.HeaderBottom => "─",
            TableBorderPart.HeaderBottomSeparator => "─",
            _ => "",
        };
    }
}
