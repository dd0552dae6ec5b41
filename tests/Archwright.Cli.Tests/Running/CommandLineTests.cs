using System.CommandLine;
using Archwright.Cli.Running;

namespace Archwright.Cli.Tests.Running;

/// <summary>Rests on the contract of the command line: exit codes, standard output for data, standard error for talk.
/// </summary>
[Trait("basis", "ours")]
public sealed class CommandLineTests
{
    public static TheoryData<string> Verbs()
    {
        using var terminal = new Terminal(Stream.Null, Stream.Null, Terminal.UsualWidth);
        return [.. CommandLine.Root(terminal).Subcommands.Select(verb => verb.Name)];
    }

    [Fact]
    public async Task Without_a_verb_the_help_goes_to_standard_error()
    {
        Run run = await Run.Of();

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Empty(run.Output);
        Snapshot.Matches("help", run.Error);
    }

    [Fact]
    public async Task The_version_is_told()
    {
        Run run = await Run.Of("--version");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal($"archwright {CommandLine.Version}\n", run.Output);
        Assert.Matches(@"^archwright \d+\.\d+\.\d+\n$", run.Output);
    }

    [Theory, MemberData(nameof(Verbs))]
    public async Task Every_verb_has_a_help_with_examples(string verb)
    {
        Run run = await Run.Of(verb, "--help");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("Examples:\n  archwright " + verb, run.Output, StringComparison.Ordinal);
        Assert.Contains("--json", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Archwright.", run.Output, StringComparison.Ordinal); // no name of a type
        Snapshot.Matches("help-" + verb, run.Output);
    }

    [Theory, MemberData(nameof(Verbs))]
    public async Task Every_example_of_the_help_can_be_parsed(string verb)
    {
        using var terminal = new Terminal(Stream.Null, Stream.Null, Terminal.UsualWidth);
        RootCommand root = CommandLine.Root(terminal);
        Verb command = Assert.IsType<Verb>(root.Subcommands.Single(one => one.Name == verb));

        foreach ((string line, string _) in command.Examples)
        {
            string words = line.Split('>')[0].Replace("archwright ", "", StringComparison.Ordinal);
            Assert.Empty(root.Parse(words).Errors);
        }

        await Task.CompletedTask;
    }

    [Theory]
    [InlineData("there is no verb 'slove'", "Did you mean 'solve' or 'serve'?", "slove")]
    [InlineData("solve needs a CASE", "See: archwright solve --help", "solve")]
    [InlineData("solve has no option '--jsno'", "Did you mean '--json'?", "solve", "a.json", "--jsno")]
    [InlineData("wires has no option '--jsno'", "Did you mean '--json'?", "wires", "--jsno")]
    [InlineData("'b' is one word too many", "quotes", "wires", "a", "b")]
    [InlineData("--unit is one of cN, gf, N, not 'lb'", "See:", "solve", "a.json", "--unit", "lb")]
    [InlineData("--teeth is one of iso, universal, palmer, not 'fdi'", "See:", "solve", "a.json", "--teeth", "fdi")]
    [InlineData("--repeat is a whole number from 1 to 100000, not '0'", "See:", "solve", "a.json", "--repeat", "0")]
    [InlineData("--repeat needs a value", "See:", "solve", "a.json", "--repeat")]
    [InlineData("--repeat is given more than once", "See:", "solve", "a.json", "--repeat", "2", "--repeat", "3")]
    [InlineData("--plot writes .svg and .png files, not 'a.gif'", "See:", "compare", "a.json", "--plot", "a.gif")]
    [InlineData("--top is a whole number", "See:", "compare", "a.json", "--top", "many")]
    [InlineData("--slot is a number from 0.01 to 0.04 in, not '22'", "See:", "twist", "--slot", "22")]
    [InlineData("'a' is not a number from -80 to 80 degrees", "See:", "twist", "--twists", "5,a")]
    [InlineData("archwright has no option '--vers'", "Did you mean '--version'?", "--vers")]
    public async Task Bad_usage_ends_with_2_and_says_how_to_mend(string what, string mend, params string[] args)
    {
        Run run = await Run.Of(args);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains(what, run.Error, StringComparison.Ordinal);
        Assert.Contains(mend, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("solve", "no-such-file.json")]
    [InlineData("compare", "no-such-file.json")]
    [InlineData("twist", "--case", "no-such-file.json")]
    public async Task A_missing_file_ends_with_2(params string[] args)
    {
        Run run = await Run.Of(args);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Empty(run.Output);
        Assert.StartsWith("AW-FILE-001", run.Error, StringComparison.Ordinal);
        Assert.Contains("no-such-file.json", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_wrong_in_a_file_is_told_with_code_file_and_path()
    {
        using var folder = new Folder();

        Run run = await Run.Of("solve", folder.Case("unknown-key.json"));

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Empty(run.Output);
        Snapshot.Matches("problems-in-a-file", run.Error);
    }

    [Fact]
    public void Only_the_first_complaints_are_written_out_and_the_rest_counted()
    {
        using var text = new StringWriter { NewLine = "\n" };
        Complaint[] many = [.. Enumerable.Range(1, 23).Select(i => new Complaint($"Wrong {i}.", $"AW-X-{i:000}"))];

        Complaints.Write(text, many, 80);

        Assert.Contains("Wrong 20.", text.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("Wrong 21.", text.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("… and 3 more.\n", text.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_of_ours_says_so_and_asks_for_a_report()
    {
        Complaint complaint = Faults.Describe(new InvalidOperationException("Something broke."), ["solve", "a.json"]);

        Assert.Contains("gives no answer", complaint.What, StringComparison.Ordinal);
        Assert.Contains("archwright solve a.json", complaint.Mend, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", complaint.Mend, StringComparison.Ordinal);
    }
}
