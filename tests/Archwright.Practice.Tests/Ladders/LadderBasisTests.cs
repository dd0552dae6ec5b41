using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Courses;
using Archwright.Practice.Ladders;
using Archwright.Practice.People;
using Archwright.Practice.Stock;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Tests.Ladders;

/// <summary>What a ladder rests on. Rests on what was noted: the last positions, the wire that visit left, and every
/// change by itself.</summary>
[Trait("basis", "law")]
public sealed class LadderBasisTests
{
    private static readonly Patient Mira = Samples.Patient();
    private static readonly ArchTreatment Arch = Samples.Upper(Mira.Id);

    [Fact]
    public void On_bonding_day_it_rests_on_the_positions_of_that_day_and_on_no_wire()
    {
        LadderBasis basis = Of();

        Assert.Equal((Arch.BegunOn, "", false), (basis.On, basis.Inputs.PresentWire, basis.WireStays));
        Assert.Equal(Arch.StartedFrom, basis.Inputs.Positions);
        Assert.Equal(["niti-014"], basis.Inputs.Stock);
    }

    [Fact]
    public void After_a_decision_the_wire_decided_stays_and_before_it_the_wire_found_is_in_place()
    {
        LadderBasis kept = Of(Samples.Visit(Mira.Id));
        LadderBasis fitted = Of(Samples.Visit(Mira.Id, Samples.With(arch => arch with
        {
            Decided = new Decision(WireAct.Fit, "niti-018", Guid.CreateVersion7(), ""),
        })));
        LadderBasis open = Of(Samples.Visit(Mira.Id, Samples.With(arch => arch with { Decided = null })));
        LadderBasis left = Of(Samples.Visit(Mira.Id, Samples.With(arch => arch with
        {
            Decided = new Decision(WireAct.LeaveOut, "", null, ""),
        })));

        Assert.Equal(("niti-014", 6, true), Wire(kept));
        Assert.Equal(("niti-018", 0, true), Wire(fitted));
        Assert.Equal(("niti-014", 6, false), Wire(open));
        Assert.Equal(("", 0, false), Wire(left));
        Assert.All([kept, fitted, open, left], one => Assert.Equal(Samples.Today, one.On));
    }

    [Fact]
    public void A_visit_that_is_only_booked_and_one_of_an_earlier_appliance_say_nothing()
    {
        Visit booked = Visit.Book(Mira.Id, Samples.Today.AddDays(42), new TimeOnly(9, 0), 20, VisitKind.Adjustment);
        Visit old = Visit.Book(Mira.Id, Arch.BegunOn.AddDays(-1), new TimeOnly(9, 0), 20, VisitKind.Adjustment);
        old.Note(Samples.Complete, Samples.Assistant);

        Assert.Empty(Of().ChangesTo(Of(booked, old)));
    }

    [Fact]
    public void A_wire_that_has_run_out_is_one_that_the_practice_keeps_and_a_recalled_or_a_lower_one_is_not()
    {
        StockLot gone = Samples.Lot("niti-016", pieces: 0);
        StockLot recalled = Samples.Lot("niti-018");
        recalled.Recall("Letter of the maker.", Samples.Today);
        StockLot lower = Samples.Lot("niti-012", Jaw.Lower);
        StockLot either = Samples.Lot("ss-016", null);

        Assert.Equal(
            ["niti-016", "ss-016"],
            LadderBasis.Of(Mira, Arch, [], [gone, recalled, lower, either], Samples.Today).Inputs.Stock);
    }

    public static TheoryData<LadderChange> Changes => [.. Enum.GetValues<LadderChange>()];

    [Theory, MemberData(nameof(Changes))]
    public void Each_change_alone_makes_it_stale_and_none_leaves_it_as_it_is(LadderChange change)
    {
        KeptLadder kept = KeptSamples.Ladder(Of(Samples.Visit(Mira.Id)));
        LadderBasis now = change switch
        {
            LadderChange.Positions => With(kept, inputs => inputs with
            {
                Positions = inputs.Positions.With(ToothNumber.FromIso(12), new ToothOffset(LabialMm: 0.3)),
            }),
            LadderChange.Wire => With(kept, inputs => inputs with { PresentWire = "niti-018" }),
            LadderChange.Appliance => With(kept, inputs => inputs with { WorkingWire = "ss-016x022" }),
            LadderChange.Ties => With(kept, inputs => inputs with { Ends = Archwright.Mechanics.Rods.WireEnds.Free }),
            LadderChange.Patient => With(kept, inputs => inputs with
            {
                Alerts = Listing<AlertKind>.Of([AlertKind.Nickel]),
            }),
            LadderChange.Stock => With(kept, inputs => inputs with { Stock = Listing<string>.Of(["bti-016"]) }),
            _ => kept.Basis,
        };

        Assert.Equal(
            [change],
            kept.WhatChanged(
                now,
                change == LadderChange.Policy ? "another" : kept.PolicyVersion,
                change == LadderChange.Program ? "another" : kept.ProgramVersion));
        Assert.Empty(kept.WhatChanged(Of(Samples.Visit(Mira.Id)), kept.PolicyVersion, kept.ProgramVersion));
    }

    [Fact]
    public void Each_part_of_what_it_rests_on_counts()
    {
        LadderBasis then = Of(Samples.Visit(Mira.Id));
        foreach ((LadderChange change, LadderBasis now) in new[]
                 {
                     (LadderChange.Wire, then with { WireStays = !then.WireStays }),
                     (LadderChange.Appliance, then with { Inputs = then.Inputs with { SlotCode = "018" } }),
                     (LadderChange.Appliance, then with
                     {
                         Inputs = then.Inputs with { Bonded = then.Inputs.Bonded.Without(ToothNumber.FromIso(17)) },
                     }),
                     (LadderChange.Appliance, then with
                     {
                         Inputs = then.Inputs with
                         {
                             Bare = then.Inputs.Bare.With(ToothNumber.FromIso(18), BareTooth.NotBonded),
                         },
                     }),
                     (LadderChange.Ties, then with
                     {
                         Inputs = then.Inputs with
                         {
                             Ties = then.Inputs.Ties.With(ToothNumber.FromIso(13), TieKind.None),
                         },
                     }),
                     (LadderChange.Patient, then with { Inputs = then.Inputs with { AgeYears = 40 } }),
                     (LadderChange.Patient, then with { Inputs = then.Inputs with { Discomfort = 9 } }),
                 })
        {
            Assert.Equal([change], then.ChangesTo(now));
        }
    }

    [Fact]
    public void A_bracket_that_came_off_is_left_out_until_it_is_noted_again()
    {
        var off = ToothNumber.FromIso(12);
        LadderBasis basis = Of(Samples.Visit(Mira.Id, Samples.With(arch => arch with
        {
            Bare = ToothMap<BareTooth>.Empty.With(off, BareTooth.Absent),
        })));

        Assert.DoesNotContain(off, basis.Inputs.Bonded);
        Assert.Equal(BareTooth.Absent, basis.Inputs.Bare.Of(off, default));
        Assert.Contains(LadderChange.Appliance, Of(Samples.Visit(Mira.Id)).ChangesTo(basis));
    }

    [Fact]
    public void The_same_teeth_seen_on_another_day_are_a_change()
    {
        LadderBasis basis = Of(Samples.Visit(Mira.Id));

        Assert.Equal([LadderChange.Positions], basis.ChangesTo(basis with { On = basis.On.AddDays(1) }));
    }

    [Fact]
    public void An_alert_that_became_known_after_the_positions_counts()
    {
        Patient patient = Samples.Patient();
        ArchTreatment arch = Samples.Upper(patient.Id);
        LadderBasis before = LadderBasis.Of(patient, arch, [], [], Samples.Today);
        patient.Raise(AlertKind.Nickel, "Rash from a watch strap.", Samples.Today);

        Assert.Equal(
            [LadderChange.Patient],
            before.ChangesTo(LadderBasis.Of(patient, arch, [], [], Samples.Today)));
    }

    private static LadderBasis Of(params Visit[] visits) =>
        LadderBasis.Of(Mira, Arch, visits, [Samples.Lot()], Samples.Today);

    private static (string, int, bool) Wire(LadderBasis basis) =>
        (basis.Inputs.PresentWire, basis.Inputs.PresentWeeks, basis.WireStays);

    private static LadderBasis With(KeptLadder kept, Func<AdviceInputs, AdviceInputs> change) =>
        kept.Basis with { Inputs = change(kept.Basis.Inputs) };
}
