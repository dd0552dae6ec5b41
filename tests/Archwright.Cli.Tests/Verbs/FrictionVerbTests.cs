using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

/// <summary>Friction that is asked for reaches what <c>visit</c> and <c>ladder</c> compute, and the answer says so.
/// </summary>
[Trait("basis", "ours")]
public sealed class FrictionVerbTests
{
    [Fact]
    public async Task A_visit_with_friction_delivers_otherwise_and_says_that_it_rubs()
    {
        using var folder = new Folder();
        string[] line = ["visit", folder.Arch(), "--stock", folder.Text("drawer.txt", "niti-014\n"), "--json"];

        Run free = await Run.Of(line);
        Run rubs = await Run.Of([.. line, "--friction", "0.4"]);
        Run wet = await Run.Of([.. line, "--friction", "wet"]);

        Assert.Equal(0, free.Json().GetProperty("friction").GetDouble());
        Assert.Equal(0.4, rubs.Json().GetProperty("friction").GetDouble());
        Assert.Equal("wet", wet.Json().GetProperty("friction").GetString());
        Assert.NotEqual(Delivered(free), Delivered(rubs));
        Assert.NotEqual(Delivered(free), Delivered(wet));
        Assert.NotEqual(Delivered(rubs), Delivered(wet));
        Assert.Contains("no friction", free.Output, StringComparison.Ordinal);
        Assert.Contains("friction of a bench (coefficient 0.4)", rubs.Output, StringComparison.Ordinal);
        Assert.Contains("friction of a bench (in saliva, by alloy)", wet.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Friction_of_the_slots_of_a_case_counts_unless_none_is_asked_for()
    {
        using var folder = new Folder();
        string arch = await File.ReadAllTextAsync(folder.Arch());
        string own = folder.Text("own.json", arch.Replace(
            "\"tie\":", "\"friction\": 0.4, \"tie\":", StringComparison.Ordinal));
        string[] stock = ["--stock", folder.Text("drawer.txt", "niti-014\n"), "--json"];

        Run rubs = await Run.Of(["visit", own, .. stock]);
        Run asked = await Run.Of(["visit", folder.Arch(), .. stock, "--friction", "0.4"]);
        Run none = await Run.Of(["visit", own, .. stock, "--friction", "none"]);

        Assert.Equal(0.4, rubs.Json().GetProperty("friction").GetDouble());
        Assert.Equal(Delivered(asked), Delivered(rubs));
        Assert.Equal(0, none.Json().GetProperty("friction").GetDouble());
        Assert.NotEqual(Delivered(rubs), Delivered(none));
    }

    [Fact]
    public async Task A_ladder_with_friction_is_another_and_says_that_it_rubs()
    {
        using var folder = new Folder();
        string[] line =
        [
            "ladder", folder.Arch(), "--stock", folder.Text("drawer.txt", "niti-014\n"), "--to", "niti-016", "--json",
        ];

        Run free = await Run.Of(line);
        Run rubs = await Run.Of([.. line, "--friction", "dry", "--soft-tissue", "3"]);

        Assert.Equal("dry", rubs.Json().GetProperty("friction").GetString());
        Assert.Equal(3, rubs.Json().GetProperty("soft_tissue").GetDouble());
        Assert.NotEqual(
            free.Json().GetProperty("answers").GetRawText(), rubs.Json().GetProperty("answers").GetRawText());
        Assert.Contains("friction of a bench (dry, by alloy)", rubs.Output, StringComparison.Ordinal);
        Assert.Contains("lips and cheeks 3 times the average", rubs.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("visit", "slippery")]
    [InlineData("visit", "-0.1")]
    [InlineData("ladder", "NaN")]
    [InlineData("ladder", "3")]
    public async Task A_friction_that_cannot_be_read_is_refused(string verb, string typed)
    {
        using var folder = new Folder();

        Run run = await Run.Of(verb, folder.Arch(), "--friction", typed);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains("none, wet, dry or a coefficient from 0 to 2", run.Error.Replace("\n", " ",
            StringComparison.Ordinal), StringComparison.Ordinal);
    }

    private static double Delivered(Run run) => run.Json().GetProperty("options")[0]
        .GetProperty("delivered_share").GetDouble();
}
