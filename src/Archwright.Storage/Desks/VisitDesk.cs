using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Stock;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>A visit as somebody has it on the screen: what they started from, and what they have made of it.</summary>
/// <param name="VisitId">Which visit.</param>
/// <param name="Revision">Revision that was read.</param>
/// <param name="Before">Content that was read.</param>
/// <param name="Mine">Content now.</param>
public sealed record VisitEdit(Guid VisitId, Guid Revision, VisitContent Before, VisitContent Mine);

/// <summary>What came of saving an edit.</summary>
/// <param name="Visit">The visit as it is in the database now.</param>
/// <param name="Content">The content to go on with: saved when there is no conflict, otherwise the two edits together
/// with the second one's choice at each conflict, not saved yet.</param>
/// <param name="OtherName">Who saved meanwhile; empty when nobody did.</param>
/// <param name="Conflicts">Places where a choice is needed; empty when it is saved.</param>
public sealed record VisitSaved(
    Visit Visit, VisitContent Content, string OtherName, IReadOnlyList<MergeConflict> Conflicts);

/// <summary>Where visits are noted, signed and amended.</summary>
/// <param name="contexts">Makes a context for each act.</param>
/// <param name="clock">The time of signatures and audit lines.</param>
public sealed class VisitDesk(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    // Each round loses against one other writer; more than a few at one visit is not a practice.
    private const int MostRounds = 8;

    /// <summary>Saves an edit. Where somebody else has saved meanwhile, both are brought together; where both changed
    /// the same place, nothing is saved and the places are named.</summary>
    /// <exception cref="Archwright.Practice.Rules.RuleBrokenException">The visit has been signed, or something noted
    /// cannot be.</exception>
    public async Task<VisitSaved> NoteAsync(VisitEdit edit, Actor by, CancellationToken cancellation = default)
    {
        for (int round = 1; ; round++)
        {
            await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
            Visit visit = await db.Visits.SingleAsync(one => one.Id == edit.VisitId, cancellation);
            bool alone = visit.Revision == edit.Revision;
            Merged merged = alone
                ? new Merged(edit.Mine, [])
                : VisitMerge.Merge(edit.Before, edit.Mine, visit.Content);
            if (merged.Conflicts.Count > 0)
                return new VisitSaved(visit, merged.Content, visit.NotedBy, merged.Conflicts);

            string other = alone ? "" : visit.NotedBy;
            visit.Note(merged.Content, by);
            db.Trail.Add(Line(by, AuditAct.Changed, visit));
            try
            {
                await db.SaveChangesAsync(cancellation);
                return new VisitSaved(visit, merged.Content, other, []);
            }
            catch (DbUpdateConcurrencyException) when (round < MostRounds)
            {
                // Somebody saved between our reading and our writing: read again and bring together.
            }
        }
    }

    /// <summary>Signs a visit as noted: signature, pieces from stock, next visit in the diary and audit lines are
    /// saved together or not at all.</summary>
    /// <param name="visitId">Which.</param>
    /// <param name="revision">Revision that the signer has read.</param>
    /// <param name="by">Who; an orthodontist.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The signed visit and the next one.</returns>
    /// <exception cref="Archwright.Practice.Rules.RuleBrokenException">Something hinders; the message says
    /// what.</exception>
    /// <exception cref="DbUpdateConcurrencyException">Somebody has changed the visit, or taken from the same lot,
    /// since it was read.</exception>
    public async Task<(Visit Signed, Visit Next)> SignAsync(
        Guid visitId, Guid revision, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        Visit visit = await db.Visits.SingleAsync(one => one.Id == visitId, cancellation);
        if (visit.Revision != revision)
        {
            throw new DbUpdateConcurrencyException(
                $"{visit.NotedBy} has changed this visit. Read it again, then sign.");
        }

        Patient patient = await db.Patients.SingleAsync(one => one.Id == visit.PatientId, cancellation);
        List<ArchTreatment> treatments =
            await db.Treatments.Where(one => one.PatientId == patient.Id).ToListAsync(cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        visit.Sign(by, now, patient, treatments);
        foreach (Jaw jaw in Enum.GetValues<Jaw>())
            await TakeAsync(db, visit, jaw, by, now, cancellation);

        Visit next = NextOf(visit);
        db.Visits.Add(next);
        db.Trail.Add(Line(by, AuditAct.Signed, visit));
        db.Trail.Add(Line(by, AuditAct.Added, next));
        await db.SaveChangesAsync(cancellation);
        return (visit, next);
    }

    /// <summary>Adds an entry to a signed visit.</summary>
    /// <exception cref="Archwright.Practice.Rules.RuleBrokenException">Not signed yet, or no text or reason.
    /// </exception>
    public async Task<Visit> AmendAsync(
        Guid visitId, string text, string why, Actor by, CancellationToken cancellation = default)
    {
        for (int round = 1; ; round++)
        {
            await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
            Visit visit = await db.Visits.SingleAsync(one => one.Id == visitId, cancellation);
            visit.Amend(by, clock.GetUtcNow(), text, why);
            db.Trail.Add(Line(by, AuditAct.Amended, visit));
            try
            {
                await db.SaveChangesAsync(cancellation);
                return visit;
            }
            catch (DbUpdateConcurrencyException) when (round < MostRounds)
            {
                // Somebody amended at the same time: both entries stand, one after the other.
            }
        }
    }

    private static async Task TakeAsync(
        PracticeContext db, Visit visit, Jaw jaw, Actor by, DateTimeOffset now, CancellationToken cancellation)
    {
        if (visit.Content.Arch(jaw)?.Decided is not { Act: WireAct.Fit, LotId: { } lotId } decided)
            return;

        StockLot lot = await db.Lots.SingleAsync(one => one.Id == lotId, cancellation);
        lot.Take(decided.WireId, jaw, visit.Day);
        db.Movements.Add(new StockMovement
        {
            LotId = lotId, At = now, StaffName = by.Name, Change = -1, VisitId = visit.Id,
        });
    }

    private static Visit NextOf(Visit visit)
    {
        int weeks = visit.Content.NextInWeeks ?? 0; // signing has seen to it that there is one
        return Visit.Book(
            visit.PatientId, visit.Day.AddDays(7 * weeks), visit.Starts, UsualMinutes, VisitKind.Adjustment);
    }

    // Common practice, no source: an adjustment takes 15 to 30 minutes.
    private const int UsualMinutes = 20;

    private AuditLine Line(Actor by, AuditAct act, Visit visit) =>
        AuditLine.Of(by, clock.GetUtcNow(), act, visit.PatientId, $"visit of {visit.Day:yyyy-MM-dd}");
}
