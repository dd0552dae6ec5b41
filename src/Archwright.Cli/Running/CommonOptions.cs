using System.CommandLine;
using System.CommandLine.Parsing;
using Archwright.Cli.Pictures;
using Archwright.Cli.Units;
using Archwright.Dentition.Teeth;

namespace Archwright.Cli.Running;

/// <summary>Options that several verbs share; each call makes a new one.</summary>
internal static class CommonOptions
{
    /// <summary>One JSON document and nothing else.</summary>
    public static Option<bool> Json() => new("--json")
    {
        Description = "Print one JSON document on standard output and nothing else (N, N·mm, mm, degrees).",
    };

    /// <summary>Unit of forces in tables and pictures.</summary>
    public static UsualOption<ForceUnit> Unit() => Choice(
        "--unit",
        "Unit of forces in tables and pictures; moments follow it.",
        ForceUnit.All.Select(unit => (unit.Symbol, unit)),
        ForceUnit.Centinewton);

    /// <summary>Tooth numbers in tables and pictures.</summary>
    public static UsualOption<ToothNotation> Teeth() => Choice(
        "--teeth",
        "Tooth numbers in tables and pictures.",
        [("iso", ToothNotation.Iso), ("universal", ToothNotation.Universal), ("palmer", ToothNotation.Palmer)],
        ToothNotation.Iso);

    /// <summary>A picture to write.</summary>
    public static Option<string?> Plot(string what)
    {
        var option = new Option<string?>("--plot") { Description = what, HelpName = "FILE.svg|png" };
        option.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var file }] && !PictureFile.CanWrite(file))
                result.AddError($"--plot writes .svg and .png files, not '{file}'.");
        });
        return option;
    }

    /// <summary>One of a few words, in any case.</summary>
    public static UsualOption<T> Choice<T>(
        string name, string description, IEnumerable<(string Word, T Value)> choices, T usual, bool sayUsual = true)
    {
        (string Word, T Value)[] all = [.. choices];
        string words = string.Join("|", all.Select(choice => choice.Word));
        string usualWord = all.First(choice => Equals(choice.Value, usual)).Word;
        var option = new UsualOption<T>(name, usual)
        {
            Description = sayUsual ? $"{description} Usual: {usualWord}." : description,
            HelpName = words,
            CustomParser = result => Chosen(result, name, all),
        };
        option.CompletionSources.Add([.. all.Select(choice => choice.Word)]);
        return option;
    }

    private static T Chosen<T>(ArgumentResult result, string name, (string Word, T Value)[] all)
    {
        string typed = result.Tokens[0].Value;
        foreach ((string word, T value) in all)
        {
            if (string.Equals(word, typed, StringComparison.OrdinalIgnoreCase))
                return value;
        }

        result.AddError($"{name} is one of {string.Join(", ", all.Select(choice => choice.Word))}, not '{typed}'.");
        return all[0].Value;
    }
}

/// <summary>An option with a usual value, which its description says in our words (the parser would print it raw).
/// </summary>
internal sealed class UsualOption<T>(string name, T usual) : Option<T>(name)
{
    /// <summary>The value of a command line, the usual one where it does not say.</summary>
    public T Of(ParseResult parsed) => parsed.GetResult(this) is null ? usual : parsed.GetValue(this) ?? usual;
}
