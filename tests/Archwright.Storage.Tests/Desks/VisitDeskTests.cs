using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.Rules;
using Archwright.Practice.Tests;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Desks;

/// <summary>Noting, signing and amending on both databases. Rests on the rules of the practice, and on two real
/// servers.</summary>
[Trait("basis", "law")]
public sealed class VisitDeskTests(PostgresServer server)
{
    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task Signing_takes_a_piece_books_the_next_visit_and_leaves_its_lines(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid patient, Visit visit, Guid lot) = await made.ReadyToSignAsync();

        (Visit signed, Visit next) = await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);

        await using PracticeContext db = made.Database.CreateDbContext();
        Visit kept = await db.Visits.SingleAsync(one => one.Id == visit.Id);
        Assert.Equal(VisitState.Signed, kept.State);
        Assert.Equal(signed.Signed, kept.Signed);
        Assert.Equal(visit.Content, kept.Content);
        Assert.Equal(2, (await db.Lots.SingleAsync(one => one.Id == lot)).OnHand);
        Assert.Equal(-1, (await db.Movements.SingleAsync(one => one.VisitId == visit.Id)).Change);
        Assert.Equal(Samples.Today.AddDays(42), (await db.Visits.SingleAsync(one => one.Id == next.Id)).Day);
        Assert.Contains(
            await made.Files.TrailAsync(patient), line => line is { Act: AuditAct.Signed, StaffName: "Dr Iva Lund" });
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_signature_that_fails_leaves_nothing_behind(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Visit visit, Guid lot) = await made.ReadyToSignAsync(pieces: 0);

        await Assert.ThrowsAsync<RuleBrokenException>(
            () => made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist));

        await using PracticeContext db = made.Database.CreateDbContext();
        Assert.Equal(VisitState.Begun, (await db.Visits.SingleAsync()).State);
        Assert.Equal(0, (await db.Lots.SingleAsync(one => one.Id == lot)).OnHand);
        Assert.Empty(await db.Movements.ToListAsync());
        Assert.Empty(await db.Trail.ToListAsync());
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Edits_of_two_people_at_different_places_are_both_kept(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Visit visit, _) = await made.ReadyToSignAsync();
        VisitContent before = visit.Content;

        await made.Desk.NoteAsync(
            Edit(visit, before, before with { Hygiene = Hygiene.Fair }), Samples.Assistant);
        VisitSaved second = await made.Desk.NoteAsync(
            Edit(visit, before, before with { Note = "Elastics given." }), Samples.Orthodontist);

        Assert.Equal("Jo Marsh", second.OtherName);
        Assert.Empty(second.Conflicts);
        await using PracticeContext db = made.Database.CreateDbContext();
        Assert.Equal(
            before with { Hygiene = Hygiene.Fair, Note = "Elastics given." },
            (await db.Visits.SingleAsync()).Content);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Edits_at_one_place_save_nothing_until_the_second_has_chosen(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Visit visit, _) = await made.ReadyToSignAsync();
        VisitContent before = visit.Content;
        await made.Desk.NoteAsync(Edit(visit, before, before with { Note = "First." }), Samples.Assistant);

        VisitSaved second = await made.Desk.NoteAsync(
            Edit(visit, before, before with { Note = "Second." }), Samples.Orthodontist);

        Assert.Equal("note", Assert.Single(second.Conflicts).Where);
        Assert.Equal("First.", second.Visit.Content.Note);
        VisitSaved chosen = await made.Desk.NoteAsync(
            Edit(second.Visit, second.Visit.Content, second.Content), Samples.Orthodontist);
        Assert.Empty(chosen.Conflicts);
        Assert.Equal("Second.", chosen.Visit.Content.Note);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Ten_writers_at_once_lose_nothing(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Visit visit, _) = await made.ReadyToSignAsync();
        ToothNumber[] teeth = [.. Samples.UpperTeeth.Take(6)];

        await Task.WhenAll(teeth.Select(tooth => made.Desk.NoteAsync(
            Edit(visit, visit.Content, visit.Content with
            {
                Breakages = visit.Content.Breakages.With(new Breakage(tooth, "tie lost", true)),
            }),
            Samples.Assistant)));

        await using PracticeContext db = made.Database.CreateDbContext();
        Assert.Equal(
            teeth.Select(tooth => tooth.Iso).Order(),
            (await db.Visits.SingleAsync()).Content.Breakages.Select(one => one.Tooth.Iso).Order());
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Who_signs_what_somebody_has_changed_meanwhile_is_told(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Visit visit, _) = await made.ReadyToSignAsync();
        await made.Desk.NoteAsync(
            Edit(visit, visit.Content, visit.Content with { Note = "More." }), Samples.Assistant);

        DbUpdateConcurrencyException told = await Assert.ThrowsAsync<DbUpdateConcurrencyException>(
            () => made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist));

        Assert.Contains("Jo Marsh", told.Message, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task The_last_piece_is_given_to_one_of_two(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Visit visit, Guid lot) = await made.ReadyToSignAsync(pieces: 1);
        Visit other = Samples.Visit(visit.PatientId, visit.Content);
        await using (PracticeContext db = made.Database.CreateDbContext())
        {
            db.Add(other);
            await db.SaveChangesAsync();
        }

        bool[] signed = await Task.WhenAll(Tries(made, visit), Tries(made, other));

        Assert.Single(signed, one => one);
        await using PracticeContext after = made.Database.CreateDbContext();
        Assert.Equal(0, (await after.Lots.SingleAsync(one => one.Id == lot)).OnHand);
        Assert.Single(await after.Movements.ToListAsync());
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Two_amendments_at_once_both_stand(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Visit visit, _) = await made.ReadyToSignAsync();
        await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);

        await Task.WhenAll(
            made.Desk.AmendAsync(visit.Id, "Elastics given.", "Forgotten.", Samples.Assistant),
            made.Desk.AmendAsync(visit.Id, "Lot read wrongly.", "Seen on the label.", Samples.Orthodontist));

        await using PracticeContext db = made.Database.CreateDbContext();
        Visit kept = await db.Visits.SingleAsync(one => one.Id == visit.Id);
        Assert.Equal(2, kept.Amendments.Count);
        Assert.Equal(visit.Content, kept.Content);
    }

    private static VisitEdit Edit(Visit visit, VisitContent before, VisitContent mine) =>
        new(visit.Id, visit.Revision, before, mine);

    private static async Task<bool> Tries(TestDatabase made, Visit visit)
    {
        try
        {
            await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
            return true;
        }
        catch (Exception told) when (told is DbUpdateConcurrencyException or RuleBrokenException)
        {
            return false;
        }
    }
}
