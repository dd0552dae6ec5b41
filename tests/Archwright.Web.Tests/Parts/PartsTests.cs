using System.Globalization;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Tests;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Web.Chair;
using Archwright.Web.Drawing;
using Archwright.Web.Parts;
using Bunit;

namespace Archwright.Web.Tests.Parts;

/// <summary>Parts of the screens, without a browser. Rests on what they are given.</summary>
[Trait("basis", "law")]
public sealed class PartsTests : BunitContext
{
    [Fact]
    public void Name_age_and_birth_date_stand_on_the_bar_with_every_alert()
    {
        Patient patient = Samples.Patient();
        patient.Raise(AlertKind.Nickel, "Rash from a watch strap.", Samples.Today);

        var bar = Render<PatientBar>(parts => parts
            .Add(part => part.Patient, patient).Add(part => part.Day, Samples.Today));

        Assert.Equal("Mira Østby-Kahn, 13", bar.Find("h1").TextContent);
        Assert.Contains("born 3 Mar 2012", bar.Markup, StringComparison.Ordinal);
        Assert.Contains("invented", bar.Markup, StringComparison.Ordinal);
        Assert.Contains("Rash from a watch strap.", bar.Find("ul.alerts").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_sign_button_waits_until_nothing_hinders_and_says_what_does()
    {
        ChairState state = Open();
        var bar = Render<SignBar>(parts => parts.Add(part => part.State, state).Add(part => part.MaySign, true));

        Assert.True(bar.Find(".sign-button").HasAttribute("disabled"));
        Assert.Contains("to do before signing", bar.Find("summary").TextContent, StringComparison.Ordinal);

        state.Edit(_ => Samples.Complete);
        bar.Render();

        Assert.False(bar.Find(".sign-button").HasAttribute("disabled"));
    }

    [Fact]
    public void An_assistant_is_offered_no_signature()
    {
        var bar = Render<SignBar>(parts => parts
            .Add(part => part.State, Open()).Add(part => part.MaySign, false));

        Assert.Empty(bar.FindAll(".sign-button"));
    }

    [Fact]
    public void The_first_tap_sets_six_weeks_and_the_next_ones_count()
    {
        ChairState state = Open();
        var bar = Render<SignBar>(parts => parts.Add(part => part.State, state));

        bar.Find("[aria-label='A week more']").Click();
        bar.Find("[aria-label='A week more']").Click();

        Assert.Equal(7, state.Content.NextInWeeks);
    }

    [Fact]
    public void Choosing_otherwise_than_advised_asks_for_a_reason()
    {
        ChairState state = Open();
        state.Edit(_ => Samples.With(arch => arch with
        {
            Decided = new Decision(WireAct.Fit, "ss-019x025", null, ""),
        }));

        var list = Render<CandidateList>(parts => parts.Add(part => part.State, state));

        Assert.Contains("Why?", list.Find("fieldset.reasons").TextContent, StringComparison.Ordinal);
        list.FindAll("fieldset.reasons button")[0].Click();
        Assert.Equal("Seen in the mouth", state.Arch.Decided!.Reason);
    }

    [Fact]
    public void An_advice_is_not_offered_on_positions_of_another_day()
    {
        var list = Render<CandidateList>(parts => parts.Add(part => part.State, Open()));

        Assert.Contains("Note today's positions first", list.Markup, StringComparison.Ordinal);
        Assert.True(list.FindAll("button").First(one => one.TextContent.Contains("Ask for", StringComparison.Ordinal))
            .HasAttribute("disabled"));
    }

    [Fact]
    public void An_advice_says_that_it_recommends_and_on_which_rules()
    {
        ChairState state = Open();
        state.Edit(_ => Samples.Complete);

        var list = Render<CandidateList>(parts => parts.Add(part => part.State, state));

        Assert.Contains("It recommends; the clinician decides.", list.Markup, StringComparison.Ordinal);
        Assert.Contains("test-1", list.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void An_advice_gives_its_reason_interval_ties_questions_and_what_speaks_against_each_wire()
    {
        ChairState state = Open();
        state.Edit(_ => Samples.With(arch => arch with { Decided = null, Advised = WholeAdvice() }));
        var list = Render<CandidateList>(parts => parts.Add(part => part.State, state));

        string words = list.Find(".advice").TextContent;
        foreach (string said in new[]
                 {
                     "Advice: step up to", "Every slot is nearly full.", "Next visit in 5 to 8 weeks, usually 6.",
                     "upper right canine (13, ISO)", "Ask for the discomfort.",
                 })
        {
            Assert.Contains(said, words, StringComparison.Ordinal);
        }

        string second = list.FindAll(".candidate")[1].TextContent;
        Assert.Contains("Too strong for the canine.", second, StringComparison.Ordinal);
        Assert.Contains("As good as the first", second, StringComparison.Ordinal);
        Assert.Contains("Ceilings: 2 above.", list.Find(".findings").TextContent, StringComparison.Ordinal);
        Assert.Null(state.Arch.Decided); // nothing is chosen in advance

        list.FindAll(".advice button")[0].Click();
        list.FindAll(".advice button")[1].Click();

        Assert.Equal(6, state.Content.NextInWeeks);
        Assert.Equal(TieKind.Partial, state.Arch.Ties.Of(ToothNumber.FromIso(13), TieKind.None));
    }

    [Fact]
    public void What_might_be_considered_stands_with_the_advice_where_the_choice_is_made()
    {
        ChairState state = Open();
        state.Edit(_ => Samples.With(arch => arch with
        {
            Advised = WholeAdvice() with { Considerations = Listing<string>.Of(["What binds: a force."]) },
        }));

        var list = Render<CandidateList>(parts => parts.Add(part => part.State, state));

        Assert.Equal("What binds: a force.", list.Find(".advice .considered > p").TextContent);
        state.Edit(_ => Samples.Complete);
        list.Render();
        Assert.Empty(list.FindAll(".considered"));
    }

    [Fact]
    public void Every_caution_of_an_advice_stands_under_its_wires()
    {
        ChairState state = Open();
        state.Edit(_ => Samples.With(arch => arch with
        {
            Advised = WholeAdvice() with
            {
                Cautions = Listing<string>.Of(["A range, not a figure.", "Roots are short."]),
            },
        }));

        var list = Render<CandidateList>(parts => parts.Add(part => part.State, state));

        Assert.Equal(
            ["A range, not a figure.", "Roots are short."],
            list.FindAll("ol.candidates ~ ul.cautions li").Select(one => one.TextContent));
    }

    [Theory]
    [InlineData(ArchView.Occlusal)]
    [InlineData(ArchView.Frontal)]
    public void The_picture_of_an_arch_says_on_which_side_the_patients_right_is(ArchView view)
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        WireAtWork work = WireAtWork.Engage(Samples.Inputs(), "niti-014", ForceCeilings.Default);

        var picture = Render<ArchPicture>(parts => parts.Add(part => part.Scene, ArchDrawing.Draw(work, view)));

        double right = X("patient's right");
        double left = X("patient's left");
        double tooth = X("17");
        Assert.True(right < left);
        Assert.True(Math.Abs(tooth - right) < Math.Abs(tooth - left)); // a right tooth on the side called right

        double X(string words) => double.Parse(
            picture.FindAll("text").Single(one => one.TextContent == words).GetAttribute("x")!,
            CultureInfo.InvariantCulture);
    }

    [Fact]
    public void A_tap_says_that_a_tooth_is_not_bonded_or_absent_and_another_takes_it_back()
    {
        ChairState state = Open();
        var panel = Render<PositionPanel>(parts => parts.Add(part => part.State, state));
        panel.FindAll("button").Single(one => one.TextContent == "Not bonded, absent").Click();

        Tap("upper right lateral incisor, not bonded");
        Tap("upper left first premolar, absent");

        Assert.Contains(
            "Not bonded: upper right lateral incisor (12, ISO). Absent: upper left first premolar (24, ISO).",
            panel.Find("p[role=status]").TextContent, StringComparison.Ordinal);
        Assert.Equal(12, state.Inputs!.Bonded.Count);

        Tap("upper right lateral incisor, not bonded");
        Tap("upper left first premolar, not bonded"); // the other of the two
        Assert.Null(state.BareAt(ToothNumber.FromIso(12)));
        Assert.Equal(BareTooth.NotBonded, state.BareAt(ToothNumber.FromIso(24)));

        void Tap(string name) => panel.FindAll(".teeth button")
            .Single(one => one.TextContent.EndsWith(name, StringComparison.Ordinal)).Click();
    }

    [Fact]
    public void A_tooth_without_a_bracket_is_called_so_in_the_picture_and_in_the_table()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        ChairState state = Open();
        state.Note(ToothNumber.FromIso(12), BareTooth.NotBonded);
        state.Note(ToothNumber.FromIso(24), BareTooth.Absent);
        WireAtWork work = WireAtWork.Engage(state.Inputs!, "niti-014", ForceCeilings.Default);

        var picture = Render<ArchPicture>(parts => parts
            .Add(part => part.Scene, ArchDrawing.Draw(work, ArchView.Occlusal, state.Bare)));
        var table = Render<LoadTable>(parts => parts.Add(part => part.Work, work));

        Assert.Equal(
            "upper right lateral incisor (12, ISO), not bonded",
            picture.Find("[data-tooth='12']").GetAttribute("aria-label"));
        Assert.Equal(
            "upper left first premolar (24, ISO), absent",
            picture.Find("[data-tooth='24']").GetAttribute("aria-label"));
        Assert.Equal(
            ["not bonded", "absent"], picture.FindAll("text.without").Select(one => one.TextContent));
        Assert.Equal(13, table.FindAll("tbody tr").Count);
        Assert.Equal("not bonded", table.Find("td[colspan]").TextContent);
    }

    [Fact]
    public void Discomfort_stands_beside_the_wires_that_it_followed()
    {
        Guid patient = Guid.NewGuid();
        Visit first = Samples.Visit(patient);
        Visit second = Samples.Visit(patient, Samples.Complete with { Discomfort = new Discomfort(3, 6, 2, null) });

        var card = Render<DiscomfortCard>(parts => parts.Add(part => part.Visits, [first, second]));

        Assert.Single(card.FindAll("li"));
        Assert.Equal("6", card.Find("meter").GetAttribute("value"));
        Assert.Contains("upper kept superelastic NiTi 0.014 in", card.Find("li").TextContent, StringComparison.Ordinal);
        Assert.Contains(
            "Not asked yet", Render<DiscomfortCard>(parts => parts.Add(part => part.Visits, [first])).Markup,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_forecast_that_is_being_computed_can_be_stopped()
    {
        bool stopped = false;
        var panel = Render<PositionPanel>(parts => parts
            .Add(part => part.State, Open()).Add(part => part.Forecasting, true)
            .Add(part => part.OnStop, () => stopped = true));

        panel.Find(".progress button").Click();

        Assert.True(stopped);
    }

    private static Recommendation WholeAdvice() => Samples.Advice() with
    {
        Kind = AdviceKind.StepUp,
        Inputs = Samples.Inputs() with { PresentWire = "niti-012" },
        Because = "Every slot is nearly full.",
        Interval = new AdvisedInterval(5, 6, 8),
        PartialTies = Listing<ToothNumber>.Of([ToothNumber.FromIso(13)]),
        Missing = Listing<string>.Of(["Ask for the discomfort."]),
        Options = Listing<AdvisedWire>.Of(
        [
            new AdvisedWire("niti-014", WireFitness.Fits, 0.9, "13", "Goes in everywhere."),
            new AdvisedWire("ss-016", WireFitness.TooStrong, 3, "13", "Goes in.")
            {
                WhyNot = "Too strong for the canine.",
                TiesWithFirst = true,
                Findings = Listing<string>.Of(["Ceilings: 2 above."]),
                ComfortIndex = 6.2,
            },
        ]),
    };

    private static ChairState Open()
    {
        Patient patient = Samples.Patient();
        ArchTreatment arch = Samples.Upper(patient.Id);
        Visit visit = Visit.Book(patient.Id, Samples.Today, new TimeOnly(9, 30), 20, VisitKind.Adjustment);
        return new ChairState(new PatientFile(patient, [arch], [visit]), visit, []);
    }
}
