using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

[Trait("basis", "ours")]
public sealed class ArchVerbTests
{
    private static readonly string[] Upper = ["arch", "--jaw", "upper", "--slot", "0.022", "--wire", "niti-014"];

    [Fact, Trait("basis", "ours")]
    public async Task A_note_in_words_is_the_same_as_in_figures_and_what_is_assumed_is_said()
    {
        using var folder = new Folder();
        string words = folder.File("words.json");
        string figures = folder.File("figures.json");

        Run said = await Run.Of([.. Upper, "--tooth", "13:high 2 mm, rotated 20°", "--out", words]);
        Run typed = await Run.Of([.. Upper, "--tooth", "13:occlusal=-2,rotation=20", "--out", figures]);

        Assert.Equal(ExitCode.Done, said.Code);
        Assert.Equal(await File.ReadAllTextAsync(figures), await File.ReadAllTextAsync(words));
        Assert.Contains("mesial side turned out", said.Error, StringComparison.Ordinal);
        Assert.Empty(typed.Error);
    }

    [Fact]
    public async Task Notes_of_teeth_come_back_from_the_file_as_they_were_given()
    {
        using var folder = new Folder();
        string file = folder.File("case.json");

        Run made = await Run.Of(
            [.. Upper, "--tooth", "13:occlusal=-2,rotation=20", "--tooth", "22:labial=-1.5,torque=-7,tip=3,mesial=0.5",
                "--out", file]);
        Run measured = await Run.Of("arch", file, "--json");

        Assert.Equal(ExitCode.Done, made.Code);
        JsonElement[] teeth = [.. measured.Json().GetProperty("teeth").EnumerateArray()];
        JsonElement canine = teeth.Single(tooth => tooth.GetProperty("tooth").GetString() == "13");
        JsonElement lateral = teeth.Single(tooth => tooth.GetProperty("tooth").GetString() == "22");
        Assert.Equal(-2, canine.GetProperty("occlusal_mm").GetDouble());
        Assert.Equal(20, canine.GetProperty("rotation_deg").GetDouble());
        Assert.Equal(-1.5, lateral.GetProperty("labial_mm").GetDouble());
        Assert.Equal(-7, lateral.GetProperty("torque_deg").GetDouble());
        Assert.Equal(3, lateral.GetProperty("tip_deg").GetDouble());
        Assert.Equal(0.5, lateral.GetProperty("mesial_mm").GetDouble());
    }

    /// <summary>Little's index is the sum of the five displacements that were asked for; the file rounds offsets to a
    /// ten-thousandth of a millimetre, so five contacts are within a thousandth.</summary>
    [Fact]
    public async Task Contact_displacements_come_back_as_the_irregularity()
    {
        using var folder = new Folder();
        string file = folder.File("case.json");

        Run run = await Run.Of(
            "arch", "--jaw", "lower", "--slot", "0.018", "--wire", "niti-014", "--contacts", "1,2,0.5,1.5,1",
            "--out", file, "--json");

        Assert.Equal(6, run.Json().GetProperty("irregularity_mm").GetDouble(), tolerance: 1e-3);
        double[] five =
            [.. run.Json().GetProperty("contact_displacements_mm").EnumerateArray().Select(value => value.GetDouble())];
        Assert.Equal(5, five.Length);
        foreach ((double wanted, double had) in new[] { 1, 2, 0.5, 1.5, 1 }.Zip(five))
            Assert.Equal(wanted, had, tolerance: 3e-4);
    }

    [Fact]
    public async Task Positions_from_a_table_and_notes_on_top_of_them_add_up()
    {
        using var folder = new Folder();
        string table = folder.Text("positions.csv", "tooth,labial_mm,rotation_deg\n11,0.5,10\n21,,-4\n");

        Run run = await Run.Of([.. Upper, "--positions", table, "--tooth", "11:labial=0.25",
            "--out", folder.File("a.json"), "--json"]);

        JsonElement[] teeth = [.. run.Json().GetProperty("teeth").EnumerateArray()];
        JsonElement incisor = teeth.Single(tooth => tooth.GetProperty("tooth").GetString() == "11");
        Assert.Equal(0.75, incisor.GetProperty("labial_mm").GetDouble());
        Assert.Equal(10, incisor.GetProperty("rotation_deg").GetDouble());
    }

    [Fact]
    public async Task Ties_ends_and_missing_teeth_are_in_the_file()
    {
        using var folder = new Folder();
        string file = folder.File("case.json");

        await Run.Of([.. Upper, "--without", "14,24", "--tie", "elastic", "--tie", "13:none", "--ends", "cinched",
            "--title", "A title", "--out", file]);

        JsonElement root = JsonDocument.Parse(
            await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken)).RootElement;
        Assert.Equal("A title", root.GetProperty("title").GetString());
        Assert.Equal("cinched", root.GetProperty("wire").GetProperty("ends").GetString());
        JsonElement[] slots = [.. root.GetProperty("slots").EnumerateArray()];
        Assert.Equal(12, slots.Length);
        Assert.DoesNotContain(slots, slot => slot.GetProperty("tooth").GetString() is "14" or "24");
        foreach (JsonElement slot in slots)
        {
            string kind = slot.GetProperty("tooth").GetString() == "13" ? "none" : "elastic";
            Assert.Equal(kind, slot.GetProperty("tie").GetProperty("kind").GetString());
        }
    }

    [Fact]
    public async Task The_measures_of_a_case_are_told_in_words()
    {
        using var folder = new Folder();
        string file = folder.File("case.json");
        await Run.Of([.. Upper, "--tooth", "13:occlusal=-2,rotation=20", "--title", "High canine", "--out", file]);

        Snapshot.Matches("arch", (await Run.Of("arch", file)).Output);
        Snapshot.Matches("arch-palmer", (await Run.Of(80, "arch", file, "--teeth", "palmer")).Output);
    }

    [Theory]
    [InlineData("arch needs --jaw", "arch", "--out", "x.json")]
    [InlineData("arch needs --out", "arch", "--jaw", "upper")]
    [InlineData("arch needs --wire", "arch", "--jaw", "upper", "--slot", "0.022", "--out", "x.json")]
    [InlineData("the catalogue has no wire 'ss-99'", "arch", "--jaw", "upper", "--slot", "0.022", "--wire", "ss-99",
        "--out", "x")]
    [InlineData("--slot is one of 0.018, 0.022, not '0.020'", "arch", "--slot", "0.020")]
    [InlineData("'oclusal=2' is not a word with a figure. Did you mean 'occlusal'?", "--tooth", "13:oclusal=2")]
    [InlineData("There is no tooth with a colon in front", "--tooth", "occlusal=2")]
    [InlineData("could mean two things. Write high, low", "--tooth", "13:up 2 mm")]
    [InlineData("no figure with its unit", "--tooth", "13:high 2")]
    [InlineData("'99' in '99:labial=1' is no tooth", "--tooth", "99:labial=1")]
    [InlineData("occlusal is a number from -15 to 15 mm, not '40'", "--tooth", "13:occlusal=40")]
    [InlineData("rotation is a number from -90 to 90 degrees, not '1e3'", "--tooth", "13:rotation=1e3")]
    [InlineData("'tip' is given twice", "--tooth", "13:tip=1,tip=2")]
    [InlineData("43 (lower right canine) has no place on the upper arch", "--tooth", "43:tip=1")]
    [InlineData("Did you mean 'elastic'?", "--tie", "elastc")]
    [InlineData("'x' in '--without x' is no tooth", "--without", "x")]
    [InlineData("--contacts takes 5 numbers", "--contacts", "1,2,3")]
    [InlineData("'-1' is not a number from 0 to 12 mm", "--contacts=-1,0,0,0,0")]
    [InlineData("AW-FILE-001", "--positions", "no-such.csv")]
    [InlineData("the folder does not exist", "--out", "no-such-folder/x.json")]
    public async Task What_cannot_be_made_is_refused_with_2(string what, params string[] args)
    {
        using var folder = new Folder();
        string[] line = args[0] == "arch" ? args
            : args.Contains("--out") ? [.. Upper, .. args]
            : [.. Upper, "--out", folder.File("x.json"), .. args];

        Run run = await Run.Of(line);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains(what, run.Error.Replace("\n", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(folder.Path));
    }

    [Theory]
    [InlineData("AW-TABLE-002", "line 1, column 2", "tooth,labal_mm\n13,1\n")]
    [InlineData("AW-TABLE-003", "line 1", "labial_mm,tip_deg\n1,2\n")]
    [InlineData("AW-SLOT-008", "line 2, tooth", "tooth,labial_mm\n99,1\n")]
    [InlineData("AW-TABLE-007", "line 2, labial_mm", "tooth,labial_mm\n13,wide\n")]
    [InlineData("AW-TABLE-007", "line 2, torque_deg", "tooth,torque_deg\n13,120\n")]
    [InlineData("AW-TABLE-010", "line 3, tooth", "tooth,labial_mm\n13,1\n13,2\n")]
    [InlineData("AW-TABLE-001", "(whole file)", "tooth,labial_mm\n")]
    [InlineData("AW-FILE-004", "(whole file)", "")]
    public async Task A_bad_table_of_positions_is_refused_with_code_and_place(string code, string place, string text)
    {
        using var folder = new Folder();
        string table = folder.Text("positions.csv", text);

        Run run = await Run.Of([.. Upper, "--positions", table, "--out", folder.File("x.json")]);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains($"{code}  {table}  {place}\n", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Making_and_measuring_do_not_mix()
    {
        using var folder = new Folder();
        string file = folder.File("case.json");
        await Run.Of([.. Upper, "--out", file]);

        Run run = await Run.Of("arch", file, "--jaw", "upper");

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains("--jaw does not go together with a CASE", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bench_set_up_is_no_arch()
    {
        using var folder = new Folder();

        Run run = await Run.Of("arch", folder.Case("three-slots.json"));

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains("bench", run.Error, StringComparison.Ordinal);
    }
}
