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

/// <summary>Comparing wires, but for the last test with the engagement put in by hand: a made-up force on the upper
/// right canine that grows with the wire's stiffness. What is tested is the judging, ranking and wording, not the
/// mechanics.</summary>
[Trait("basis", "ours")]
public sealed class WireComparisonTests
{
    private static readonly ArchSetup Arch = ArchBuilder.Build(
        new ArchRequest { Jaw = Jaw.Upper, Slot = SlotSize.In018, WireId = "niti-014" });

    private static readonly int Canine = Arch.Teeth.IndexOf(ToothNumber.FromIso(13));

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    public void Every_wire_of_the_catalogue_is_judged_once_and_told_in_one_sentence()
    {
        var seen = new List<int>();
        IReadOnlyList<ComparedWire> wires = WireComparison.Run(
            Arch.Arrangement, Arch.Axes, WireCatalogue.Default.Wires, ForceCeilings.Default,
            new Counter(seen), Answering(Pushing(perStiffness: 1e-4)), Token);

        Assert.Equal(
            WireCatalogue.Default.Wires.Select(wire => wire.Id).Order(StringComparer.Ordinal),
            wires.Select(wire => wire.Wire.Id).Order(StringComparer.Ordinal));
        Assert.Equal(Enumerable.Range(1, wires.Count), seen.Order());
        Assert.All(wires, wire =>
        {
            Assert.EndsWith(".", wire.Sentence, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", wire.Sentence, StringComparison.Ordinal);
            Assert.DoesNotContain(". ", wire.Sentence, StringComparison.Ordinal);
            Assert.DoesNotContain("..", wire.Sentence, StringComparison.Ordinal);
            Assert.Equal(wire.Engaged, wire.WhyNot is null);
        });
    }

    [Fact]
    public void The_order_is_verdict_then_teeth_above_then_excess_then_stiffness()
    {
        IReadOnlyList<ComparedWire> wires = Run(Pushing(perStiffness: 3e-3), WireCatalogue.Default.Wires);

        Assert.Equal(wires.Select(wire => wire.Verdict).Order(), wires.Select(wire => wire.Verdict));
        Assert.Contains(wires, wire => wire.Verdict == WireVerdict.WithinLimits);
        Assert.Contains(wires, wire => wire.Verdict == WireVerdict.AboveCeiling);
        Assert.Contains(wires, wire => wire.Verdict == WireVerdict.NotEngaged);
        double[] stiffness = [.. wires.Where(w => w.Verdict == WireVerdict.WithinLimits).Select(Stiffness)];
        Assert.Equal(stiffness.OrderDescending(), stiffness);
        double[] share =
            [.. wires.Where(w => w.Verdict == WireVerdict.AboveCeiling).Select(w => w.LargestShareOfCeiling)];
        Assert.Equal(share.Order(), share);
    }

    [Fact]
    public void The_order_does_not_depend_on_threads_or_luck()
    {
        string[] once = [.. Run(Pushing(1e-3), WireCatalogue.Default.Wires).Select(wire => wire.Wire.Id)];
        for (int i = 0; i < 5; i++)
            Assert.Equal(once, Run(Pushing(1e-3), WireCatalogue.Default.Wires).Select(wire => wire.Wire.Id));
    }

    [Fact]
    public void Equal_wires_keep_the_order_they_were_given_in()
    {
        // Same section, same modulus: heat-activated and copper-containing wires compare alike here.
        CatalogueWire[] given = [Wire("cuniti27-016"), Wire("haniti-016"), Wire("niti-016")];

        Assert.Equal(given, Run(Pushing(1e-6), given).Select(wire => wire.Wire));
        Assert.Equal(given.Reverse(), Run(Pushing(1e-6), [.. given.Reverse()]).Select(wire => wire.Wire));
    }

    [Fact]
    public void Figures_come_from_the_loads_in_clinical_axes()
    {
        // 2 N labially and 1 N of intrusion on the canine, and a moment of 3 N·mm on its neighbour.
        ComparedWire wire = Assert.Single(Run(
            (arrangement, _) => Result(arrangement, strain: 0.001, (i, slot) => i switch
            {
                _ when i == Canine => new Wrench(
                    2 * slot.Actual.Outward - 1 * slot.Actual.Third, default, slot.Actual.Centre),
                _ when i == Canine + 1 => new Wrench(default, 3 * slot.Actual.Third, slot.Actual.Centre),
                _ => new Wrench(default, default, slot.Actual.Centre),
            }),
            [Wire("ss-016")]));

        Assert.Equal(Math.Sqrt(5), wire.LargestForce, 1e-12);
        Assert.Equal(Canine, wire.LargestForceSlot);
        Assert.Equal(3, wire.LargestMoment, 1e-12);
        Assert.Equal(Canine + 1, wire.LargestMomentSlot);
        Assert.Equal(
            [LoadKind.LabiolingualForce, LoadKind.IntrusionForce], wire.TeethAboveCeiling.Select(one => one.Kind));
        Assert.Equal(2, wire.TeethAboveCeiling[0].Figure, 1e-12);
        Assert.Equal(1 / wire.TeethAboveCeiling[1].Ceiling, wire.LargestShareOfCeiling, 1e-12);
        Assert.Equal(
            "Goes in, but one tooth is above a ceiling, most the upper right canine (13): intrusion 1.00 N, "
            + "ceiling 0.20 N.",
            wire.Sentence);
        Assert.Null(wire.Set);
        Assert.Equal(double.PositiveInfinity, wire.TorquePlay);
    }

    [Fact]
    public void A_wire_within_limits_names_its_largest_force()
    {
        ComparedWire wire = Assert.Single(Run(Constant(force: 0.5, strain: 0.001), [Wire("ss-016x022")]));

        Assert.Equal(WireVerdict.WithinLimits, wire.Verdict);
        Assert.Equal(
            "Goes in everywhere and loads no tooth above its ceiling; largest force 0.50 N on "
            + "the upper right canine (13).",
            wire.Sentence);
        Assert.Equal(6.6, Units.Angle.ToDegrees(wire.TorquePlay), 0.06);
    }

    [Fact]
    public void A_wire_that_bends_for_good_says_so_and_ranks_behind_one_above_a_ceiling()
    {
        CatalogueWire steel = Wire("ss-016");
        CatalogueWire beta = Wire("bti-016");
        IReadOnlyList<ComparedWire> wires = Run(Constant(force: 1.5, strain: 0.009), [steel, beta]);

        Assert.Equal([beta, steel], wires.Select(wire => wire.Wire));
        Assert.Equal([WireVerdict.AboveCeiling, WireVerdict.BendsForGood], wires.Select(wire => wire.Verdict));
        Assert.False(wires[0].BeyondElasticRange);
        Assert.True(wires[1].BeyondElasticRange);
        Assert.Contains(
            "would bend for good near the upper right canine (13): strain 0.90 %, elastic up to 0.75 %",
            wires[1].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wire_strained_beyond_its_plateau_is_engaged_with_its_whole_law_and_says_how_much_transforms()
    {
        var alloys = new List<Alloy>();
        Told Transforming(double share) => (arrangement, token) =>
        {
            alloys.Add(arrangement.Wire.Alloy);
            return Constant(force: 0.5, strain: 0.03)(arrangement, token) with { TransformedShare = share };
        };

        ComparedWire below = Assert.Single(Run(Transforming(0), [Wire("niti-016")]));
        ComparedWire beyond = Assert.Single(Run(Transforming(0.4), [Wire("niti-016")]));

        Assert.Equal(2, alloys.OfType<Superelastic>().Count());
        Assert.Contains("initial modulus, and the real force is lower", below.Sentence, StringComparison.Ordinal);
        Assert.Contains("up to 40 % of a section transforms", beyond.Sentence, StringComparison.Ordinal);
        Assert.Equal(WireVerdict.WithinLimits, beyond.Verdict);
        Assert.True(beyond.BeyondElasticRange);
    }

    [Fact]
    public void Where_the_whole_law_finds_no_answer_the_force_of_the_initial_modulus_stays_and_says_so()
    {
        Told engage = (arrangement, token) => arrangement.Wire.Alloy is Superelastic
            ? Constant(force: 0.5, strain: 0.03)(arrangement, token) with { Converged = false }
            : Constant(force: 0.7, strain: 0.03)(arrangement, token);

        ComparedWire wire = Assert.Single(Run(engage, [Wire("niti-016")]));

        Assert.True(wire.Engaged);
        Assert.Equal(0.7, wire.LargestForce, 1e-12);
        Assert.Contains("initial modulus, and the real force is lower", wire.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wire_too_thick_for_a_slot_is_not_tried()
    {
        ComparedWire wire = Assert.Single(Run(
            (_, _) => throw new InvalidOperationException("It must not be tried."), [Wire("ss-019x025")]));

        Assert.False(wire.Engaged);
        Assert.Equal(WireVerdict.NotEngaged, wire.Verdict);
        Assert.Equal(
            "the wire is 0.483 mm thick, the slot at the upper right second molar (17) only 0.457 mm high.",
            wire.WhyNot);
        Assert.Equal("Cannot go in: " + wire.WhyNot, wire.Sentence);
        Assert.Null(wire.Result);
        Assert.Equal(0, wire.TorquePlay);
        Assert.Equal(-1, wire.LargestForceSlot);
    }

    [Fact]
    public void A_wire_too_wide_for_a_shallow_slot_is_not_tried_unless_it_passes_by()
    {
        Arrangement shallow = Arch.Arrangement with
        {
            Slots = Arch.Slots.SetItem(Canine, Arch.Slots[Canine] with { Depth = 0.5 }),
        };
        Arrangement bypassed = shallow with
        {
            Slots = shallow.Slots.SetItem(Canine, shallow.Slots[Canine] with { Tie = Tie.None }),
        };

        ComparedWire one = Assert.Single(Run(Constant(0.1, 0.001), [Wire("ss-016x022")], shallow));
        ComparedWire other = Assert.Single(Run(Constant(0.1, 0.001), [Wire("ss-016x022")], bypassed));

        Assert.Equal(
            "the wire is 0.559 mm wide, the slot at the upper right canine (13) only 0.500 mm deep.", one.WhyNot);
        Assert.True(other.Engaged);
    }

    [Fact]
    public void A_wire_exactly_as_thick_as_the_slot_goes_in_without_play()
    {
        ComparedWire wire = Assert.Single(Run(Constant(0.1, 0.001), [Wire("ss-018x025")]));

        Assert.True(wire.Engaged);
        Assert.Equal(0, wire.TorquePlay, 1e-6);
    }

    [Fact]
    public void What_physics_forbids_is_told_in_the_words_of_the_obstacle()
    {
        EngagementResult Blocked(Arrangement arrangement, CancellationToken _) =>
            Result(arrangement, 0.001, (_, slot) => new Wrench(default, default, slot.Actual.Centre)) with
            {
                Obstacle = new Obstacle(Canine, 9, 4, "The tie at 13 would have to hold 9.0 N and opens at 4.0 N."),
            };

        EngagementResult Lost(Arrangement arrangement, CancellationToken _) =>
            Result(arrangement, 0.001, (_, slot) => new Wrench(default, default, slot.Actual.Centre)) with
            {
                Converged = false, Residual = 0.25,
            };

        ComparedWire blocked = Assert.Single(Run(Blocked, [Wire("ss-016")]));
        ComparedWire lost = Assert.Single(Run(Lost, [Wire("ss-016")]));

        Assert.Equal(
            "Cannot go in: the tie at 13 would have to hold 9.0 N and opens at 4.0 N.", blocked.Sentence);
        Assert.NotNull(blocked.Result);
        Assert.Contains("no equilibrium was found (out of balance by 0.25 N)", lost.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Bench_labels_have_no_ceiling_and_are_named_as_slots()
    {
        Arrangement bench = Arch.Arrangement with
        {
            Slots = [.. Arch.Slots.Select((slot, i) => slot with { Label = "s" + i })],
        };

        ComparedWire wire = Assert.Single(Run(Constant(50, 0.001), [Wire("ss-016")], bench));

        Assert.Equal(WireVerdict.WithinLimits, wire.Verdict);
        Assert.Contains("50.00 N on slot s" + Canine, wire.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_candidates_wire_replaces_the_one_of_the_arch()
    {
        var tried = new System.Collections.Concurrent.ConcurrentBag<Mechanics.Rods.Wire>();
        Run(
            (arrangement, _) =>
            {
                tried.Add(arrangement.Wire);
                return Result(arrangement, 0, (_, slot) => new Wrench(default, default, slot.Actual.Centre));
            },
            [Wire("ss-016"), Wire("niti-012")]);

        Assert.Contains(Wire("ss-016").Wire, tried);
        Assert.Contains(Wire("niti-012").Wire, tried);
        Assert.All(tried, wire => Assert.Contains(
            wire.Section, new[] { Wire("ss-016").Section, Wire("niti-012").Section }));
    }

    [Fact]
    public void A_failure_comes_out_as_it_is_and_giving_up_is_heeded()
    {
        Assert.Throws<ArgumentException>(() => WireComparison.Run(
            Arch.Arrangement, [], [Wire("ss-016")], ForceCeilings.Default, cancellation: Token));
        Assert.Throws<InvalidOperationException>(
            () => Run((_, _) => throw new InvalidOperationException("broken"), WireCatalogue.Default.Wires));
        using var given = new CancellationTokenSource();
        given.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => WireComparison.Run(
            Arch.Arrangement, Arch.Axes, WireCatalogue.Default.Wires, ForceCeilings.Default, null,
            Answering(Constant(0.1, 0)), given.Token));
        Assert.Empty(Run(Constant(0.1, 0), []));
    }

    /// <summary>The real engagement on an arch in its planned places, where every wire is passive.</summary>
    [Fact, Trait("basis", "law")]
    public void On_a_planned_arch_every_wire_goes_in_without_load_and_the_stiffest_leads()
    {
        ArchSetup planned = ArchBuilder.Build(
            new ArchRequest { Jaw = Jaw.Lower, Slot = SlotSize.In022, WireId = "niti-014" });

        IReadOnlyList<ComparedWire> wires = WireComparison.Run(
            planned.Arrangement, planned.Axes, [Wire("niti-014"), Wire("ss-0215x028"), Wire("ss-019x025")],
            ForceCeilings.Default, cancellation: Token);

        Assert.Equal(["ss-0215x028", "ss-019x025", "niti-014"], wires.Select(wire => wire.Wire.Id));
        Assert.All(wires, wire =>
        {
            Assert.Equal(WireVerdict.WithinLimits, wire.Verdict);
            Assert.Equal(0, wire.LargestForce, 1e-4);
            Assert.Equal(0, wire.LargestMoment, 1e-4);
        });
    }

    private static IReadOnlyList<ComparedWire> Run(
        Told engage, IReadOnlyList<CatalogueWire> wires, Arrangement? arch = null) =>
        WireComparison.Run(
            arch ?? Arch.Arrangement, Arch.Axes, wires, ForceCeilings.Default, null, Answering(engage), Token);

    private static Engage Answering(Told told) =>
        (arrangement, _, token) => new Answered(told(arrangement, token));

    private static CatalogueWire Wire(string id)
    {
        Assert.True(WireCatalogue.Default.TryFind(id, out CatalogueWire? wire));
        return wire;
    }

    private static double Stiffness(ComparedWire wire) => wire.Wire.Wire.Alloy.Young * Math.Sqrt(
        wire.Wire.Section.BendingOverThickness * wire.Wire.Section.BendingOverWidth);

    private static Told Pushing(double perStiffness) => (arrangement, _) =>
    {
        double stiffness = arrangement.Wire.Alloy.Young * arrangement.Wire.Section.BendingOverThickness;
        return Result(arrangement, 0.001, Labially(perStiffness * stiffness));
    };

    private static Told Constant(double force, double strain) =>
        (arrangement, _) => Result(arrangement, strain, Labially(force));

    private static Func<int, Slot, Wrench> Labially(double force) => (i, slot) => new Wrench(
        (i == Canine ? force : 0) * slot.Actual.Outward, default, slot.Actual.Centre);

    private static EngagementResult Result(
        Arrangement arrangement, double strain, Func<int, Slot, Wrench> load) => new()
    {
        Converged = true,
        Residual = 0,
        Slots = [.. arrangement.Slots.Select((slot, i) =>
            new SlotLoad(slot.Label, load(i, slot), ContactState.BothEdges, 0, 0))],
        LargestStrain = strain,
        LargestStrainNear = Canine,
        StoredEnergy = 0,
        CentreLine = ImmutableArray<Vector3>.Empty,
        Iterations = 1,
    };

    private delegate EngagementResult Told(Arrangement arrangement, CancellationToken cancellation);

    private sealed class Answered(EngagementResult result) : IEngagedWire
    {
        public EngagementResult Result => result;

        public EngagementResult RelievedBy(double share, CancellationToken cancellation) => result;

        public void Dispose()
        {
        }
    }

    private sealed class Counter(List<int> seen) : IProgress<int>
    {
        public void Report(int value)
        {
            lock (seen)
                seen.Add(value);
        }
    }
}
