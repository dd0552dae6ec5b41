using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Policies;
using Archwright.Treatment.Tests.Decisions;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Tests.Ladders;

/// <summary>Sequences that trials have tried, on an arch of ours. The trials' own arches are not known, so what is held
/// against them is which sequences they told apart, and no figure.</summary>
[Trait("basis", "published")]
public sealed class TrialSequencesTests
{
    private static readonly double[] Deviations = [-Delivery.Ninetieth, 0, Delivery.Ninetieth];

    /// <summary>Mandall N et al., Which orthodontic archwire sequence? Eur J Orthod 2006;28:561–566 (found): of three
    /// sequences to 0.019 × 0.025 steel in 0.022 slots, B took more visits than A (P = .012), C did not.</summary>
    [Fact]
    public void As_in_the_trial_only_the_sequence_with_one_wire_more_takes_more_visits()
    {
        LadderSpace space = Space(SlotSize.In022, "ss-019x025", Jaw.Upper, 0.5, 0.7, 0.4, 0.6, 0.3);
        (Percentiles visits, Percentiles weeks) a = Among(space, "niti-016", "niti-018x025", "ss-019x025");
        (Percentiles visits, Percentiles weeks) b = Among(space, "niti-016", "ss-016", "ss-020", "ss-019x025");
        (Percentiles visits, Percentiles weeks) c = Among(
            space, "cuniti35-016x022", "cuniti35-019x025", "ss-019x025");

        Assert.True(b.visits.P50 > a.visits.P50, $"A {a.visits}, B {b.visits}");
        Assert.Equal(a.visits.P50, c.visits.P50);
        Assert.True(Overlap(a.weeks, c.weeks), $"A {a.weeks}, C {c.weeks}");
    }

    /// <summary>Ong E, Ho C, Miles P, J Orthod 2011;38:32–39 (found): after 0.014 NiTi in 0.018 slots three second
    /// wires did not differ in the time to the working wire (P = .28).</summary>
    [Fact]
    public void As_in_the_trial_three_second_wires_do_not_differ_in_time()
    {
        LadderSpace space = Space(SlotSize.In018, "ss-016x022", Jaw.Lower, 0.6, 0.8, 0.4, 0.7, 0.5);
        (Percentiles, Percentiles Weeks)[] arms =
        [
            .. new[] { "niti-017x017", "niti-016x022", "niti-014x025" }
                .Select(second => Among(space, "niti-014", second, "ss-016x022")),
        ];

        Assert.All(arms, one => Assert.All(arms, other => Assert.True(
            Overlap(one.Weeks, other.Weeks) && IsWithin(one.Weeks.P50, other.Weeks),
            $"{one.Weeks} and {other.Weeks}")));
    }

    private static bool Overlap(Percentiles a, Percentiles b) => a.P10 <= b.P90 && b.P10 <= a.P90;

    private static bool IsWithin(double weeks, Percentiles range) => weeks >= range.P10 && weeks <= range.P90;

    // Visits and weeks to the last wire for a quick, a usual and a slow patient, as the sequence was given.
    private static (Percentiles Visits, Percentiles Weeks) Among(LadderSpace space, params string[] ids)
    {
        ImmutableArray<CatalogueWire> wires = VisitSamples.Wires(ids);
        LadderFit first = space.Today.Fit(wires[0], null, space.Rules);
        WornWire[] last =
        [
            .. Deviations.Select(deviation => LadderFollower.Follow(
                space, first, [.. wires.Skip(1)], PatientRate.ForAge(14).At(deviation), insists: true))
                .Select(one => one.Stop is null ? one.Wires[^1] : throw new InvalidOperationException(one.Stop)),
        ];
        return (
            new Percentiles(last[2].Visit, last[1].Visit, last[0].Visit),
            new Percentiles(last[2].Week, last[1].Week, last[0].Week));
    }

    private static LadderSpace Space(SlotSize slot, string working, Jaw jaw, params double[] contacts)
    {
        ArchToday arch = ArchToday.Of(ArchBuilder.Build(new ArchRequest
        {
            Jaw = jaw, Slot = slot, WireId = "niti-014", Contacts = [.. contacts],
        }));
        VisitQuestion question = VisitSamples.Question(null) with
        {
            Arch = arch, WorkingWire = VisitSamples.Wire(working),
        };
        double usual = PatientRate.ForAge(14).Median;
        var run = new LadderRun { Policy = VisitPolicy.Default, UsualRate = usual };
        return new LadderSpace
        {
            Today = new LadderArch(run, arch, isToday: true),
            Wires = LadderChoice.Of([], question.WorkingWire!), // set in the line before
            Working = question.WorkingWire!,
            Rules = new LadderRules(question, VisitPolicy.Default, SentenceStyle.Default),
            Rate = usual,
            MostVisits = 12,
        };
    }
}
