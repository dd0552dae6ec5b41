using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

/// <summary>Crowns without a bracket and teeth that are not there, from making the case to the forecast.</summary>
[Trait("basis", "ours")]
public sealed class UnbondedVerbTests
{
    private static readonly string[] Upper =
    [
        "arch", "--jaw", "upper", "--slot", "0.022", "--wire", "niti-014", "--tooth", "13:labial=0.6",
        "--unbonded", "12", "--extracted", "14,24", "--unerupted", "17",
    ];

    [Fact]
    public async Task An_arch_is_made_with_a_bare_crown_and_with_teeth_that_are_not_there()
    {
        using var folder = new Folder();
        string made = folder.File("arch.json");

        Run table = await Run.Of([.. Upper, "--out", made]);
        Run json = await Run.Of("arch", made, "--json");

        Assert.Equal(ExitCode.Done, table.Code);
        string said = Joined(table.Output);
        Assert.Contains("Without a bracket: 12.", said, StringComparison.Ordinal);
        Assert.Contains("Extracted: 14, 24.", said, StringComparison.Ordinal);
        Assert.Contains("Unerupted: 17.", said, StringComparison.Ordinal);
        JsonElement root = json.Json();
        Assert.Equal(["14", "24", "17"], root.GetProperty("absent").EnumerateArray()
            .Select(one => one.GetProperty("tooth").GetString()));
        Assert.Equal(0, root.GetProperty("unsaid").GetArrayLength());
        Assert.Equal(JsonValueKind.Number, root.GetProperty("irregularity_mm").ValueKind); // the crown counts
        Assert.Equal(["12"], root.GetProperty("teeth").EnumerateArray()
            .Where(one => !one.GetProperty("bonded").GetBoolean()).Select(one => one.GetProperty("tooth").GetString()));
    }

    [Fact]
    public async Task It_is_solved_followed_and_decided_on_without_a_load_from_the_wire()
    {
        using var folder = new Folder();
        string made = folder.File("arch.json");
        await Run.Of([.. Upper, "--out", made]);
        string drawer = folder.Text("drawer.txt", "niti-014\n");

        Run table = await Run.Of("solve", made, "--plot", folder.File("arch.svg"));
        Run solved = await Run.Of("solve", made, "--json");
        Run forecast = await Run.Of(
            "forecast", made, "--weeks", "1", "--json", "--animate", folder.File("arch.gif"));
        Run visit = await Run.Of("visit", made, "--stock", drawer, "--json");

        Assert.Contains("no bracket", table.Output, StringComparison.Ordinal);
        JsonElement slot = solved.Json().GetProperty("slots").EnumerateArray()
            .Single(one => one.GetProperty("tooth").GetString() == "12");
        Assert.Equal(0, slot.GetProperty("labial_N").GetDouble());
        JsonElement day = forecast.Json().GetProperty("weeks")[1].GetProperty("teeth").EnumerateArray()
            .Single(one => one.GetProperty("tooth").GetString() == "12");
        Assert.False(day.GetProperty("bonded").GetBoolean());
        Assert.Equal(0, day.GetProperty("labial_N").GetDouble());
        Assert.Contains(
            "Without a bracket: the upper right lateral incisor (12).", visit.Output, StringComparison.Ordinal);
        Assert.Equal(0, visit.Json().GetProperty("partial_ties").GetArrayLength());
        Assert.DoesNotContain("absent: ", visit.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_tooth_left_out_without_a_word_is_asked_for()
    {
        using var folder = new Folder();
        string made = folder.File("arch.json");
        await Run.Of(
            "arch", "--jaw", "upper", "--slot", "0.022", "--wire", "niti-014", "--without", "14", "--out", made);

        Run visit = await Run.Of("visit", made, "--stock", folder.Text("drawer.txt", "niti-014\n"), "--json");
        Run forecast = await Run.Of("forecast", made, "--weeks", "1");

        Assert.Contains("absent: What of 14", visit.Output, StringComparison.Ordinal);
        Assert.Contains(
            "Nothing is said of 14: taken as not there.", Joined(forecast.Output), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_tooth_that_is_both_is_refused()
    {
        using var folder = new Folder();

        Run run = await Run.Of(
            "arch", "--jaw", "upper", "--slot", "0.022", "--wire", "niti-014", "--unbonded", "14", "--extracted", "14",
            "--out", folder.File("arch.json"));

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains("tooth 14 is given twice", run.Error, StringComparison.Ordinal);
    }

    private static string Joined(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
