using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Archwright.Cli.Running;

/// <summary>A verb of the command line: its help has examples.</summary>
internal sealed class Verb(string name, string description) : Command(name, description)
{
    /// <summary>Whole lines to type, with a word on each.</summary>
    public required IReadOnlyList<(string Line, string Meaning)> Examples { get; init; }
}

/// <summary>The parser's help, followed by the examples of the verb.</summary>
internal sealed class HelpWithExamples(HelpAction inner) : SynchronousCommandLineAction
{
    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        inner.MaxWidth = 100;
        int code = inner.Invoke(parseResult);
        TextWriter output = parseResult.InvocationConfiguration.Output;
        if (parseResult.CommandResult.Command is Verb verb)
            WriteExamples(output, verb);
        else
            output.WriteLine("Help on a verb: archwright <verb> --help\n");

        return code;
    }

    private static void WriteExamples(TextWriter output, Verb verb)
    {
        output.WriteLine("Examples:");
        foreach ((string line, string meaning) in verb.Examples)
        {
            output.WriteLine("  " + line);
            output.WriteLine("      " + meaning);
        }

        output.WriteLine();
    }
}
