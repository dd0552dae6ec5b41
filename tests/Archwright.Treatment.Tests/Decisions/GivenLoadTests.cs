using System.Collections.Immutable;
using System.Text;
using Archwright.Dentition.Positions;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Decisions.Rules;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Policies;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Tests.Decisions;

/// <summary>Loads once the ligament has given. Rests on equilibrium, checked by other code than found it, and on what
/// is taught of a stiff wire (common practice, no source).</summary>
[Trait("basis", "law")]
public sealed class GivenLoadTests
{
    // A lid 0.71 mm from the base leaves a wire of 0.46 mm a play of 0.25 mm between one slot and the next.
    private static readonly ClinicalOffset TenthBeyondPlay = new(Labial: 0.35);

    [Theory]
    [InlineData("ss-018")]
    [InlineData("niti-018")]
    public void Each_tooth_gives_by_its_compliance_under_the_load_that_is_left(string wire)
    {
        VisitQuestion question = VisitSamples.Question(null, offsets: [(13, VisitSamples.High(0.3))]);
        WireFigures figures = new WireEvaluator(question.Arch).Fitted(VisitSamples.Wire(wire));

        Assert.Equal(question.Arch.Teeth.Length, figures.Given.Length);
        Assert.InRange(figures.LargestGiven!.Value, 0.1, 0.9 * figures.LargestForce); // it is loaded, and it gives
        for (int i = 0; i < figures.Given.Length; i++)
        {
            ToothDay tooth = figures.Given[i];
            ToothSupport support = ToothSupport.Of(tooth.Tooth);
            SlotFrame seen = question.Arch.Arrangement.Slots[i].Actual;
            var load = new Six(
                MovingArch.InAxes(tooth.Slot, tooth.AtResistance.Force),
                MovingArch.InAxes(tooth.Slot, tooth.AtResistance.Moment));
            SlotFrame expected = MovingArch.Moved(support, seen, ToothAnswer.Give(support, load));

            Assert.InRange((expected.Centre - tooth.Slot.Centre).Length, 0, 2.5e-3); // half of the tolerance
        }
    }

    [Fact]
    public void The_load_that_is_left_is_that_of_the_wire_engaged_where_the_teeth_have_given_to()
    {
        VisitQuestion question = VisitSamples.Question(null, offsets: [(13, VisitSamples.High(0.3))]);
        WireFigures figures = new WireEvaluator(question.Arch).Fitted(VisitSamples.Wire("ss-018"));

        EngagementResult there = new Engager(question.Arch.Arrangement with
        {
            Wire = VisitSamples.Wire("ss-018").Wire,
            Slots = [.. question.Arch.Arrangement.Slots.Zip(figures.Given, (slot, tooth) =>
                slot with { Actual = tooth.Slot })],
        }).Engage();

        Assert.True(there.Converged);
        double largest = figures.LargestGiven!.Value;
        for (int i = 0; i < figures.Given.Length; i++)
        {
            // A finer mesh than a forecast takes: two hundredths of the largest force lie between the two.
            double apart = (there.Slots[i].OnTooth.Force - figures.Given[i].FromWire.Force).Length;
            Assert.InRange(apart / largest, 0, 0.03);
        }
    }

    [Fact]
    public void A_tenth_of_a_millimetre_beyond_play_does_not_refuse_a_firm_round_wire()
    {
        VisitQuestion question = VisitSamples.Question(
            "niti-018", choice: ["ss-018"], offsets: [(12, TenthBeyondPlay)]);
        WireFigures figures = new WireEvaluator(question.Arch).Fitted(VisitSamples.Wire("ss-018"));

        WireOption given = VisitJudge.Judge(figures, question, null, VisitPolicy.Default);
        WireOption rigid = VisitJudge.Judge(
            figures, question, null, VisitPolicy.Default with { JudgedLoad = JudgedLoad.OnTyingIn });

        Finding Ceiling(WireOption option) => option.Findings.Single(one => one.Rule == WithinCeilings.Name);
        Assert.Equal(FindingKind.For, Ceiling(given).Kind);
        Assert.Equal(FindingKind.Against, Ceiling(rigid).Kind);
        Assert.Contains("once the ligament has given", Ceiling(given).Sentence, StringComparison.Ordinal);
        Assert.Contains("on tying in", Ceiling(given).Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("ligament", Ceiling(rigid).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_left_never_stores_more_than_what_was_tied_in()
    {
        VisitQuestion question = VisitSamples.Question(null, offsets: [(13, VisitSamples.High(0.3))]);
        WireFigures figures = new WireEvaluator(question.Arch).Fitted(VisitSamples.Wire("ss-016"));

        double before = Engaged(question, [.. question.Arch.Arrangement.Slots.Select(slot => slot.Actual)]);
        double after = Engaged(question, [.. figures.Given.Select(tooth => tooth.Slot)]);
        Assert.True(after < before, $"{after} of {before} N·mm");

        static double Engaged(VisitQuestion question, ImmutableArray<SlotFrame> places) =>
            new Engager(question.Arch.Arrangement with
            {
                Wire = VisitSamples.Wire("ss-016").Wire,
                Slots = [.. question.Arch.Arrangement.Slots.Select((slot, i) => slot with { Actual = places[i] })],
            }).Engage().StoredEnergy;
    }

    [Fact]
    public void A_policy_that_does_not_say_which_load_is_judged_is_refused()
    {
        using Stream stream = typeof(VisitPolicy).Assembly
            .GetManifestResourceStream("Archwright.Treatment.Policies.visit-policy.json")!; // part of the library
        using var reader = new StreamReader(stream);
        string text = reader.ReadToEnd().Replace("\"once-given\"", "\"rigid\"", StringComparison.Ordinal);

        PolicyReading reading = PolicyReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));

        Assert.Contains(reading.Problems, problem => problem.Path == "judged_load.load");
    }

    [Theory]
    [InlineData(-0.004, "0", "0")]
    [InlineData(-0.04, "0.0", "0.0")]
    [InlineData(-0.06, "0.0", "-0.1")]
    [InlineData(-10, "0", "-10")]
    public void What_rounds_to_nothing_has_no_sign(double value, string format, string shown) =>
        Assert.Equal(shown, VisitView.Figure(value, format));
}
