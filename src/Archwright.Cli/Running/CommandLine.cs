using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;
using System.Reflection;
using Archwright.Cli.Verbs;

namespace Archwright.Cli.Running;

/// <summary>Parses a command line, runs its verb, and turns whatever happens into an exit code.</summary>
internal static class CommandLine
{
    /// <summary>Version of the program.</summary>
    public static string Version { get; } = typeof(CommandLine).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";

    /// <summary>Runs one command line.</summary>
    /// <returns>See <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(string[] args, Terminal terminal, CancellationToken cancellation = default)
    {
        try
        {
            RootCommand root = Root(terminal);
            ParseResult parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (args.Length == 0)
            {
                await InvokeAsync(root.Parse(["--help"]), terminal, terminal.Error, cancellation);
                return ExitCode.BadInput;
            }

            bool asksForTalk = parsed.Action is HelpWithExamples or SayVersion;
            if (parsed.Errors.Count > 0 && !asksForTalk)
            {
                Complaints.Write(terminal.Error, UsageErrors.Of(parsed), terminal.Width);
                return ExitCode.BadInput;
            }

            return await InvokeAsync(parsed, terminal, terminal.Output, cancellation);
        }
        catch (Refusal refusal)
        {
            Complaints.Write(terminal.Error, refusal.Complaints, terminal.Width);
            return refusal.Code;
        }
        catch (OperationCanceledException)
        {
            terminal.Error.WriteLine("archwright: stopped.");
            return ExitCode.Stopped;
        }
        catch (Exception fault) // whatever is left is our fault, and must not look like an answer
        {
            Complaints.Write(terminal.Error, [Faults.Describe(fault, args)], terminal.Width);
            return ExitCode.Fault;
        }
    }

    /// <summary>The command with all its verbs.</summary>
    internal static RootCommand Root(Terminal terminal)
    {
        var root = new RootCommand(
            "Archwright computes which archwire can go in, and what it does to each tooth. It calculates; the treating "
            + "clinician decides.")
        {
            HelpName = "archwright",
        };
        foreach (Command verb in new[]
        {
            SolveVerb.Create(terminal),
            CompareVerb.Create(terminal),
            ForecastVerb.Create(terminal),
            VisitVerb.Create(terminal),
            LadderVerb.Create(terminal),
            ArchVerb.Create(terminal),
            BendVerb.Create(terminal),
            TwistVerb.Create(terminal),
            WiresVerb.Create(terminal),
            ValidateVerb.Create(terminal),
            ServeVerb.Create(terminal),
            BackupVerb.Create(terminal),
            RestoreVerb.Create(terminal),
        })
        {
            root.Add(verb);
        }

        foreach (Option option in root.Options)
        {
            if (option is HelpOption { Action: HelpAction inner } help)
                help.Action = new HelpWithExamples(inner);
            else if (option is VersionOption version)
                version.Action = new SayVersion();
        }

        return root;
    }

    private static Task<int> InvokeAsync(
        ParseResult parsed, Terminal terminal, TextWriter output, CancellationToken cancellation) =>
        parsed.InvokeAsync(
            new InvocationConfiguration
            {
                EnableDefaultExceptionHandler = false, Output = output, Error = terminal.Error,
            },
            cancellation);

    private sealed class SayVersion : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            parseResult.InvocationConfiguration.Output.WriteLine("archwright " + Version);
            return ExitCode.Done;
        }
    }
}
