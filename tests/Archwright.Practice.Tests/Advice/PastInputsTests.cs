using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
using Archwright.Practice.Courses;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Tests.Advice;

/// <summary>What a visit left, what is expected of it, and a wire at work. Rests on the forecast and the engagement
/// themselves.</summary>
[Trait("basis", "law")]
public sealed class PastInputsTests
{
    private static readonly ArchTreatment Upper = Samples.Upper(Guid.NewGuid());
    private static readonly ToothNumber Canine = ToothNumber.FromIso(13);

    [Fact]
    public void A_visit_leaves_what_was_seen_and_the_wire_that_was_decided()
    {
        PastInputs past = PastInputs.After(Samples.Visit(Guid.NewGuid()), Upper)!;

        Assert.Equal("niti-014", past.WireId);
        Assert.Equal(Samples.HighCanine, past.Inputs.Positions);
        Assert.Equal(Upper.Appliance.Bonded, past.Inputs.Bonded);
    }

    [Fact]
    public void Without_positions_or_without_a_wire_nothing_can_be_forecast()
    {
        Assert.Null(PastInputs.After(
            Samples.Visit(Guid.NewGuid(), Samples.With(arch => arch with { Seen = null })), Upper));
        Assert.Null(PastInputs.After(
            Samples.Visit(Guid.NewGuid(), Samples.With(arch => arch with
            {
                Decided = new Decision(WireAct.LeaveOut, "", null, ""),
            })),
            Upper));
    }

    [Fact]
    public void A_high_canine_is_expected_lower_after_six_weeks_of_a_light_wire()
    {
        PastInputs past = PastInputs.After(Samples.Visit(Guid.NewGuid()), Upper)!;

        ToothMap<ToothOffset> expected = past.Expected(weeks: 6, ageYears: 14);

        double before = Samples.HighCanine.Of(Canine, ToothOffset.Zero).OcclusalMm;
        Assert.InRange(expected.Of(Canine, ToothOffset.Zero).OcclusalMm, before + 0.1, 0.1);
    }

    [Fact]
    public void A_wire_at_work_pushes_a_high_canine_less_than_on_engagement_and_never_more()
    {
        foreach (string wire in new[] { "niti-014", "ss-016" })
        {
            WireAtWork engaged = WireAtWork.Engage(Samples.Inputs(), wire, ForceCeilings.Default);
            WireAtWork working = engaged.AtWork()!;

            Assert.True(working.IsWorking);
            Assert.False(engaged.IsWorking);
            Assert.InRange(On(working), 0.1 * On(engaged), 0.95 * On(engaged));
        }
    }

    // Nine millimetres along the arch into its neighbour's place: no equilibrium is found for a wire that was tried.
    [Fact]
    public void A_wire_that_was_tried_and_found_no_rest_has_no_loads_and_the_reason_in_words()
    {
        WireAtWork work = WireAtWork.Engage(
            Samples.Inputs() with
            {
                Positions = ToothMap<ToothOffset>.Empty.With(
                    ToothNumber.FromIso(12), new ToothOffset(MesialMm: 9)),
            },
            "ss-016",
            ForceCeilings.Default);

        Assert.False(work.Result.Converged);
        Assert.StartsWith("Cannot go in", work.WhyNot, StringComparison.Ordinal);
        Assert.Empty(work.Loads);
        Assert.Null(work.AtWork());
    }

    private static double On(WireAtWork work) => work.Loads.Single(load => load.Tooth == Canine).Load.Force;
}
