using System.CommandLine.Parsing;
using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Archwright.Exchange.CaseFiles;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

/// <summary>The examples are made by the lines of their script, on Linux and on Windows alike.</summary>
[Trait("basis", "docs")]
public sealed class ExamplesTests
{
    /// <summary>Largest difference of a figure that is not seen as a change: sines and cosines of two machines may
    /// differ in the last digit.</summary>
    private const double Rounding = 1e-9;

    public static TheoryData<string> Lines() => [.. LinesOf("make.sh")];

    [Fact]
    public void There_are_five_arches_at_least_upper_and_lower_in_both_slots()
    {
        string[] lines = [.. LinesOf("make.sh")];

        Assert.True(lines.Length >= 5);
        foreach (string part in new[] { "--jaw upper", "--jaw lower", "--slot 0.018", "--slot 0.022" })
            Assert.Contains(lines, line => line.Contains(part, StringComparison.Ordinal));
    }

    [Fact]
    public void Both_scripts_hold_the_same_lines() => Assert.Equal(
        LinesOf("make.sh").Select(Words),
        LinesOf("make.ps1").Select(Words));

    [Theory, MemberData(nameof(Lines))]
    public async Task An_example_is_what_its_line_makes(string line)
    {
        using var folder = new Folder();
        string[] words = Words(line);
        string made = folder.File(words[1]);

        Run run = await Run.Of(["arch", .. words[2..], "--out", made]);

        Assert.Equal(ExitCode.Done, run.Code);
        JsonElement fresh = JsonDocument.Parse(
            await File.ReadAllTextAsync(made, TestContext.Current.CancellationToken)).RootElement;
        AssertSame(JsonDocument.Parse(Text(words[1])).RootElement, fresh, words[1]);
    }

    [Theory, MemberData(nameof(Lines))]
    public void An_example_has_a_title_and_can_be_read(string line)
    {
        using Stream stream = Open(Words(line)[1]);

        CaseFile file = Assert.IsType<CaseFile>(CaseReader.Read(stream).Value);

        Assert.NotEmpty(file.Title);
        Assert.NotNull(file.WireId);
    }

    [Fact]
    public void The_bench_example_can_be_read()
    {
        using Stream stream = Open("bench-twist.json");

        Assert.Empty(TwistCaseReader.Read(stream).Problems);
    }

    [Fact]
    public void No_arch_lies_in_the_folder_that_no_line_makes()
    {
        string[] made = [.. LinesOf("make.sh").Select(line => Words(line)[1]), "bench-twist.json"];

        Assert.Equal(made.Order(StringComparer.Ordinal), Files());
    }

    /// <summary>Names of the files with cases.</summary>
    internal static IEnumerable<string> Files() => typeof(ExamplesTests).Assembly.GetManifestResourceNames()
        .Where(name => name.StartsWith("examples/", StringComparison.Ordinal)
            && name.EndsWith(".json", StringComparison.Ordinal))
        .Select(name => name["examples/".Length..])
        .Order(StringComparer.Ordinal);

    /// <summary>An example as a file of a test's folder.</summary>
    internal static string Copy(Folder folder, string example) => folder.Text(example, Text(example));

    private static IEnumerable<string> LinesOf(string script) => Text(script)
        .ReplaceLineEndings("\n").Split('\n').Where(line => line.StartsWith("arch ", StringComparison.Ordinal));

    private static string[] Words(string line) => [.. CommandLineParser.SplitCommandLine(line)];

    private static Stream Open(string name) =>
        typeof(ExamplesTests).Assembly.GetManifestResourceStream("examples/" + name)
        ?? throw new InvalidOperationException($"There is no example {name}.");

    private static string Text(string name)
    {
        using var reader = new StreamReader(Open(name));
        return reader.ReadToEnd();
    }

    private static void AssertSame(JsonElement wanted, JsonElement had, string path)
    {
        Assert.True(wanted.ValueKind == had.ValueKind, $"{path}: {wanted.ValueKind} has become {had.ValueKind}.");
        switch (wanted.ValueKind)
        {
            case JsonValueKind.Object:
                Assert.Equal(wanted.EnumerateObject().Select(m => m.Name), had.EnumerateObject().Select(m => m.Name));
                foreach (JsonProperty member in wanted.EnumerateObject())
                    AssertSame(member.Value, had.GetProperty(member.Name), $"{path}.{member.Name}");
                break;
            case JsonValueKind.Array:
                Assert.True(wanted.GetArrayLength() == had.GetArrayLength(), $"{path}: another length.");
                for (int i = 0; i < wanted.GetArrayLength(); i++)
                    AssertSame(wanted[i], had[i], $"{path}[{i}]");
                break;
            case JsonValueKind.Number:
                double difference = Math.Abs(wanted.GetDouble() - had.GetDouble());
                Assert.True(difference <= Rounding, $"{path}: {wanted} has become {had}.");
                break;
            default:
                Assert.Equal(wanted.ToString(), had.ToString());
                break;
        }
    }
}
