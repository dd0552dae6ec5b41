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
        List<Visit> visits = await db.Visits.AsNoTracking().Where(one => one.Day == day)
            .OrderBy(one => one.Starts).ToListAsync(cancellation);
        Guid[] ids = [.. visits.Select(one => one.PatientId).Distinct()];
        Dictionary<Guid, Patient> patients = await db.Patients.AsNoTracking()
            .Where(one => ids.Contains(one.Id)).ToDictionaryAsync(one => one.Id, cancellation);
        ILookup<Guid, ArchTreatment> treatments = (await db.Treatments.AsNoTracking()
            .Where(one => ids.Contains(one.PatientId) && one.EndedOn == null).ToListAsync(cancellation))
            .ToLookup(one => one.PatientId);
        List<(Guid Patient, DateOnly Day)> lastDays = (await db.Visits.AsNoTracking()
            .Where(one => ids.Contains(one.PatientId) && one.Day < day && one.State == VisitState.Signed)
            .GroupBy(one => one.PatientId)
            .Select(group => new { group.Key, Day = group.Max(one => one.Day) })
            .ToListAsync(cancellation)).ConvertAll(one => (one.Key, one.Day));
        DateOnly[] days = [.. lastDays.Select(one => one.Day).Distinct()];
        ILookup<Guid, Visit> last = (await db.Visits.AsNoTracking()
            .Where(one => ids.Contains(one.PatientId) && days.Contains(one.Day) && one.State == VisitState.Signed)
            .ToListAsync(cancellation)).ToLookup(one => one.PatientId);

        return
        [
            .. visits.Select(visit => new DayEntry(
                visit,
                patients[visit.PatientId],
                [.. treatments[visit.PatientId].OrderBy(one => one.Jaw)],
                last[visit.PatientId].OrderBy(one => one.Day).ThenBy(one => one.Starts).LastOrDefault())),
        ];
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
