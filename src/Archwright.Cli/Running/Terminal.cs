using System.Text;
using Spectre.Console;

namespace Archwright.Cli.Running;

/// <summary>Where a run writes: data to standard output, talk to standard error.</summary>
internal sealed class Terminal : IDisposable
{
    /// <summary>Columns of tables when the output goes to a file or a pipe.</summary>
    public const int UsualWidth = 120;

    private const int NarrowestWidth = 72;

    /// <summary>A place to write.</summary>
    /// <param name="output">Standard output, UTF-8.</param>
    /// <param name="error">Standard error, UTF-8.</param>
    /// <param name="width">Columns.</param>
    /// <param name="outputIsScreen">Somebody watches standard output: colours are welcome.</param>
    /// <param name="errorIsScreen">Somebody watches standard error: progress is welcome.</param>
    public Terminal(Stream output, Stream error, int width, bool outputIsScreen = false, bool errorIsScreen = false)
    {
        OutputStream = output;
        Output = Writer(output);
        Error = Writer(error);
        Width = Math.Max(width, NarrowestWidth);
        OutputIsScreen = outputIsScreen;
        ErrorIsScreen = errorIsScreen;
        Console = ConsoleOver(Output);
    }

    /// <summary>Standard output as bytes, for JSON.</summary>
    public Stream OutputStream { get; }

    /// <summary>Standard output as text.</summary>
    public TextWriter Output { get; }

    /// <summary>Standard error as text.</summary>
    public TextWriter Error { get; }

    /// <summary>Standard output for tables.</summary>
    public IAnsiConsole Console { get; }

    /// <summary>Columns.</summary>
    public int Width { get; }

    /// <summary>Whether somebody watches standard output.</summary>
    public bool OutputIsScreen { get; }

    /// <summary>Whether somebody watches standard error.</summary>
    public bool ErrorIsScreen { get; }

    /// <summary>The terminal of this process.</summary>
    public static Terminal OfThisProcess()
    {
        if (!System.Console.IsOutputRedirected || !System.Console.IsErrorRedirected)
            System.Console.OutputEncoding = new UTF8Encoding(false);

        return new Terminal(
            System.Console.OpenStandardOutput(),
            System.Console.OpenStandardError(),
            System.Console.IsOutputRedirected ? UsualWidth : WindowWidth(),
            !System.Console.IsOutputRedirected,
            !System.Console.IsErrorRedirected);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Output.Dispose();
        Error.Dispose();
    }

    private static int WindowWidth()
    {
        try
        {
            return System.Console.WindowWidth is > 0 and int width ? Math.Min(width, 160) : UsualWidth;
        }
        catch (IOException)
        {
            return UsualWidth; // a screen that does not say how wide it is
        }
    }

    private static StreamWriter Writer(Stream stream) =>
        new(stream, new UTF8Encoding(false), leaveOpen: true) { AutoFlush = true, NewLine = "\n" };

    /// <summary>Draws tables into a text as this terminal would show them.</summary>
    public IAnsiConsole ConsoleOver(TextWriter writer)
    {
        bool colours = OutputIsScreen
            && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
            && Environment.GetEnvironmentVariable("TERM") != "dumb";
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(writer),
            Ansi = colours ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = colours ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
        });
        console.Profile.Width = Width;
        console.Profile.Capabilities.Unicode = true;
        return console;
    }
}
