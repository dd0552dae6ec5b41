using System.CommandLine;
using Archwright.Cli.Running;

namespace Archwright.Cli.Tests.Verbs;

/// <summary>The guide says what the program does.</summary>
[Trait("basis", "docs")]
public sealed class GuideTests
{
    private static readonly Lazy<string> Guide = new(() =>
    {
        using Stream stream = typeof(GuideTests).Assembly.GetManifestResourceStream("guide/command-line.md")
            ?? throw new InvalidOperationException("There is no guide.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    });

    public static TheoryData<string> Lines() =>
        [.. Guide.Value.Split('\n').Where(line => line.StartsWith("archwright ", StringComparison.Ordinal))];

    [Fact]
    public void There_are_lines_to_type() => Assert.True(Lines().Count > 15);

    [Theory, MemberData(nameof(Lines))]
    public void Every_line_of_the_guide_can_be_parsed(string line)
    {
        using var terminal = new Terminal(Stream.Null, Stream.Null, Terminal.UsualWidth);

        Assert.Empty(CommandLine.Root(terminal).Parse(line["archwright ".Length..]).Errors);
    }

    [Fact]
    public void Every_verb_and_every_option_stands_in_the_guide()
    {
        using var terminal = new Terminal(Stream.Null, Stream.Null, Terminal.UsualWidth);
        foreach (Command verb in CommandLine.Root(terminal).Subcommands)
        {
            Assert.Contains($"## {verb.Name}: ", Guide.Value, StringComparison.Ordinal);
            foreach (Option option in verb.Options)
            {
                Assert.True(Guide.Value.Contains(option.Name, StringComparison.Ordinal),
                    $"The guide does not mention {option.Name} of {verb.Name}.");
            }
        }
    }
}
