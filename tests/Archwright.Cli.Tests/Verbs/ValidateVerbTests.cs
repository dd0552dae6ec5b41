using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Archwright.Exchange.Tests.Schemas;
using Archwright.Validation;
using Archwright.Validation.Record;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

/// <summary><c>validate</c> and the page it writes.</summary>
public sealed partial class ValidateVerbTests
{
    private const string Command = "archwright validate --page docs";

    /// <summary>Exit code of the command as the list of differences has it.</summary>
    internal static int Expected => PublishedRecord.Differences.Any(IsOut) ? ExitCode.NotPossible : ExitCode.Done;

    [Fact, Trait("basis", "docs")]
    public async Task The_page_of_the_documentation_is_the_one_that_the_command_writes()
    {
        using var folder = new Folder();

        Run run = await Run.Of("validate", "--page", folder.Path);

        Assert.Equal(Expected, run.Code);
        AssertSame("validation.md", Kept("validation/page.md"), File.ReadAllText(folder.File("validation.md")), 0.002);
        string[] pictures = Directory.GetFiles(folder.File("images/validation"));
        Assert.True(pictures.Length >= 5);
        foreach (string picture in pictures)
        {
            string name = Path.GetFileName(picture);
            AssertSame(name, Kept("validation/" + name), await File.ReadAllTextAsync(picture), 1);
        }
    }

    [Fact, Trait("basis", "docs")]
    public async Task The_document_is_as_its_schema_says_and_holds_every_check()
    {
        Run run = await Run.Of("validate", "--json");

        Assert.Empty(Schema.Load("archwright-validate-1").Errors(JsonNode.Parse(run.Output)));
        JsonElement[] checks = [.. run.Json().GetProperty("checks").EnumerateArray()];
        Assert.Equal(
            PublishedRecord.Checks.Select(check => check.Id),
            checks.Select(check => check.GetProperty("id").GetString()));
        Assert.Equal(
            PublishedRecord.Differences.Where(IsOut).Select(difference => difference.Check).Order(),
            checks.Where(check => check.GetProperty("verdict").GetString() == "out")
                .Select(check => check.GetProperty("id").GetString()!).Order());
    }

    [Fact, Trait("basis", "ours")]
    public async Task Pictures_go_into_the_folder_that_was_asked_for()
    {
        using var folder = new Folder();

        Run run = await Run.Of("validate", "--plot", folder.File("pictures"));

        Assert.Equal(Expected, run.Code);
        Assert.True(File.Exists(folder.File("pictures/agreement.svg")));
        Assert.Contains("published checks: ", run.Output, StringComparison.Ordinal);
        Assert.Contains("Sources", run.Output, StringComparison.Ordinal);
    }

    [Fact, Trait("basis", "law")]
    public void A_planted_change_of_the_page_is_found()
    {
        AssertSame("a", "x 1.000 y", "x 1.001 y", 0.002);
        Assert.ThrowsAny<Exception>(() => AssertSame("a", "x 1.000 y", "x 1.1 y", 0.002));
        Assert.ThrowsAny<Exception>(() => AssertSame("a", "x 1 y", "x 1 z", 0.002));
        Assert.ThrowsAny<Exception>(() => AssertSame("a", "x 1 y", "x 1 y 2", 0.002));
    }

    private static bool IsOut(KnownDifference difference) => difference.Verdict == Verdict.Out;

    private static string Kept(string name)
    {
        using Stream? stream = typeof(ValidateVerbTests).Assembly.GetManifestResourceStream(name);
        Assert.True(stream is not null, $"{name} is not in docs. Run: {Command}");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    // The same words; figures within a share (or a pixel), because the last digit differs from one processor to
    // another.
    private static void AssertSame(string what, string kept, string written, double deviation)
    {
        string stale = $"{what} in docs is stale. Run: {Command}";
        string[] before = Figures().Split(kept.ReplaceLineEndings("\n"));
        string[] after = Figures().Split(written.ReplaceLineEndings("\n"));
        int differs = Enumerable.Range(0, Math.Min(before.Length, after.Length))
            .FirstOrDefault(i => !IsSame(before[i], after[i], deviation), -1);
        Assert.True(differs < 0, differs < 0 ? "" : $"{stale}\nkept: {before[differs]}\nnow:  {after[differs]}");
        Assert.True(before.Length == after.Length, stale);
    }

    private static bool IsSame(string kept, string written, double deviation) =>
        kept == written
        || (double.TryParse(kept, CultureInfo.InvariantCulture, out double a)
            && double.TryParse(written, CultureInfo.InvariantCulture, out double b)
            && Math.Abs(a - b) <= deviation * Math.Max(1, deviation < 1 ? Math.Abs(a) : 1));

    [GeneratedRegex(@"(-?\d+(?:\.\d+)?)")]
    private static partial Regex Figures();
}
