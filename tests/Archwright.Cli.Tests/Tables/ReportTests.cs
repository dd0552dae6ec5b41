using System.Text;
using Archwright.Cli.Running;
using Archwright.Cli.Solving;
using Archwright.Cli.Tables;
using Archwright.Cli.Tests.Running;
using Archwright.Cli.Units;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Tables;

/// <summary>What people read. The answers are made by hand, so that a better solver changes no line here.</summary>
[Trait("basis", "ours")]
public sealed class ReportTests
{
    [Fact]
    public void Loads_are_told_tooth_by_tooth() => Snapshot.Matches("solve", Solve(SampleCase.Engaged()));

    [Fact]
    public void A_narrow_screen_shows_fewer_columns() =>
        Snapshot.Matches("solve-80", Solve(SampleCase.Engaged(), width: 80));

    [Fact]
    public void Loads_in_newtons_and_Palmer_numbers() => Snapshot.Matches(
        "solve-newton-palmer", Solve(SampleCase.Engaged("ss-014"), ForceUnit.Newton, ToothNotation.Palmer, width: 100));

    [Fact]
    public void A_tie_that_would_open_is_told_first() => Snapshot.Matches(
        "solve-obstacle",
        Solve(SampleCase.Engaged(
            obstacle: new Obstacle(4, 3.2, 2.5, "the tie holds 2.50 N and would have to hold 3.20 N."))));

    [Fact]
    public void Where_the_whole_law_finds_no_answer_the_reason_stands_first()
    {
        string text = Solve(SampleCase.Engaged() with
        {
            Law = new LawUsed(LawKind.FirstModulus, "no equilibrium was found (out of balance by 0.20 N)"),
        });

        Assert.Contains("With its whole law no answer was found for this wire: no equilibrium was found (out of "
            + "balance by 0.20 N). The figures are those of its first modulus, and too high.", text.Replace('\n', ' '),
            StringComparison.Ordinal);
        Assert.Contains("those of its initial modulus", text, StringComparison.Ordinal);
    }

    /// <summary>A canine 1 mm off between two neighbours: the wire passes its plateau.</summary>
    [Fact]
    public async Task A_case_is_solved_with_the_whole_law_unless_the_first_modulus_is_asked_for()
    {
        using var folder = new Folder();
        string file = folder.Text("niti.json", (await File.ReadAllTextAsync(folder.Case("three-slots.json")))
            .Replace("\"ss-016\"", "\"niti-016\"", StringComparison.Ordinal));

        Run whole = await Run.Of("solve", file, "--json");
        Run first = await Run.Of("solve", file, "--json", "--first-modulus");

        Assert.Equal("whole", whole.Json().GetProperty("law").GetProperty("used").GetString());
        Assert.Equal("first-modulus", first.Json().GetProperty("law").GetProperty("used").GetString());
        Assert.True(Largest(whole) < 0.98 * Largest(first), $"{Largest(whole)} and {Largest(first)} N");
        Assert.Equal(ExitCode.BadInput, (await Run.Of("solve", file, "--history", "36", "--first-modulus")).Code);

        static double Largest(Run run) => run.Json().GetProperty("slots").EnumerateArray()
            .Max(slot => Math.Abs(slot.GetProperty("labial_N").GetDouble())
                + Math.Abs(slot.GetProperty("occlusal_N").GetDouble()));
    }

    [Fact]
    public void Without_an_equilibrium_there_is_no_table() => Snapshot.Matches("solve-lost", Solve(SampleCase.Lost()));

    [Theory]
    [InlineData(80)]
    [InlineData(100)]
    [InlineData(120)]
    public void Compared_wires_are_ranked_with_a_sentence_each(int width) => Snapshot.Matches(
        $"compare-{width}", Compare(width, top: 12));

    [Fact]
    public void Wires_that_are_not_shown_are_counted() => Assert.Contains(
        "Not shown: 1 that would stay bent, 1 that cannot go in. Show them with --all.",
        Compare(120, top: 2), StringComparison.Ordinal);

    [Fact]
    public async Task The_catalogue_of_one_alloy()
    {
        Run run = await Run.Of("wires", "--alloy", "bti");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Empty(run.Error);
        Snapshot.Matches("wires-bti", run.Output);
    }

    [Fact]
    public async Task One_wire_with_its_sources() =>
        Snapshot.Matches("wires-niti-014", (await Run.Of("wires", "niti-014")).Output);

    [Fact]
    public async Task A_twist_test_says_where_the_play_ends()
    {
        using var folder = new Folder();

        Run run = await Run.Of("twist", "--case", folder.Case("twist.json"), "--unit", "N");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("Play of one slot 8.7° each way; between two slots torque begins at 17.4°.", run.Output,
            StringComparison.Ordinal);
        Assert.Contains("in the play", run.Output, StringComparison.Ordinal);
    }

    /// <summary>A superelastic wire put in cold: the history has a table a temperature, the working force is given
    /// beside that on engagement, and no caution speaks of a first modulus any more.</summary>
    [Fact]
    public async Task A_history_of_temperature_is_solved_with_the_whole_law()
    {
        using var folder = new Folder();
        string file = folder.Text("niti.json", (await File.ReadAllTextAsync(folder.Case("three-slots.json")))
            .Replace("\"ss-016\"", "\"niti-016\"", StringComparison.Ordinal));

        Run run = await Run.Of("solve", file, "--history", "22,36,10", "--unit", "N");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("Step 1: 36 °C", run.Output, StringComparison.Ordinal);
        Assert.Contains("Step 2: 10 °C", run.Output, StringComparison.Ordinal);
        Assert.Contains("Working: once every displaced tooth has come 20 % of its way", run.Output,
            StringComparison.Ordinal);
        Assert.DoesNotContain("initial modulus", run.Output, StringComparison.Ordinal);
    }

    /// <summary>Steel stays bent after the standard bend, superelastic nickel-titanium does not: common practice, no
    /// source.</summary>
    [Fact]
    public async Task A_bend_of_two_wires_lists_both_and_says_what_stays_bent()
    {
        using var folder = new Folder();
        string picture = folder.File("bend.svg");

        Run run = await Run.Of("bend", "--wire", "niti-016", "--wire", "ss-016", "--plot", picture);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("Let go, it is straight again.", run.Output, StringComparison.Ordinal);
        Assert.Contains("Let go, it stays bent by 1.", run.Output, StringComparison.Ordinal);
        Assert.Contains("stainless steel 0.016 in", await File.ReadAllTextAsync(picture), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("leave out one of the two", "--case", "a.json", "--wire", "ss-016")]
    [InlineData("bend needs --case FILE, or --wire ID")]
    [InlineData("--json writes one bend", "--wire", "ss-016", "--wire", "niti-016", "--json")]
    [InlineData("too far for a span of 5 mm", "--wire", "ss-016", "--span", "5")]
    [InlineData("the catalogue has no wire 'ss-99'", "--wire", "ss-99")]
    public async Task A_bend_that_cannot_be_is_refused_with_2(string what, params string[] args)
    {
        Run run = await Run.Of(["bend", .. args]);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains(what, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("two of them", "--case", "a.json", "--wire", "ss-016")]
    [InlineData("twist needs --case FILE, or --wire ID with --slot INCHES", "--wire", "ss-016")]
    [InlineData("0.483 mm thick and does not go into a slot 0.457 mm", "--wire", "ss-019x025", "--slot", "0.018")]
    [InlineData("0.635 mm wide and does not go into a slot 0.508 mm", "--wire", "ss-017x025", "--slot", "0.022",
        "--depth", "0.020")]
    public async Task A_twist_that_cannot_be_is_refused_with_2(string what, params string[] args)
    {
        Run run = await Run.Of(["twist", .. args]);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains(what == "two of them" ? "leave out one of the two" : what, run.Error, StringComparison.Ordinal);
    }

    /// <summary>The words of contact, and what is not held at all.</summary>
    [Theory]
    [InlineData(ContactState.None, "does not touch")]
    [InlineData(ContactState.OneEdge, "one edge")]
    [InlineData(ContactState.BothEdges, "both edges")]
    public void Contact_is_told_in_plain_words(ContactState contact, string words)
    {
        Slot slot = SampleCase.File().Arrangement.Slots[0];

        Assert.Equal(words, LoadsTable.Contact(slot, contact));
        Assert.Equal("not tied", LoadsTable.Contact(slot with { Tie = Tie.None }, contact));
    }

    /// <summary>A bare 12 is an upper right lateral incisor by one notation and an upper left first premolar by
    /// another.</summary>
    [Fact]
    public void No_sentence_names_a_tooth_by_another_notation()
    {
        var obstacle = new Obstacle(5, double.NaN, double.NaN, "it is hardest at 12, near 13.");

        string text = Solve(SampleCase.Engaged(obstacle: obstacle), notation: ToothNotation.Universal)
            .Replace('\n', ' ');

        Assert.Contains("at the upper right lateral incisor (7): it is hardest at the upper right lateral incisor (7), "
            + "near the upper right canine (6).", text, StringComparison.Ordinal);
        Assert.DoesNotContain("(12)", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Colours_are_for_screens_alone() =>
        Assert.DoesNotContain("\u001b[", Solve(SampleCase.Engaged()), StringComparison.Ordinal);

    [Fact]
    public async Task Every_line_keeps_to_the_width_and_has_no_blank_at_its_end()
    {
        foreach (int width in new[] { 80, 100, 120 })
        {
            string text = Solve(SampleCase.Engaged(), width: width) + Compare(width, 12)
                + (await Run.Of(width, "wires")).Output;
            string[] lines = text.Split('\n');
            Assert.All(lines, line => Assert.True(line.Length <= width, line));
            Assert.All(lines, line => Assert.Equal(line.TrimEnd(), line));
        }
    }

    private static string Solve(
        SolvedCase solved, ForceUnit? unit = null, ToothNotation notation = ToothNotation.Iso, int width = 120) =>
        Written(width, terminal => SolveReport.Write(
            terminal, solved, unit ?? ForceUnit.Centinewton, notation, ForceCeilings.Default));

    private static string Compare(int width, int top)
    {
        CaseFile file = SampleCase.File();
        return Written(width, terminal => CompareReport.Write(
            terminal, file, SampleCase.Compared(file), ForceUnit.Centinewton, ToothNotation.Iso, top));
    }

    private static string Written(int width, Action<Terminal> write)
    {
        using var output = new MemoryStream();
        using (var terminal = new Terminal(output, Stream.Null, width))
            write(terminal);
        return Encoding.UTF8.GetString(output.ToArray());
    }
}
