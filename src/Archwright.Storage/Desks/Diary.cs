using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>A visit as the list of a day shows it: without what is noted at it.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Revision">Changes with every save.</param>
/// <param name="Day">The day.</param>
/// <param name="Starts">The time, local.</param>
/// <param name="Minutes">How long it is planned.</param>
/// <param name="Kind">Why.</param>
/// <param name="State">Where it stands.</param>
public sealed record DayVisit(
    Guid Id, Guid Revision, DateOnly Day, TimeOnly Starts, int Minutes, VisitKind Kind, VisitState State);

/// <summary>An arch with an appliance as the list of a day shows it.</summary>
/// <param name="Jaw">Which arch.</param>
/// <param name="Found">The wire found at this visit; null while none is noted.</param>
/// <param name="Left">Id of the wire that the last signed visit left in place; empty when none did.</param>
public sealed record DayArch(Jaw Jaw, WireFound? Found, string Left);

/// <summary>One line of a day.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="Patient">Who comes.</param>
/// <param name="Arches">Arches that carry an appliance, upper first.</param>
public sealed record DayEntry(DayVisit Visit, Patient Patient, IReadOnlyList<DayArch> Arches);

/// <summary>What the course of a patient up to a visit is judged by.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="Patient">Who comes.</param>
/// <param name="Treatments">Arches that carry an appliance, upper first.</param>
/// <param name="LastSigned">The last signed visit before it; null when there is none.</param>
public sealed record VisitCourse(
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

    /// <summary>Who comes on a day, in the order of time. What is noted at a visit is not read: a list of hundreds is
    /// there at once.</summary>
    public async Task<IReadOnlyList<DayEntry>> DayAsync(DateOnly day, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        List<Row> rows = await Rows(db, day).ToListAsync(cancellation);
        Guid[] who = [.. rows.Select(one => one.PatientId).Distinct()];
        Dictionary<Guid, Patient> patients = await db.Patients.AsNoTracking()
            .Where(one => who.Contains(one.Id)).ToDictionaryAsync(one => one.Id, cancellation);
        ILookup<Guid, Jaw> arches = (await db.Treatments.AsNoTracking()
            .Where(one => who.Contains(one.PatientId) && one.EndedOn == null)
            .Select(one => new { one.PatientId, one.Jaw }).ToListAsync(cancellation))
            .ToLookup(one => one.PatientId, one => one.Jaw);
        return
        [
            .. rows.Select(row => new DayEntry(
                row.Visit, patients[row.PatientId], [.. arches[row.PatientId].Order().Select(row.Arch)])),
        ];
    }

    /// <summary>What the course of a patient up to a visit is judged by.</summary>
    /// <returns>Null when there is no such visit.</returns>
    public async Task<VisitCourse?> CourseAsync(Guid visitId, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        Visit? visit = await db.Visits.AsNoTracking().FirstOrDefaultAsync(one => one.Id == visitId, cancellation);
        if (visit is null)
            return null;

        return new VisitCourse(
            visit,
            await db.Patients.AsNoTracking().SingleAsync(one => one.Id == visit.PatientId, cancellation),
            [
                .. (await db.Treatments.AsNoTracking()
                    .Where(one => one.PatientId == visit.PatientId && one.EndedOn == null).ToListAsync(cancellation))
                    .OrderBy(one => one.Jaw),
            ],
            await SignedBefore(db, visit.PatientId, visit.Day).FirstOrDefaultAsync(cancellation));
    }

    // The last wires come by one step back in the index on patient and day, for each patient. A window over each
    // patient's visits, or a filter on their last days, reads many times as many.
    private static IQueryable<Row> Rows(PracticeContext db, DateOnly day) =>
        db.Visits.AsNoTracking().Where(one => one.Day == day).OrderBy(one => one.Starts).Select(one => new Row(
            new DayVisit(one.Id, one.Revision, one.Day, one.Starts, one.Minutes, one.Kind, one.State),
            one.PatientId,
            EF.Property<string>(one, WireColumns.Found),
            db.Visits
                .Where(last => last.PatientId == one.PatientId && last.Day < day && last.State == VisitState.Signed)
                .OrderByDescending(last => last.Day).ThenByDescending(last => last.Starts)
                .Select(last => EF.Property<string>(last, WireColumns.Left)).FirstOrDefault()));

    private static IQueryable<Visit> SignedBefore(PracticeContext db, Guid patient, DateOnly day) =>
        db.Visits.AsNoTracking()
            .Where(one => one.PatientId == patient && one.Day < day && one.State == VisitState.Signed)
            .OrderByDescending(one => one.Day).ThenByDescending(one => one.Starts);

    private sealed record Row(DayVisit Visit, Guid PatientId, string Found, string? Left)
    {
        public DayArch Arch(Jaw jaw) => new(
            jaw, WireColumns.FoundOf(Found, jaw), Left is null ? "" : WireColumns.LeftOf(Left, jaw));
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
