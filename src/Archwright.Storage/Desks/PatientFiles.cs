using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>Everything about one patient.</summary>
/// <param name="Patient">Who.</param>
/// <param name="Treatments">Arches with an appliance, newest first.</param>
/// <param name="Visits">All visits, oldest first.</param>
public sealed record PatientFile(
    Patient Patient, IReadOnlyList<ArchTreatment> Treatments, IReadOnlyList<Visit> Visits);

/// <summary>Somebody found by name.</summary>
/// <param name="Id">Identity.</param>
/// <param name="FullName">Given and family names.</param>
/// <param name="BornOn">Birth date, so that two of one name can be told apart.</param>
public sealed record PatientFound(Guid Id, string FullName, DateOnly BornOn);

/// <summary>Where patients are found, opened and kept. Opening and changing leave an audit line.</summary>
/// <param name="contexts">Makes a context for each act.</param>
/// <param name="clock">The time of audit lines.</param>
public sealed class PatientFiles(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    /// <summary>Most results of a search; who finds more types more.</summary>
    public const int MostFound = 20;

    /// <summary>Opens a patient's file.</summary>
    /// <returns>Null when there is no such patient.</returns>
    public async Task<PatientFile?> OpenAsync(Guid id, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        Patient? patient = await db.Patients.AsNoTracking().FirstOrDefaultAsync(one => one.Id == id, cancellation);
        if (patient is null)
            return null;

        List<ArchTreatment> treatments = await db.Treatments.AsNoTracking()
            .Where(one => one.PatientId == id).OrderByDescending(one => one.BegunOn).ToListAsync(cancellation);
        List<Visit> visits = await db.Visits.AsNoTracking()
            .Where(one => one.PatientId == id).OrderBy(one => one.Day).ThenBy(one => one.Starts)
            .ToListAsync(cancellation);
        db.Trail.Add(AuditLine.Of(by, clock.GetUtcNow(), AuditAct.Read, id, "file"));
        await db.SaveChangesAsync(cancellation);
        return new PatientFile(patient, treatments, visits);
    }

    /// <summary>Opens the file of the patient whose visit it is.</summary>
    /// <returns>Null when there is no such visit.</returns>
    public async Task<PatientFile?> OfVisitAsync(Guid visit, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        Guid patient = await db.Visits.AsNoTracking().Where(one => one.Id == visit)
            .Select(one => one.PatientId).FirstOrDefaultAsync(cancellation);
        return patient == Guid.Empty ? null : await OpenAsync(patient, by, cancellation);
    }

    /// <summary>A photograph of a visit by the name of its file.</summary>
    /// <returns>Null when the visit names no such file.</returns>
    public async Task<Photo?> PhotoAsync(
        Guid visit, string file, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        Visit? found = await db.Visits.AsNoTracking().FirstOrDefaultAsync(one => one.Id == visit, cancellation);
        Photo? photo = found?.Content.Photos.FirstOrDefault(one => one.File == file);
        if (found is null || photo is null)
            return null;

        db.Trail.Add(AuditLine.Of(
            by, clock.GetUtcNow(), AuditAct.Read, found.PatientId, $"photograph, {photo.View}"));
        await db.SaveChangesAsync(cancellation);
        return photo;
    }

    /// <summary>Finds patients whose names hold every word typed.</summary>
    public async Task<IReadOnlyList<PatientFound>> SearchAsync(string text, CancellationToken cancellation = default)
    {
        string[] words = Patient.SearchText(text).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0)
            return [];

        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        IQueryable<Patient> found = words.Aggregate(
            db.Patients.AsNoTracking(), (query, word) => query.Where(one => one.SearchName.Contains(word)));
        return await found.OrderBy(one => one.SearchName).Take(MostFound)
            .Select(one => new PatientFound(one.Id, one.GivenNames + " " + one.FamilyName, one.BornOn))
            .ToListAsync(cancellation);
    }

    /// <summary>Adds a patient.</summary>
    public async Task AddAsync(Patient patient, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        db.Patients.Add(patient);
        db.Trail.Add(AuditLine.Of(by, clock.GetUtcNow(), AuditAct.Added, patient.Id, "patient"));
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>Changes a patient.</summary>
    /// <param name="id">Who.</param>
    /// <param name="change">What is done.</param>
    /// <param name="subject">What it is about, for the trail: "alert".</param>
    /// <param name="by">Who does it.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="DbUpdateConcurrencyException">Somebody else changed the patient at the same moment.
    /// </exception>
    public async Task<Patient> ChangeAsync(
        Guid id, Action<Patient> change, string subject, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        Patient patient = await db.Patients.SingleAsync(one => one.Id == id, cancellation);
        change(patient);
        db.Trail.Add(AuditLine.Of(by, clock.GetUtcNow(), AuditAct.Changed, id, subject));
        await db.SaveChangesAsync(cancellation);
        return patient;
    }

    /// <summary>Puts an appliance on an arch.</summary>
    /// <exception cref="Archwright.Practice.Rules.RuleBrokenException">The arch carries one already.</exception>
    public async Task BeginAsync(ArchTreatment treatment, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        ArchTreatment.CheckFree(
            treatment.Jaw,
            await db.Treatments.AsNoTracking().Where(one => one.PatientId == treatment.PatientId)
                .ToListAsync(cancellation));
        db.Treatments.Add(treatment);
        db.Trail.Add(AuditLine.Of(
            by, clock.GetUtcNow(), AuditAct.Added, treatment.PatientId, $"{treatment.Jaw.Word()} appliance"));
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>Changes the treatment of an arch.</summary>
    /// <param name="id">Which.</param>
    /// <param name="change">What is done.</param>
    /// <param name="by">Who does it.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="DbUpdateConcurrencyException">Somebody else changed it at the same moment.</exception>
    public async Task ChangeTreatmentAsync(
        Guid id, Action<ArchTreatment> change, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        ArchTreatment treatment = await db.Treatments.SingleAsync(one => one.Id == id, cancellation);
        change(treatment);
        db.Trail.Add(AuditLine.Of(
            by, clock.GetUtcNow(), AuditAct.Changed, treatment.PatientId, $"{treatment.Jaw.Word()} appliance"));
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>The trail of a patient, newest first.</summary>
    public async Task<IReadOnlyList<AuditLine>> TrailAsync(
        Guid id, int most = 100, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Trail.AsNoTracking().Where(line => line.PatientId == id)
            .OrderByDescending(line => line.At).ThenByDescending(line => line.Id).Take(most).ToListAsync(cancellation);
    }
}
