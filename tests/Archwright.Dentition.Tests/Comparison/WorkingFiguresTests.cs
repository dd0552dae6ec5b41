using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Tests.Comparison;

/// <summary>Every force figure in two forms, on engagement and working, and how it lasts; on an arch with a canine
/// 1 mm high. The real engagement, except where a test says so.</summary>
[Trait("basis", "law")]
public sealed class WorkingFiguresTests
{
    private const int Canine = 4;

    private static readonly ArchSetup Arch = ArchBuilder.Build(new ArchRequest
    {
        Jaw = Jaw.Upper,
        Slot = SlotSize.In022,
        WireId = "niti-014",
        Positions = ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty.Add(
            ToothNumber.FromIso(13), ClinicalOffset.FromDegrees(occlusal: -1)),
    });

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    /// <summary>By another way: the same wire engaged afresh in the slots that have come a fifth of their way. An
    /// elastic wire knows no history. Each engagement lays its nodes by where the wire touched on its way, and is good
    /// to 0.3 % of the largest force (docs/theory/rod.md): hence twice that.</summary>
    [Fact, Trait("basis", "independent")]
    public void An_elastic_wire_at_work_pushes_as_one_engaged_in_the_relieved_slots()
    {
        CatalogueWire wire = Wire("ss-012");
        Arrangement relieved = Arch.Arrangement with
        {
            Wire = wire.Wire,
            Slots = [.. Arch.Slots.Select((slot, i) => i != Canine ? slot : slot with
            {
                Actual = ClinicalAxes.Bench.Displaced(slot.Rest, Less(slot, 1 - Engager.Relief)),
            })],
        };

        ComparedWire compared = Assert.Single(AtWork(wire));
        EngagementResult afresh = new Engager(relieved).Engage(Token);

        Assert.NotNull(compared.Working);
        double expected = afresh.Slots.Max(slot => slot.OnTooth.Force.Length);
        Assert.Equal(expected, compared.Working.LargestForce, 6e-3 * expected);
        Assert.InRange(compared.Working.LargestForce, 0.6 * compared.LargestForce, 0.95 * compared.LargestForce);
    }

    /// <summary>Nearly straight for an elastic wire; a wire that transforms falls to its lower line at once, and then
    /// holds its force better than in proportion.</summary>
    [Fact]
    public void The_force_of_every_wire_fades_as_the_teeth_come_in()
    {
        IReadOnlyList<ComparedWire> lasting = WireComparison.WithLasting(
            AtWork(Wire("ss-012"), Wire("niti-012"), Wire("niti-016")), Arch.Arrangement, Arch.Axes,
            cancellation: Token);

        Assert.All(lasting, wire =>
        {
            Assert.Equal([1, 0.8, 0.75, 0.5, 0.25], wire.Lasting.Select(one => one.OffsetLeft));
            Assert.Equal(wire.LargestForce, wire.Lasting[0].LargestForce, 1e-6);
            Assert.Equal(wire.Working!.LargestForce, wire.Lasting[1].LargestForce, 1e-3 * wire.LargestForce);
            for (int i = 1; i < wire.Lasting.Length; i++)
                Assert.True(wire.Lasting[i].Force < wire.Lasting[i - 1].Force, $"{wire.Wire.Id} at {i}");
        });
    }

    [Fact]
    public void A_wire_that_transforms_works_with_less_than_in_proportion_to_its_offset()
    {
        ComparedWire wire = Assert.Single(AtWork(Wire("niti-018")));

        Assert.True(wire.IsWholeLaw);
        Assert.False(wire.IsUpperBound);
        Assert.True(wire.TransformedShare > 0.02, $"only {wire.TransformedShare:0.00} is transformed");
        Assert.True(wire.Working!.LargestForce < (1 - Engager.Relief) * wire.LargestForce,
            $"{wire.Working.LargestForce} of {wire.LargestForce} N");
        Assert.Equal(0, wire.Set!.Value, 1e-3);
    }

    [Fact]
    public void A_wire_that_yields_is_engaged_with_its_whole_law_and_its_set_is_told()
    {
        CatalogueWire wire = Wire("bti-018");

        ComparedWire elastic = Assert.Single(WireComparison.Run(
            Arch.Arrangement, Arch.Axes, [wire], ForceCeilings.None, cancellation: Token));
        ComparedWire whole = Assert.Single(AtWork(wire));

        Assert.Equal(WireVerdict.BendsForGood, whole.Verdict);
        Assert.True(elastic.IsUpperBound);
        Assert.Null(elastic.Set);
        Assert.False(whole.IsUpperBound);
        Assert.True(whole.Set > 0.05, $"set {whole.Set} mm");
        Assert.True(whole.LargestForce < elastic.LargestForce);
        Assert.Contains($"it stays bent by {whole.Set:0.00} mm", whole.Sentence, StringComparison.Ordinal);
    }

    /// <summary>Answers made by hand: the forces of the day put both above, those of the weeks only one.</summary>
    [Fact]
    public void Of_two_wires_above_a_ceiling_the_one_that_comes_below_it_at_work_leads()
    {
        var working = new WorkingFigures(
            Arch.Arrangement, new WireJudge(Arch.Arrangement, Arch.Axes, ForceCeilings.Default),
            (arrangement, _, _) => new MadeUp(
                arrangement, atWork: arrangement.Wire == Wire("ss-016").Wire ? 2.5 : 0.01));

        IReadOnlyList<ComparedWire> ranked = WireRanking.InOrder(
            [working.Of(Wire("ss-016"), near: null, Token), working.Of(Wire("ss-012"), near: null, Token)]);

        Assert.Equal(["ss-012", "ss-016"], ranked.Select(wire => wire.Wire.Id));
        Assert.All(ranked, wire => Assert.Equal(WireVerdict.AboveCeiling, wire.Verdict));
        Assert.EndsWith("; when working none is.", ranked[0].Sentence, StringComparison.Ordinal);
        Assert.EndsWith("; when working one still is.", ranked[1].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_working_state_is_not_found_nothing_is_told_of_it()
    {
        var working = new WorkingFigures(
            Arch.Arrangement, new WireJudge(Arch.Arrangement, Arch.Axes, ForceCeilings.Default),
            (arrangement, _, _) => new MadeUp(arrangement, atWork: double.NaN));

        ComparedWire wire = working.Of(Wire("ss-016"), near: null, Token);

        Assert.Null(wire.Working);
        Assert.True(wire.Engaged);
        Assert.DoesNotContain("when working", wire.Sentence, StringComparison.Ordinal);
    }

    private static IReadOnlyList<ComparedWire> AtWork(params CatalogueWire[] wires) => WireComparison.AtWork(
        Arch.Arrangement, Arch.Axes, wires, ForceCeilings.None, cancellation: Token);

    private static ClinicalOffset Less(Slot slot, double left)
    {
        ClinicalOffset whole = ClinicalAxes.Bench.Between(slot.Rest, slot.Actual);
        return new ClinicalOffset(
            left * whole.Labial, left * whole.Occlusal, left * whole.Mesial, left * whole.Rotation, left * whole.Tip,
            left * whole.Torque);
    }

    private static CatalogueWire Wire(string id)
    {
        Assert.True(WireCatalogue.Default.TryFind(id, out CatalogueWire? wire));
        return wire;
    }

    // 3 N on the canine on engagement.
    private sealed class MadeUp(Arrangement arrangement, double atWork) : IEngagedWire
    {
        public EngagementResult Result => Pushing(3);

        public void Dispose()
        {
        }

        public EngagementResult RelievedBy(double share, CancellationToken cancellation) =>
            Pushing(atWork) with { Converged = !double.IsNaN(atWork) };

        private EngagementResult Pushing(double force) => new()
        {
            Converged = true,
            Residual = 0,
            Slots = [.. arrangement.Slots.Select((slot, i) => new SlotLoad(
                slot.Label, new Wrench((i == Canine ? force : 0) * slot.Actual.Outward, default, slot.Actual.Centre),
                ContactState.BothEdges, 0, 0))],
            LargestStrain = 1e-3,
            StoredEnergy = 0,
            CentreLine = ImmutableArray<Vector3>.Empty,
            Iterations = 1,
        };
    }
}
