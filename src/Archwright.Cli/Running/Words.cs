using System.CommandLine;

namespace Archwright.Cli.Running;

/// <summary>Arguments that are plain words or files: a mistyped option is not taken for one.</summary>
internal static class Words
{
    /// <summary>An argument that must be there.</summary>
    public static Argument<string> Needed(string name, string description)
    {
        var argument = new Argument<string>(name) { Description = description };
        Guard(argument);
        return argument;
    }

    /// <summary>An argument that may be left out.</summary>
    public static Argument<string?> Optional(string name, string description)
    {
        var argument = new Argument<string?>(name)
        {
            Description = description, Arity = ArgumentArity.ZeroOrOne,
        };
        Guard(argument);
        return argument;
    }

    private static void Guard(Argument argument) => argument.Validators.Add(result =>
    {
        if (result.Tokens is [{ Value: ['-', _, ..] typed }])
            result.AddError(UsageErrors.UnknownOption + typed);
    });
}
