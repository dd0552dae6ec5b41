using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

/// <summary>What the verb refuses, and how it says so.</summary>
[Trait("basis", "ours")]
public sealed class LadderVerbTests
{
    [Theory]
    [InlineData("the catalogue has no wire 'niti-015'", "--sequence", "niti-014,niti-015")]
    [InlineData("has an empty part", "--sequence", "niti-014,,ss-019x025")]
    [InlineData("twice in a row", "--sequence", "niti-014,niti-014")]
    [InlineData("the catalogue has no wire 'rope'", "--to", "rope")]
    [InlineData("--draws is a whole number from 0 to 2000, not '-1'", "--draws", "-1")]
    [InlineData("AW-FILE-001", "--stock", "no-such-drawer.txt")]
    [InlineData("AW-FILE-001", "--prices", "no-such-prices.csv")]
    public async Task Input_that_cannot_be_read_is_refused_with_its_reason(string reason, params string[] options)
    {
        using var folder = new Folder();
        Run run = await Run.Of(["ladder", folder.Arch(), .. options]);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains(reason, Joined(run.Error), StringComparison.OrdinalIgnoreCase);
        Assert.Empty(run.Output);
    }

    [Fact]
    public async Task A_wire_thicker_than_the_slots_is_no_working_wire()
    {
        using var folder = new Folder();
        Run made = await Run.Of(
            "arch", "--jaw", "lower", "--slot", "0.018", "--wire", "niti-014", "--out", folder.File("low.json"));
        Run run = await Run.Of("ladder", folder.File("low.json"), "--to", "ss-019x025");

        Assert.Equal(ExitCode.Done, made.Code);
        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains("mm thick, the lowest slot", Joined(run.Error), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_fault_of_a_price_list_is_told()
    {
        using var folder = new Folder();
        string list = folder.Text("prices.csv", "id,price\nss-016,cheap\nniti-014,-2\n");

        Run run = await Run.Of("ladder", folder.Arch(), "--prices", list);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains("“cheap”, not a number", Joined(run.Error), StringComparison.Ordinal);
        Assert.Contains("line 3, price", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bench_has_no_ladder()
    {
        using var folder = new Folder();
        Run run = await Run.Of("ladder", folder.Case("three-slots.json"));

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains("bench", run.Error, StringComparison.Ordinal);
    }

    private static string Joined(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
