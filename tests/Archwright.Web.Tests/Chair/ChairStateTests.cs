using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Rods;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Stock;
using Archwright.Practice.Tests;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Web.Chair;
using Archwright.Web.Drawing;

namespace Archwright.Web.Tests.Chair;

/// <summary>What the chair's screen does with taps. Rests on the rules of the practice and on the axes of the clinic.
/// </summary>
[Trait("basis", "law")]
public sealed class ChairStateTests
{
    private static readonly ToothNumber Canine = ToothNumber.FromIso(13);

    [Fact]
    public void Positions_of_an_earlier_day_are_shown_as_such_and_are_not_taken_for_today()
    {
        ChairState state = Open();

        Assert.False(state.IsSeenToday);
        Assert.Equal(Samples.HighCanine, state.Drawn!.Positions);
        Assert.Contains(state.Missing, one => one.Rule == PracticeRules.ADecisionRestsOnPositionsOfItsDay);

        state.See(PositionsFrom.AsLastSeen, state.LastSeen!.Positions);

        Assert.True(state.IsSeenToday);
        Assert.Equal(Samples.Today, state.Arch.Seen!.On);
    }

    [Fact]
    public void Moving_a_tooth_takes_an_advice_away_that_rests_on_other_positions()
    {
        ChairState state = Open();
        state.See(PositionsFrom.Measured, Samples.HighCanine);
        state.Advise(Jaw.Upper, Samples.Advice());
        Assert.NotNull(state.Arch.Advised);

        state.Move(Canine, new ToothOffset(OcclusalMm: -2));

        Assert.Null(state.Arch.Advised);
    }

    [Fact]
    public void An_advice_that_comes_after_a_tooth_was_moved_on_is_not_taken()
    {
        ChairState state = Open();
        state.See(PositionsFrom.Measured, Samples.HighCanine);
        state.Move(Canine, new ToothOffset(OcclusalMm: -2));

        state.Advise(Jaw.Upper, Samples.Advice());

        Assert.Null(state.Arch.Advised);
    }

    [Fact]
    public void An_advice_chooses_nothing_and_leaves_a_choice_as_it_is()
    {
        ChairState state = Open();
        state.See(PositionsFrom.Measured, Samples.HighCanine);
        state.Advise(Jaw.Upper, Samples.Advice());
        Assert.Null(state.Arch.Decided);

        state.Keep();
        Decision chosen = state.Arch.Decided!;
        state.Advise(Jaw.Upper, Samples.Advice("bti-016"));

        Assert.Equal(chosen, state.Arch.Decided);
    }

    [Theory]
    [InlineData(ArchView.Occlusal)]
    [InlineData(ArchView.Frontal)]
    public void A_drag_moves_the_tooth_the_way_the_finger_goes(ArchView view)
    {
        ChairState state = Open();
        state.Drag(new ToothDrag(Canine, Begins: true, X: 0, Y: -1), view);

        ToothOffset after = state.Arch.Seen!.Positions.Of(Canine, ToothOffset.Zero);

        // Up on the occlusal view of the upper arch is forward, which for a canine is labial and mesial; up on the
        // frontal view is away from the bite.
        if (view == ArchView.Occlusal)
            Assert.True(after is { LabialMm: > 0.2, MesialMm: > 0.2, OcclusalMm: -1 }, after.ToString());
        else
            Assert.Equal(-2, after.OcclusalMm, 6);
    }

    [Fact]
    public void A_finger_to_the_right_moves_a_right_tooth_mesially_and_a_left_tooth_distally()
    {
        foreach ((int iso, int sign) in new[] { (12, +1), (22, -1) })
        {
            ChairState state = Open();
            ToothNumber tooth = ToothNumber.FromIso(iso);

            state.Drag(new ToothDrag(tooth, Begins: true, X: 1, Y: 0), ArchView.Frontal);

            Assert.Equal(sign, state.Arch.Seen!.Positions.Of(tooth, ToothOffset.Zero).MesialMm, 1);
        }
    }

    [Fact]
    public void A_drag_of_many_moves_is_taken_back_at_once()
    {
        ChairState state = Open();
        VisitContent before = state.Content;

        for (int i = 1; i <= 5; i++)
            state.Drag(new ToothDrag(Canine, Begins: i == 1, X: 0, Y: -0.2 * i), ArchView.Frontal);
        state.Undo();

        Assert.Equal(before, state.Content);
    }

    [Fact]
    public void Fitting_takes_the_lot_that_expires_first_and_offers_no_expired_one()
    {
        StockLot late = Samples.Lot(expires: Samples.Today.AddDays(400));
        StockLot soon = Samples.Lot(expires: Samples.Today.AddDays(20));
        StockLot gone = Samples.Lot(expires: Samples.Today.AddDays(-1));
        ChairState state = Open(late, soon, gone);

        state.Fit("niti-014");

        Assert.Equal(soon.Id, state.Arch.Decided!.LotId);
        Assert.Equal(6, state.PiecesOf("niti-014"));
    }

    [Fact]
    public void A_signed_visit_takes_no_edit()
    {
        Patient patient = Samples.Patient();
        ArchTreatment arch = Samples.Upper(patient.Id);
        Visit visit = Samples.Visit(patient.Id);
        visit.Sign(Samples.Orthodontist, Samples.Now, patient, [arch]);
        var state = new ChairState(new PatientFile(patient, [arch], [visit]), visit, []);

        state.EditArch(one => one with { RightEnd = WireEnds.Free });
        state.Advise(Jaw.Upper, null);

        Assert.Equal(Samples.Complete, state.Content);
        Assert.False(state.IsDirty);
    }

    [Fact]
    public void Every_alert_of_the_day_goes_into_the_question()
    {
        Patient patient = Samples.Patient();
        patient.Raise(AlertKind.Nickel, "Rash.", Samples.Today);
        patient.Raise(AlertKind.RootShortening, "Film.", Samples.Today);
        ChairState state = Open(patient);

        Assert.Equal([AlertKind.Nickel, AlertKind.RootShortening], state.Inputs!.Alerts);
    }

    [Fact]
    public void Contacts_that_crowns_cannot_have_are_refused_with_a_reason()
    {
        ChairState state = Open();

        Assert.Equal("", state.TakeContacts([1, 0.5, 0, 0.5, 1]));
        Assert.Equal(PositionsFrom.Contacts, state.Arch.Seen!.From);
        Assert.NotEmpty(state.TakeContacts([1, 0.5, 0, 0.5, 99]));
    }

    [Fact]
    public void A_tooth_without_a_bracket_is_left_out_of_what_is_computed_and_loses_its_tie()
    {
        ChairState state = Open();
        state.See(PositionsFrom.Measured, Samples.HighCanine);
        state.Advise(Jaw.Upper, Samples.Advice());
        Assert.NotNull(state.Arch.Advised);

        state.Note(Canine, BareTooth.NotBonded);

        Assert.Null(state.Arch.Advised);
        Assert.DoesNotContain(Canine, state.Inputs!.Bonded);
        Assert.Equal(BareTooth.NotBonded, state.Inputs.Bare.Of(Canine, default));
        Assert.False(state.Arch.Ties.Has(Canine));
        Assert.Equal(13, state.Bonded.Count);
    }

    [Fact]
    public void An_advice_that_still_counts_a_bracket_that_is_off_comes_too_late()
    {
        ChairState state = Open();
        state.See(PositionsFrom.Measured, Samples.HighCanine);
        state.Note(Canine, BareTooth.Absent);

        state.Advise(Jaw.Upper, Samples.Advice());

        Assert.Null(state.Arch.Advised);
    }

    [Fact]
    public void What_is_noted_of_a_bracket_is_taken_back_whole_and_one_that_is_on_again_is_tied_as_usual()
    {
        ChairState state = Open();
        state.See(PositionsFrom.Measured, Samples.HighCanine);
        state.Advise(Jaw.Upper, Samples.Advice());
        VisitContent before = state.Content;

        state.Note(Canine, BareTooth.NotBonded);
        state.Undo();
        Assert.Equal(before, state.Content);

        state.Note(Canine, BareTooth.Absent);
        state.Note(Canine, null);
        Assert.Empty(state.Bare);
        Assert.Equal(state.Treatment!.Appliance.UsualTie, state.Arch.Ties.Of(Canine, default));
    }

    [Fact]
    public void An_absent_tooth_does_not_follow_the_finger_and_one_without_a_bracket_does()
    {
        foreach ((BareTooth bare, bool moves) in new[] { (BareTooth.Absent, false), (BareTooth.NotBonded, true) })
        {
            ChairState state = Open();
            state.Note(Canine, bare);

            state.Drag(new ToothDrag(Canine, Begins: true, X: 0, Y: -1), ArchView.Frontal);

            Assert.Equal(moves, state.Arch.Seen is not null);
        }
    }

    [Fact]
    public void A_bracket_that_was_off_last_time_is_off_until_somebody_says_otherwise()
    {
        Patient patient = Samples.Patient();
        ArchTreatment arch = Samples.Upper(patient.Id);
        Visit last = Samples.Visit(patient.Id, Samples.With(one => one with
        {
            Advised = null, Bare = ToothMap<BareTooth>.Empty.With(Canine, BareTooth.NotBonded),
        }));
        last.Sign(Samples.Orthodontist, Samples.Now, patient, [arch]);
        Visit next = Visit.Book(
            patient.Id, Samples.Today.AddDays(42), new TimeOnly(9, 30), 20, VisitKind.Adjustment);
        var state = new ChairState(new PatientFile(patient, [arch], [last, next]), next, []);
        Assert.Equal(BareTooth.NotBonded, state.BareAt(Canine));
        var signed = new ChairState(new PatientFile(patient, [arch], [last, next]), last, []);
        Assert.Equal(BareTooth.NotBonded, signed.BareAt(Canine)); // what was signed shows it

        state.Note(Canine, null);
        next.Note(state.Content, Samples.Assistant);
        var again = new ChairState(new PatientFile(patient, [arch], [last, next]), next, []);

        Assert.Null(again.BareAt(Canine));
    }

    private static ChairState Open(params StockLot[] lots) => Open(Samples.Patient(), lots);

    private static ChairState Open(Patient patient, params StockLot[] lots)
    {
        ArchTreatment arch = Samples.Upper(patient.Id);
        Visit visit = Visit.Book(patient.Id, Samples.Today, new TimeOnly(9, 30), 20, VisitKind.Adjustment);
        return new ChairState(new PatientFile(patient, [arch], [visit]), visit, lots);
    }
}
