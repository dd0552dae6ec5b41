using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Tests;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Web.Chair;
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
        Assert.True(list.FindAll("button").First(one => one.TextContent.Contains("Compare", StringComparison.Ordinal))
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

    private static ChairState Open()
    {
        Patient patient = Samples.Patient();
        ArchTreatment arch = Samples.Upper(patient.Id);
        Visit visit = Visit.Book(patient.Id, Samples.Today, new TimeOnly(9, 30), 20, VisitKind.Adjustment);
        return new ChairState(new PatientFile(patient, [arch], [visit]), visit, []);
    }
}
