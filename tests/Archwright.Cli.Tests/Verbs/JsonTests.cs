using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

/// <summary>Rests on the contract of the command line: with <c>--json</c> standard output is one JSON document with
/// these keys, and nothing else.</summary>
[Trait("basis", "ours")]
public sealed class JsonTests
{
    private static readonly Dictionary<string, (Func<Folder, string[]>, string Format, string[] Keys)> Lines = new()
    {
        ["solve"] = (
            folder => ["solve", folder.Case("three-slots.json")], "archwright-forces/1",
            ["converged", "residual_N", "held_along_N", "elapsed_ms", "wire", "slots", "law", "working"]),
        ["compare"] = (
            folder =>
                ["compare", folder.Case("three-slots.json"), "--stock", folder.Text("stock.txt", "ss-016\nniti-014\n")],
            "archwright-compare/1", ["options"]),
        ["bend"] = (
            _ => ["bend", "--wire", "niti-016", "--to", "1"], "archwright-bend/1",
            ["readings", "force_at_top_N", "residual_mm"]),
        ["forecast"] = (
            folder => ["forecast", folder.Arch(), "--weeks", "1"], "archwright-forecast/1",
            ["weeks", "spent_in_weeks", "rate", "draws", "friction", "soft_tissue", "stopped"]),
        ["visit"] = (
            folder => ["visit", folder.Arch(), "--stock", folder.Text("drawer.txt", "niti-014\n")],
            "archwright-visit/1",
            [
                "advice", "wire", "because", "considerations", "interval_weeks", "partial_ties", "nearest", "options",
                "comfort", "cautions", "missing", "friction", "soft_tissue", "policy_version", "decision",
            ]),
        ["ladder"] = (
            folder => ["ladder", folder.Arch(), "--stock", folder.Text("drawer.txt", "niti-014\n"), "--to", "niti-016"],
            "archwright-ladder/1",
            [
                "working_wire", "working_wire_assumed", "answers", "nearest", "ceiling_factor", "because",
                "considerations", "differences", "cautions", "missing", "wires_looked_at", "forecasts", "draws", "seed",
                "friction", "soft_tissue", "policy_version", "decision",
            ]),
        ["twist"] = (
            folder => ["twist", "--case", folder.Case("twist.json")], "archwright-twist/1",
            [
                "readings", "play_deg", "compliance_deg_per_N_mm", "area_mm2", "second_moment_over_thickness_mm4",
                "second_moment_over_width_mm4", "torsion_constant_mm4",
            ]),
        ["backup"] = (
            folder => ["backup", folder.File("monday.zip"), "--data", folder.Records()],
            "archwright-backup-made/1", ["file", "made_at", "patients", "visits", "photographs", "tried"]),
        ["restore"] = (
            folder => ["restore", folder.Backup(), "--data", folder.File("tried")],
            "archwright-restored/1", ["folder", "made_at", "patients", "visits", "set_aside"]),
        ["validate"] = (_ => ["validate"], "archwright-validate/1", ["checks"]),
        ["wires"] = (_ => ["wires"], "archwright-wires/1", ["wires", "alloys"]),
        ["arch"] = (
            folder => ["arch", "--jaw", "lower", "--slot", "0.018", "--wire", "niti-014", "--contacts", "1,2,0.5,1.5,1",
                "--out", folder.File("case.json")],
            "archwright-arch/1",
            [
                "file", "title", "arch", "wire", "irregularity_mm", "irregularity_class", "contact_displacements_mm",
                "intercanine_width_mm", "intermolar_width_mm", "crowding_mm", "spee_right_mm", "spee_left_mm", "teeth",
                "absent", "unsaid",
            ]),
    };

    public static TheoryData<string> Verbs()
    {
        using var terminal = new Terminal(Stream.Null, Stream.Null, Terminal.UsualWidth);
        // serve runs until it is stopped: a test of the browser starts it as a process.
        return [.. CommandLine.Root(terminal).Subcommands.Select(verb => verb.Name).Where(verb => verb != "serve")];
    }

    /// <summary>Fails the day a verb is added without a line above.</summary>
    [Theory, MemberData(nameof(Verbs))]
    public async Task Every_verb_prints_one_document_and_nothing_else(string verb)
    {
        using var folder = new Folder();
        Assert.True(Lines.ContainsKey(verb), $"There is no JSON test of the verb {verb}.");
        (Func<Folder, string[]> line, string format, string[] keys) = Lines[verb];

        Run run = await Run.Of([.. line(folder), "--json"]);

        // The published record says by its exit code that a figure is out, and one is.
        Assert.Equal(verb == "validate" ? ValidateVerbTests.Expected : ExitCode.Done, run.Code);
        Assert.Empty(run.Error);
        JsonElement root = run.Json();
        Assert.Equal(format, root.GetProperty("format").GetString());
        Assert.Equal(["format", .. keys], root.EnumerateObject().Select(member => member.Name));
        Assert.EndsWith("}\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_solved_slot_has_all_its_keys()
    {
        using var folder = new Folder();

        Run run = await Run.Of("solve", folder.Case("three-slots.json"), "--json");

        JsonElement slot = run.Json().GetProperty("slots")[1];
        Assert.Equal(
            [
                "tooth", "force_N", "moment_N_mm", "labial_N", "occlusal_N", "mesial_N", "rotation_N_mm", "tip_N_mm",
                "torque_N_mm", "contact", "drawn_mm",
            ],
            slot.EnumerateObject().Select(member => member.Name));
        Assert.Equal("B", slot.GetProperty("tooth").GetString());
        Assert.True(slot.GetProperty("occlusal_N").GetDouble() > 1); // the wire pulls the high slot back
    }

    [Fact]
    public async Task Repeats_give_both_medians()
    {
        using var folder = new Folder();

        Run run = await Run.Of("solve", folder.Case("three-slots.json"), "--repeat", "5", "--json");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.True(run.Json().GetProperty("cold_ms").GetDouble() > 0);
        Assert.True(run.Json().GetProperty("warm_ms").GetDouble() > 0);
    }

    [Fact]
    public async Task Steps_are_told_one_by_one()
    {
        using var folder = new Folder();

        Run run = await Run.Of("solve", folder.Case("three-slots-then.json"), "--json");

        Assert.Equal(ExitCode.Done, run.Code);
        JsonElement steps = run.Json().GetProperty("steps");
        Assert.Equal(2, steps.GetArrayLength());
        double before = run.Json().GetProperty("slots")[1].GetProperty("occlusal_N").GetDouble();
        double after = steps[0].GetProperty("slots")[1].GetProperty("occlusal_N").GetDouble();
        Assert.InRange(after, 0.01 * before, 0.9 * before); // half the way back: less than before, not none
        Assert.Equal(10, steps[1].GetProperty("temperature_degC").GetDouble());
    }

    [Fact]
    public async Task A_compared_wire_has_all_its_keys()
    {
        using var folder = new Folder();

        Run run = await Run.Of(
            "compare", folder.Case("three-slots.json"), "--stock", folder.Text("stock.csv", "wire,pieces\nss-016,3\n"),
            "--json");

        JsonElement option = Assert.Single(run.Json().GetProperty("options").EnumerateArray());
        Assert.Equal(
            [
                "wire", "engaged", "why_not", "largest_force_N", "largest_force_tooth", "largest_moment_N_mm",
                "teeth_above_ceiling", "max_strain", "set_mm", "torque_play_deg", "sentence",
                "working_force_N", "working_force_tooth", "working_moment_N_mm", "teeth_above_ceiling_working",
                "transformed_share", "upper_bound", "lasting",
            ],
            option.EnumerateObject().Select(member => member.Name));
        Assert.Equal("ss-016", option.GetProperty("wire").GetString());
    }

    [Fact]
    public async Task One_wire_is_told_with_the_sources_of_its_alloy()
    {
        Run run = await Run.Of("wires", "ss-019x025", "--json");

        JsonElement wire = Assert.Single(run.Json().GetProperty("wires").EnumerateArray());
        Assert.Equal("rectangular", wire.GetProperty("shape").GetString());
        JsonElement[] slots = [.. wire.GetProperty("slots").EnumerateArray()];
        Assert.False(slots[0].GetProperty("fits").GetBoolean());
        Assert.True(slots[1].GetProperty("locks").GetBoolean());
        JsonElement alloy = Assert.Single(run.Json().GetProperty("alloys").EnumerateArray());
        Assert.NotEqual("", alloy.GetProperty("young").GetProperty("source").GetString());
    }

    [Fact]
    public async Task An_impossible_answer_is_still_one_document_and_ends_with_1()
    {
        using var folder = new Folder();
        string thick = folder.Text("stock.txt", "ss-0215x028\n");
        string arch = folder.File("arch.json");
        await Run.Of("arch", "--jaw", "upper", "--slot", "0.018", "--wire", "niti-014", "--out", arch);

        Run run = await Run.Of("compare", arch, "--stock", thick, "--json");

        Assert.Equal(ExitCode.NotPossible, run.Code);
        Assert.Empty(run.Error);
        JsonElement option = Assert.Single(run.Json().GetProperty("options").EnumerateArray());
        Assert.False(option.GetProperty("engaged").GetBoolean());
        Assert.Contains("thick", option.GetProperty("why_not").GetString(), StringComparison.Ordinal);
    }
}
