using Archwright.Dentition.Positions;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Decisions.Rules;

namespace Archwright.Treatment.Tests.Decisions;

/// <summary>What every orthodontist would expect. Rests on rules of the trade (common practice, no source), one a
/// test.</summary>
[Trait("basis", "law")]
public sealed class TradeRulesTests
{
    [Fact]
    public void A_spent_wire_on_an_aligned_arch_steps_up()
    {
        VisitAdvice advice = VisitAdvisor.Advise(VisitSamples.Question("niti-014", contacts: VisitSamples.Straight));

        Assert.Equal(AdvisedStep.StepUp, advice.Step);
        Assert.True(WireSize.Compare(VisitSamples.Wire("niti-014"), advice.Wire!.Figures.Wire) > 0);
        Assert.True(advice.Wire.Allowed);
    }

    [Fact]
    public void A_working_wire_is_kept()
    {
        VisitQuestion question = VisitSamples.Question(
            "niti-014", weeks: 5,
            offsets: [(23, new ClinicalOffset(Labial: 0.6)), (22, new ClinicalOffset(Labial: -0.5))]);

        VisitAdvice advice = VisitAdvisor.Advise(question);

        Assert.Equal(AdvisedStep.Keep, advice.Step);
        Assert.Equal("niti-014", advice.Wire!.Figures.Wire.Id);
        Assert.Equal(FindingKind.For, advice.Wire.Findings.Single(one => one.Rule == StillWorks.Name).Kind);
    }

    [Fact]
    public void A_rebonded_displaced_tooth_steps_down()
    {
        VisitQuestion question = VisitSamples.Question("ss-018", weeks: 6, offsets: [(13, VisitSamples.High(1.2))]);

        VisitAdvice advice = VisitAdvisor.Advise(question);

        Assert.True(advice.Step == AdvisedStep.StepDown, advice.Because);
        Assert.True(WireSize.Compare(VisitSamples.Wire("ss-018"), advice.Wire!.Figures.Wire) < 0);
        Assert.Contains("cannot stay", advice.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void A_heavy_rectangular_wire_on_a_crowded_arch_is_refused_with_the_tooth_that_says_no()
    {
        VisitQuestion question = VisitSamples.Question(
            null, contacts: [2, 1.5, 1, 2, 1.5], choice: ["ss-019x025", "niti-012"]);

        WireOption steel = VisitAdvisor.Advise(question).Of("ss-019x025")!;

        Assert.False(steel.Allowed);
        Assert.Matches(@"\(\d\d\)", steel.FirstAgainst!.Sentence);
    }

    [Theory]
    [InlineData("niti-014")]
    [InlineData("ss-018")]
    public void High_discomfort_leads_to_keep_or_lighter_and_never_to_heavier(string present)
    {
        VisitQuestion aligned = VisitSamples.Question(present, contacts: VisitSamples.Straight) with { Discomfort = 8 };

        VisitAdvice advice = VisitAdvisor.Advise(aligned);

        Assert.Equal(AdvisedStep.Keep, advice.Step);
        Assert.DoesNotContain(advice.Options, option => option.Allowed
            && WireSize.Compare(VisitSamples.Wire(present), option.Figures.Wire) > 0);
    }

    [Fact]
    public void A_sore_patient_whose_wire_cannot_stay_gets_a_lighter_one()
    {
        VisitQuestion question = VisitSamples.Question(
            "ss-018", weeks: 6, offsets: [(13, VisitSamples.High(1.2))]) with { Discomfort = 9 };

        VisitAdvice advice = VisitAdvisor.Advise(question);

        Assert.True(advice.Step == AdvisedStep.StepDown, advice.Because);
        Assert.True(WireSize.Compare(VisitSamples.Wire("ss-018"), advice.Wire!.Figures.Wire) <= 0);
    }

    [Fact]
    public void An_alert_of_nickel_leaves_wires_without_it()
    {
        VisitQuestion question = VisitSamples.Question("bti-016", contacts: VisitSamples.Straight) with
        {
            Alerts = [PatientAlert.Nickel],
        };

        VisitAdvice advice = VisitAdvisor.Advise(question);

        Assert.Equal(AdvisedStep.StepUp, advice.Step);
        Assert.True(advice.Wire!.Figures.Wire.Alloy.Nickel.Value < 20);
        Assert.All(
            advice.Options.Where(option => option.Figures.Wire.Alloy.Nickel.Value > 20),
            option => Assert.False(option.Allowed));
        Assert.Contains(advice.Cautions, caution => caution.Contains("nickel", StringComparison.Ordinal));
    }

    [Fact]
    public void A_wire_in_place_that_holds_nickel_does_not_stay_in_a_patient_who_reacts_to_it()
    {
        VisitQuestion question = VisitSamples.Question("niti-014", contacts: VisitSamples.Straight) with
        {
            Alerts = [PatientAlert.Nickel],
        };

        VisitAdvice advice = VisitAdvisor.Advise(question);

        Assert.NotEqual("niti-014", advice.Wire?.Figures.Wire.Id);
        Assert.False(advice.Of("niti-014")!.Allowed);
    }

    [Fact]
    public void With_nickel_barred_and_nothing_else_in_stock_it_says_that_none_is_suitable_and_names_the_nearest()
    {
        VisitQuestion question = VisitSamples.Question(
            null, contacts: VisitSamples.Straight, choice: ["niti-014", "niti-016"]) with
        {
            ChoiceIsStock = true, Alerts = [PatientAlert.Nickel],
        };

        VisitAdvice advice = VisitAdvisor.Advise(question);

        Assert.Equal(AdvisedStep.LookFirst, advice.Step);
        Assert.Null(advice.Wire);
        Assert.StartsWith("No wire in stock suits", advice.Because, StringComparison.Ordinal);
        Assert.True(advice.Nearest!.Figures.Wire.Alloy.Nickel.Value < 20);
        Assert.Contains(advice.Nearest.Figures.Wire.Id, advice.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_drawer_is_said()
    {
        VisitQuestion question = VisitSamples.Question(null, contacts: VisitSamples.Straight, choice: []) with
        {
            ChoiceIsStock = true,
        };

        VisitAdvice advice = VisitAdvisor.Advise(question);

        Assert.Equal(AdvisedStep.LookFirst, advice.Step);
        Assert.StartsWith("No wire in stock suits", advice.Because, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(PatientAlert.Resorption)]
    [InlineData(PatientAlert.Medication)]
    public void Roots_and_medicines_send_the_question_back_to_the_clinician(PatientAlert alert)
    {
        VisitQuestion question = VisitSamples.Question("niti-014", contacts: VisitSamples.Straight) with
        {
            Alerts = [alert],
        };

        VisitAdvice advice = VisitAdvisor.Advise(question);

        Assert.Equal(AdvisedStep.LookFirst, advice.Step);
        Assert.Null(advice.Wire);
        Assert.Contains(advice.Options, option => option.Allowed);
    }

    [Fact]
    public void Poor_hygiene_pauses()
    {
        VisitQuestion question = VisitSamples.Question("niti-014", contacts: VisitSamples.Straight) with
        {
            Alerts = [PatientAlert.Hygiene],
        };

        Assert.Equal(AdvisedStep.Keep, VisitAdvisor.Advise(question).Step);
    }

    [Fact]
    public void What_was_not_said_is_asked_for_and_nothing_is_put_in_its_place()
    {
        VisitQuestion known = VisitSamples.Question("niti-014", contacts: VisitSamples.Straight);
        VisitQuestion unknown = known with
        {
            Present = new PresentWire(VisitSamples.Wire("niti-014"), null), Alerts = null, Discomfort = null,
            AgeYears = null, WorkingWire = null,
        };

        VisitAdvice advice = VisitAdvisor.Advise(unknown);

        Assert.Empty(VisitAdvisor.Advise(known).Missing);
        Assert.Equal(
            [
                "visit.present.weeks", "visit.alerts", "visit.discomfort_0_10", "visit.age_years",
                "visit.working_wire",
            ],
            advice.Missing.Select(fact => fact.Key));
        Assert.Contains(
            advice.Cautions, caution => caution.StartsWith("Alerts were not asked", StringComparison.Ordinal));
    }

    [Fact]
    public void A_wire_in_place_that_nobody_named_leaves_keep_and_step_untold()
    {
        VisitQuestion question = VisitSamples.Question(null, contacts: VisitSamples.Straight) with
        {
            PresentIsKnown = false,
        };

        VisitAdvice advice = VisitAdvisor.Advise(question);

        Assert.Equal(AdvisedStep.LookFirst, advice.Step);
        Assert.Equal("visit.present", Assert.Single(advice.Missing).Key);
    }

    [Fact]
    public void A_wire_that_went_in_a_fortnight_ago_is_given_its_time()
    {
        VisitQuestion question = VisitSamples.Question(
            "niti-014", weeks: 2, offsets: [(23, new ClinicalOffset(Labial: 0.6))]);

        VisitAdvice advice = VisitAdvisor.Advise(question);

        Assert.True(advice.Step == AdvisedStep.Keep, advice.Because);
    }

    [Fact]
    public void No_step_goes_farther_than_trials_have_gone_and_none_past_the_working_wire()
    {
        VisitQuestion question = VisitSamples.Question("niti-012", contacts: VisitSamples.Straight) with
        {
            WorkingWire = VisitSamples.Wire("ss-018"),
        };

        VisitAdvice advice = VisitAdvisor.Advise(question);

        Assert.Contains("Too far in one step", advice.Of("ss-018")!.FirstAgainst!.Sentence, StringComparison.Ordinal);
        Assert.StartsWith(
            "Stiffer than the working wire", advice.Of("ss-019x025")!.FirstAgainst!.Sentence, StringComparison.Ordinal);
    }
}
