using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Cli.Tables;
using Archwright.Cli.Tests.Running;
using Archwright.Cli.Verbs;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Alloys;
using Archwright.Treatment.Forecasts;
using SixLabors.ImageSharp;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

/// <summary>Rests on the contract of the command line.</summary>
[Trait("basis", "ours")]
public sealed class ForecastVerbTests
{
    [Fact]
    public async Task A_week_and_a_tooth_have_all_the_keys_of_the_contract()
    {
        using var folder = new Folder();

        Run run = await Run.Of("forecast", folder.Arch(), "--weeks", "2", "--json");

        JsonElement[] weeks = [.. run.Json().GetProperty("weeks").EnumerateArray()];
        Assert.Equal([0, 1, 2], weeks.Select(week => week.GetProperty("week").GetInt32()));
        JsonElement index = weeks[2].GetProperty("irregularity_mm");
        Assert.Equal(index.GetProperty("p10").GetDouble(), index.GetProperty("p90").GetDouble());
        Assert.True(index.GetProperty("p50").GetDouble()
            < weeks[0].GetProperty("irregularity_mm").GetProperty("p50").GetDouble());
        Assert.Equal(1, weeks[0].GetProperty("activation_left_share").GetProperty("p50").GetDouble());
        JsonElement tooth = weeks[0].GetProperty("teeth")[0];
        Assert.Equal(
            ["tooth", "labial_mm", "occlusal_mm", "mesial_mm", "rotation_deg", "tip_deg", "torque_deg"],
            tooth.EnumerateObject().Select(member => member.Name).Take(7));
        Assert.Equal("43", tooth.GetProperty("tooth").GetString());
    }

    [Fact]
    public async Task Draws_give_ranges_and_the_same_seed_the_same_document()
    {
        using var folder = new Folder();
        string[] line = ["forecast", folder.Arch(), "--weeks", "1", "--draws", "4", "--seed", "3", "--json"];

        Run one = await Run.Of(line);
        Run two = await Run.Of(line);

        Assert.Equal(one.Output, two.Output);
        JsonElement index = one.Json().GetProperty("weeks")[1].GetProperty("irregularity_mm");
        Assert.True(index.GetProperty("p10").GetDouble() < index.GetProperty("p90").GetDouble());
    }

    [Fact]
    public async Task With_friction_a_crowded_arch_aligns_otherwise_and_the_answer_says_that_it_rubs()
    {
        using var folder = new Folder();
        string arch = folder.Arch();

        Run free = await Run.Of("forecast", arch, "--weeks", "3");
        Run rubs = await Run.Of("forecast", arch, "--weeks", "3", "--friction", "wet");

        Assert.Contains("no friction", free.Output, StringComparison.Ordinal);
        Assert.Contains("friction of a bench", rubs.Output, StringComparison.Ordinal);
        Assert.NotEqual(free.Output.Split("tooth")[0], rubs.Output.Split("tooth")[0]);
    }

    /// <summary>A lip that presses on the incisors brings them further in.</summary>
    [Fact]
    public async Task A_lip_can_press_on_the_teeth()
    {
        using var folder = new Folder();
        string arch = folder.Arch();

        Run free = await Run.Of("forecast", arch, "--weeks", "2", "--json");
        Run pressed = await Run.Of("forecast", arch, "--weeks", "2", "--json", "--load", "41:labial=-0.3",
            "--load", "31:labial=-0.3");

        static double Labial(Run run) => run.Json().GetProperty("weeks")[2].GetProperty("teeth").EnumerateArray()
            .Single(tooth => tooth.GetProperty("tooth").GetString() == "41").GetProperty("labial_mm").GetDouble();
        Assert.True(Labial(pressed) < Labial(free) - 0.02);
    }

    [Fact]
    public async Task Lips_and_cheeks_press_back_and_the_answer_says_how_much()
    {
        using var folder = new Folder();
        string arch = folder.Arch();

        Run free = await Run.Of("forecast", arch, "--weeks", "3", "--json");
        Run held = await Run.Of("forecast", arch, "--weeks", "3", "--json", "--soft-tissue", "20");
        Run told = await Run.Of("forecast", arch, "--weeks", "1", "--soft-tissue", "average");

        static double[] Pushes(Run run, int week) =>
        [
            .. run.Json().GetProperty("weeks")[week].GetProperty("teeth").EnumerateArray()
                .Select(tooth => tooth.GetProperty("soft_tissue_labial_N").GetDouble()),
        ];
        Assert.Equal(0, free.Json().GetProperty("soft_tissue").GetDouble());
        Assert.Equal(20, held.Json().GetProperty("soft_tissue").GetDouble());
        Assert.All(Pushes(free, 3), push => Assert.Equal(0, push));
        Assert.All(Pushes(held, 0), push => Assert.Equal(0, push, tolerance: 1e-9));
        Assert.Contains(Pushes(held, 3), push => push < -0.01);
        Assert.NotEqual(free.Output, held.Output);
        Assert.Contains("lips and cheeks of average people", Joined(told.Output), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("forecast", "firm")]
    [InlineData("forecast", "-1")]
    [InlineData("visit", "21")]
    [InlineData("ladder", "NaN")]
    public async Task A_firmness_of_lips_that_cannot_be_read_is_refused(string verb, string typed)
    {
        using var folder = new Folder();
        string[] weeks = verb == "forecast" ? ["--weeks", "1"] : [];

        Run run = await Run.Of([verb, folder.Arch(), .. weeks, "--soft-tissue", typed]);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains("none, average or a number from 0 to 20", Joined(run.Error), StringComparison.Ordinal);
    }

    private static string Joined(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    [Theory]
    [InlineData("11:labial=-0.05", "The case has no slot on 11")]
    [InlineData("labial=-0.05", "There is no tooth")]
    [InlineData("41:labial=-50", "from -10 to 10 N")]
    [InlineData("41:labial=NaN", "from -10 to 10 N")]
    [InlineData("41:buccal=1", "'buccal=1'")]
    [InlineData("99:labial=1", "'99' is no ISO 3950 number")]
    public async Task A_load_that_cannot_be_read_is_refused_with_the_reason(string typed, string why)
    {
        using var folder = new Folder();

        Run run = await Run.Of("forecast", folder.Arch(), "--weeks", "1", "--load", typed);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains(why, run.Error.Replace("\n", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("slippery")]
    [InlineData("-0.1")]
    [InlineData("NaN")]
    [InlineData("3")]
    public async Task A_friction_that_is_neither_a_word_nor_a_coefficient_is_refused(string typed)
    {
        using var folder = new Folder();

        Run run = await Run.Of("forecast", folder.Arch(), "--weeks", "1", "--friction", typed);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Contains("none, wet, dry or a coefficient", run.Error, StringComparison.Ordinal);
    }

    /// <summary>On the plateau a NiTi wire pushes less than its first modulus says.</summary>
    [Fact]
    public async Task The_whole_law_of_a_wire_is_followed_when_asked_for()
    {
        using var folder = new Folder();
        string arch = folder.Arch();

        Run first = await Run.Of("forecast", arch, "--weeks", "1");
        Run whole = await Run.Of("forecast", arch, "--weeks", "1", "--whole-law");

        Assert.Equal(ExitCode.Done, whole.Code);
        Assert.Empty(whole.Error);
        Assert.Contains(Cautions.InitialModulus[..40], first.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(Cautions.InitialModulus[..40], whole.Output, StringComparison.Ordinal);
        Assert.NotEqual(first.Output, whole.Output);
    }

    [Fact]
    public void Without_an_answer_by_the_whole_law_the_first_modulus_is_taken_and_said()
    {
        using var folder = new Folder();
        CaseFile file = Cases.Load(folder.Arch());
        var request = new ForecastRequest
        {
            Arrangement = file.Arrangement, Teeth = [.. file.Teeth.Select(tooth => tooth!.Value)], Weeks = 1,
        };
        var none = new Forecast
        {
            Days = [], Stop = new ForecastStop(0, null, "planted"), SpentOnDay = null, Steps = 0, Engagements = 0,
        };

        ForecastAnswer Answered(CaseFile with, Forecast elastic) => new(
            with, request, with.Arrangement.Wire.Alloy is LinearElastic ? elastic : none, Drawn: null);

        ForecastAnswer answer = ForecastVerb.WithWholeLaw(file, with => Answered(with, none with { Stop = null }));
        ForecastAnswer whole = ForecastVerb.WithWholeLaw(
            file, with => Answered(with, none) with { Forecast = none with { Stop = null } });

        Assert.Equal(LawTaken.FirstForWantOfWhole, answer.Law);
        Assert.Same(file, answer.Case);
        Assert.Contains(Cautions.NoWholeLaw, ForecastReport.ForecastCautions(answer));
        Assert.Contains(Cautions.InitialModulus, ForecastReport.ForecastCautions(answer));
        Assert.Equal(LawTaken.Whole, whole.Law);
    }

    [Fact]
    public async Task Table_picture_and_film_are_made()
    {
        using var folder = new Folder();
        string picture = folder.File("weeks.svg");
        string film = folder.File("arch.gif");

        Run run = await Run.Of(
            "forecast", folder.Arch(), "--weeks", "1", "--plot", picture, "--animate", film, "--teeth", "palmer");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("irregularity", run.Output, StringComparison.Ordinal);
        Assert.Contains("LR3", run.Output, StringComparison.Ordinal);
        Assert.Contains("clinician decides", run.Output, StringComparison.Ordinal);
        Assert.Contains("weeks from today", await File.ReadAllTextAsync(
            picture, TestContext.Current.CancellationToken), StringComparison.Ordinal);
        using Image moving = await Image.LoadAsync(film, TestContext.Current.CancellationToken);
        Assert.Equal(8, moving.Frames.Count);
    }

    [Fact]
    public async Task Observed_places_change_the_rate()
    {
        using var folder = new Folder();
        // Nothing has moved after two weeks: a slow patient.
        string arch = folder.Arch();
        JsonElement today = (await Run.Of("forecast", arch, "--weeks", "1", "--json")).Json()
            .GetProperty("weeks")[0].GetProperty("teeth");
        string rows = string.Concat(today.EnumerateArray().Select(tooth => FormattableString.Invariant(
            $"2,{tooth.GetProperty("tooth").GetString()},{tooth.GetProperty("labial_mm").GetDouble()}\n")));
        string seen = folder.Text("seen.csv", "week,tooth,labial_mm\n" + rows);

        Run prior = await Run.Of("forecast", arch, "--weeks", "1", "--json");
        Run learnt = await Run.Of("forecast", arch, "--weeks", "1", "--observed", seen, "--json");

        Assert.True(Rate(learnt) < Rate(prior));
    }

    [Theory]
    [InlineData("forecast needs --weeks", "three-slots.json")]
    [InlineData("no teeth that could move", "three-slots.json", "--weeks", "4")]
    [InlineData("--animate writes .gif files, not 'a.mp4'", "three-slots.json", "--weeks", "4", "--animate", "a.mp4")]
    [InlineData("--weeks is a whole number from 1 to 104", "three-slots.json", "--weeks", "200")]
    public async Task What_cannot_be_forecast_is_refused_in_words(string words, string name, params string[] rest)
    {
        using var folder = new Folder();

        Run run = await Run.Of(["forecast", folder.Case(name), .. rest]);

        Assert.Equal(ExitCode.BadInput, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains(words, run.Error.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    private static double Rate(Run run) => run.Json().GetProperty("rate").GetProperty("p50").GetDouble();
}
