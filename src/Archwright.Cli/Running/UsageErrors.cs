using System.CommandLine;
using System.CommandLine.Parsing;

namespace Archwright.Cli.Running;

/// <summary>Says in our words what the parser did not understand.</summary>
internal static class UsageErrors
{
    /// <summary>Begins the message of an option that was taken for a word; the option follows.</summary>
    public const string UnknownOption = "unknown option ";

    /// <summary>The complaints of a command line with errors.</summary>
    public static IReadOnlyList<Complaint> Of(ParseResult parsed)
    {
        Command command = parsed.CommandResult.Command;
        string help = command is RootCommand ? "See: archwright --help" : $"See: archwright {command.Name} --help";
        var complaints = new List<Complaint>();
        foreach (string token in parsed.UnmatchedTokens)
            complaints.Add(Unknown(token, command, help));

        foreach (ParseError error in parsed.Errors)
        {
            if (error.Message.StartsWith(UnknownOption, StringComparison.Ordinal))
                complaints.Add(Unknown(error.Message[UnknownOption.Length..], command, help));
            else if (Translated(error, command) is { } sentence)
                complaints.Add(new Complaint(sentence, Mend: help));
        }

        return complaints.Count > 0
            ? complaints.DistinctBy(complaint => complaint.What).ToList()
            : [new Complaint("this cannot be read.", Mend: help)];
    }

    private static Complaint Unknown(string token, Command command, string help)
    {
        bool isOption = token.StartsWith('-') && token.Length > 1;
        if (!isOption && command is RootCommand)
        {
            string verb = Nearest.Sentence(token, command.Subcommands.Select(sub => sub.Name));
            string all = $"Verbs: {string.Join(", ", command.Subcommands.Select(sub => sub.Name))}.";
            return new Complaint($"there is no verb '{token}'.", Mend: Joined(verb, all, help));
        }

        if (isOption)
        {
            string name = token.Split('=', ':')[0];
            string guess = Nearest.Sentence(name, command.Options.Select(option => option.Name));
            string who = command is RootCommand ? "archwright" : command.Name;
            return new Complaint($"{who} has no option '{name}'.", Mend: Joined(guess, help));
        }

        return new Complaint($"'{token}' is one word too many.",
            Mend: Joined("Put names that contain spaces in quotes.", help));
    }

    // The parser's own sentences that name types or say twice what Unknown says already.
    private static string? Translated(ParseError error, Command command)
    {
        if (error.Message.StartsWith("Unrecognized command or argument", StringComparison.Ordinal))
            return null;

        if (error.Message.StartsWith("Required command was not provided", StringComparison.Ordinal))
            return command is RootCommand && command.Subcommands.Count > 0 ? null : error.Message;

        if (error.Message.Contains("missing for command", StringComparison.Ordinal))
        {
            string missing = string.Join(" and ", command.Arguments
                .Where(argument => argument.Arity.MinimumNumberOfValues > 0)
                .Select(argument => $"a {argument.Name} ({argument.Description})"));
            return $"{command.Name} needs {missing}.";
        }

        if (error.Message.StartsWith("Required argument missing for option", StringComparison.Ordinal)
            && error.SymbolResult is OptionResult option)
        {
            return $"{option.Option.Name} needs a value ({option.Option.HelpName ?? option.Option.Name}).";
        }

        if (error.SymbolResult is OptionResult twice
            && error.Message.Contains("single argument", StringComparison.Ordinal))
        {
            return $"{twice.Option.Name} is given more than once.";
        }

        return char.ToLowerInvariant(error.Message[0]) + error.Message[1..];
    }

    private static string Joined(params string[] sentences) =>
        string.Join("\n", sentences.Where(sentence => sentence.Length > 0));
}
