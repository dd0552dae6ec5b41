using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Archwright.Exchange.CaseFiles;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

/// <summary>The guide to the decision says what the program says of its example.</summary>
[Trait("basis", "docs")]
public sealed class VisitGuideTests
{
    public static TheoryData<string> Visits() =>
        [.. typeof(VisitGuideTests).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith("visits/", StringComparison.Ordinal))];

    [Theory, MemberData(nameof(Visits))]
    public void An_example_of_a_visit_can_be_read(string name)
    {
        using Stream stream = typeof(VisitGuideTests).Assembly.GetManifestResourceStream(name)!; // it was listed

        CaseFile file = Assert.IsType<CaseFile>(CaseReader.Read(stream).Value);

        Assert.NotNull(file.VisitJson);
        Assert.NotEmpty(file.Title);
    }

    [Fact]
    public async Task Every_line_of_the_worked_example_stands_in_the_answer()
    {
        using var folder = new Folder();
        string[] lines = Example();
        Assert.StartsWith("archwright visit examples/visits/", lines[0], StringComparison.Ordinal);
        string[] words = lines[0].Split(' ');
        words[2] = folder.Text("visit.json", Text("visits/" + words[2]["examples/visits/".Length..]));

        Run run = await Run.Of(words[1..]);

        Assert.Equal(ExitCode.Done, run.Code);
        string answer = Plain(run.Output);
        Assert.True(lines.Length > 10, "An example shows more.");
        foreach (string line in lines[1..].Where(line => line.Trim() is not ("" or "…")))
            Assert.Contains(Plain(line), answer, StringComparison.Ordinal);
    }

    // The block below "A worked example", without its fences.
    private static string[] Example() => Text("guide/decision.md").Split("## A worked example")[1]
        .Split("```")[1].Trim('\n').Split('\n');

    private static string Plain(string text) => string.Join(
        ' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    private static string Text(string name)
    {
        using Stream stream = typeof(VisitGuideTests).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"There is no {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
