using Archwright.Practice.Audit;
using Archwright.Practice.Courses;
using Archwright.Practice.Keeping;
using Archwright.Practice.People;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Archwright.Storage.Desks;

/// <summary>Deletion by the practice's own rule: lists whom it no longer keeps, and deletes one record when an
/// orthodontist confirms it. What stays is who confirmed it, when, under which rule, and the trail, which names no
/// patient but by an identity that leads nowhere any more.</summary>
/// <param name="contexts">Makes a context for each act.</param>
/// <param name="photographs">Where photographs lie.</param>
/// <param name="clock">The time.</param>
public sealed class RetentionDesk(
    IDbContextFactory<PracticeContext> contexts, PhotoShelf photographs, TimeProvider clock)
{
    /// <summary>Whom the rule no longer keeps, the longest ago first.</summary>
    public async Task<IReadOnlyList<DueForDeletion>> DueAsync(
        Retention retention, CancellationToken cancellation = default)
    {
        if (retention.Years is null)
            return [];

        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        DateOnly today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
        ILookup<Guid, Visit> visits = (await db.Visits.AsNoTracking().ToListAsync(cancellation))
            .ToLookup(one => one.PatientId);
        ILookup<Guid, ArchTreatment> treatments = (await db.Treatments.AsNoTracking().ToListAsync(cancellation))
            .ToLookup(one => one.PatientId);
        return
        [
            .. from patient in await db.Patients.AsNoTracking().ToListAsync(cancellation)
               let last = LastDay(patient, visits[patient.Id], treatments[patient.Id])
               where retention.IsOver(patient.BornOn, last, today)
               orderby last
               select new DueForDeletion(
                   patient.Id, patient.FullName, patient.BornOn, last, visits[patient.Id].Count(),
                   visits[patient.Id].Sum(one => one.Content.Photos.Count),
                   treatments[patient.Id].Any(one => one.EndedOn is null)),
        ];
    }

    /// <summary>What was deleted, the newest first.</summary>
    public async Task<IReadOnlyList<Disposal>> DoneAsync(CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Disposals.AsNoTracking().OrderByDescending(one => one.At).ToListAsync(cancellation);
    }

    /// <summary>Deletes one record, whole or not at all.</summary>
    /// <exception cref="Archwright.Practice.Rules.RuleBrokenException">Not an orthodontist, or the rule still keeps
    /// it.</exception>
    public async Task DeleteAsync(
        Guid patientId, Retention retention, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        await using IDbContextTransaction whole = await db.Database.BeginTransactionAsync(cancellation);
        Patient patient = await db.Patients.SingleAsync(one => one.Id == patientId, cancellation);
        List<Visit> visits = await db.Visits.Where(one => one.PatientId == patientId).ToListAsync(cancellation);
        List<ArchTreatment> treatments =
            await db.Treatments.Where(one => one.PatientId == patientId).ToListAsync(cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        db.Disposals.Add(Disposal.Confirm(patient, LastDay(patient, visits, treatments), retention, by, now));
        db.Trail.Add(AuditLine.Of(
            by, now, AuditAct.Deleted, patientId,
            $"whole record by the rule: {retention.Words}; {visits.Count} visits"));
        await db.SaveChangesAsync(cancellation); // before the rows go: the database looks for it

        string[] photos = [.. visits.SelectMany(one => one.Content.Photos).Select(one => one.File).Distinct()];
        await db.Links.Where(one => one.PatientId == patientId).ExecuteDeleteAsync(cancellation);
        await db.Leaflets.Where(one => one.PatientId == patientId).ExecuteDeleteAsync(cancellation);
        await db.Discomfort.Where(one => one.PatientId == patientId).ExecuteDeleteAsync(cancellation);
        await db.Visits.Where(one => one.PatientId == patientId).ExecuteDeleteAsync(cancellation);
        await db.Treatments.Where(one => one.PatientId == patientId).ExecuteDeleteAsync(cancellation);
        await db.Patients.Where(one => one.Id == patientId).ExecuteDeleteAsync(cancellation);
        await whole.CommitAsync(cancellation);
        await DropAsync(photos, cancellation);
    }

    /// <summary>Day of the last entry: of the last visit, or of the last appliance put on or taken off, or on which
    /// the patient was noted.</summary>
    internal static DateOnly LastDay(
        Patient patient, IEnumerable<Visit> visits, IEnumerable<ArchTreatment> treatments) =>
        visits.Where(one => one.State != VisitState.Booked).Select(one => one.Day)
            .Concat(treatments.SelectMany(one => new[] { one.BegunOn, one.EndedOn ?? one.BegunOn }))
            .DefaultIfEmpty(NotedOn(patient.Id)).Max();

    // The first 48 bits of an identity are the milliseconds since 1970 (RFC 9562, section 5.7).
    private static DateOnly NotedOn(Guid id)
    {
        byte[] bytes = id.ToByteArray(bigEndian: true);
        long milliseconds = bytes.Take(6).Aggregate(0L, (sum, one) => (sum << 8) | one);
        return DateOnly.FromDateTime(DateTimeOffset.FromUnixTimeMilliseconds(milliseconds).UtcDateTime);
    }

    // A picture that two visits name, of one digest, stays while one of them does.
    private async Task DropAsync(string[] photos, CancellationToken cancellation)
    {
        if (photos.Length == 0)
            return;

        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        HashSet<string> named =
        [
            .. (await db.Visits.AsNoTracking().ToListAsync(cancellation))
                .SelectMany(one => one.Content.Photos).Select(one => one.File),
        ];
        foreach (string file in photos.Where(one => !named.Contains(one)))
            photographs.Drop(file);
    }
}
