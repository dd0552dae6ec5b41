using Archwright.Practice.Audit;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>One line of a day.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="Patient">Who comes.</param>
/// <param name="Treatments">Arches that carry an appliance.</param>
/// <param name="LastSigned">The last signed visit before it; null when there is none.</param>
public sealed record DayEntry(
    Visit Visit, Patient Patient, IReadOnlyList<ArchTreatment> Treatments, Visit? LastSigned);

/// <summary>The diary.</summary>
/// <param name="contexts">Makes a context for each look.</param>
/// <param name="clock">The time of audit lines.</param>
public sealed class Diary(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    /// <summary>Puts a visit into the diary.</summary>
    public async Task BookAsync(Visit visit, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        db.Visits.Add(visit);
        db.Trail.Add(AuditLine.Of(
            by, clock.GetUtcNow(), AuditAct.Added, visit.PatientId, $"visit of {visit.Day:yyyy-MM-dd}"));
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>Who comes on a day, in the order of time.</summary>
    public async Task<IReadOnlyList<DayEntry>> DayAsync(DateOnly day, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        IQueryable<Visit> ofDay = db.Visits.AsNoTracking().Where(one => one.Day == day);
        IQueryable<Guid> who = ofDay.Select(one => one.PatientId);
        List<Visit> visits = await ofDay.OrderBy(one => one.Starts).ToListAsync(cancellation);
        Dictionary<Guid, Patient> patients = await db.Patients.AsNoTracking()
            .Where(one => who.Contains(one.Id)).ToDictionaryAsync(one => one.Id, cancellation);
        ILookup<Guid, ArchTreatment> treatments = (await db.Treatments.AsNoTracking()
            .Where(one => who.Contains(one.PatientId) && one.EndedOn == null).ToListAsync(cancellation))
            .ToLookup(one => one.PatientId);
        Dictionary<Guid, Visit> last = await LastBeforeAsync(db, who, day, cancellation);

        return
        [
            .. visits.Select(visit => new DayEntry(
                visit,
                patients[visit.PatientId],
                [.. treatments[visit.PatientId].OrderBy(one => one.Jaw)],
                last.GetValueOrDefault(visit.PatientId))),
        ];
    }

    // Which they are comes from the index on patient and day, one step back for each patient; only those rows are read.
    // A window over each patient's visits, or a filter on their last days, reads many times as many.
    private static async Task<Dictionary<Guid, Visit>> LastBeforeAsync(
        PracticeContext db, IQueryable<Guid> patients, DateOnly day, CancellationToken cancellation)
    {
        IQueryable<Guid?> last = db.Patients.Where(one => patients.Contains(one.Id)).Select(one => db.Visits
            .Where(visit => visit.PatientId == one.Id && visit.Day < day && visit.State == VisitState.Signed)
            .OrderByDescending(visit => visit.Day).ThenByDescending(visit => visit.Starts)
            .Select(visit => (Guid?)visit.Id).FirstOrDefault());
        return await db.Visits.AsNoTracking().Where(one => last.Contains(one.Id))
            .ToDictionaryAsync(one => one.PatientId, cancellation);
    }

    /// <summary>The next day from a day on, or that day itself, on which somebody comes; null when nobody
    /// does.</summary>
    public async Task<DateOnly?> NextBusyDayAsync(DateOnly from, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Visits.AsNoTracking().Where(one => one.Day >= from)
            .OrderBy(one => one.Day).Select(one => (DateOnly?)one.Day).FirstOrDefaultAsync(cancellation);
    }
}
