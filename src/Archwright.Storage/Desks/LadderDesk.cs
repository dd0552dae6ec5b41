using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.Courses;
using Archwright.Practice.Ladders;
using Archwright.Practice.People;
using Archwright.Practice.Stock;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>An arch that carries an appliance, and its ladder.</summary>
/// <param name="Treatment">The arch.</param>
/// <param name="Patient">Whose.</param>
/// <param name="Ladder">The ladder; null where none was computed.</param>
/// <param name="Changes">What has changed since it was.</param>
/// <param name="Next">Day of the next visit in the diary; null where none is booked.</param>
/// <param name="ComesOff">Whether the appliance comes off then.</param>
public sealed record ArchLadder(
    ArchTreatment Treatment, Patient Patient, KeptLadder? Ladder, Listing<LadderChange> Changes, DateOnly? Next,
    bool ComesOff)
{
    /// <summary>Whether a ladder is to be computed.</summary>
    public bool IsDue => !ComesOff && (Ladder is null || Changes.Count > 0);
}

/// <summary>Where the ladders of arches are kept, and what they would rest on now.</summary>
/// <param name="contexts">Makes a context for each act.</param>
/// <param name="clock">The time.</param>
public sealed class LadderDesk(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    /// <summary>The ladders of a patient's arches, by treatment.</summary>
    public async Task<IReadOnlyDictionary<Guid, KeptLadder>> OfAsync(
        Guid patientId, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Ladders.AsNoTracking().Where(one => one.PatientId == patientId)
            .ToDictionaryAsync(one => one.TreatmentId, one => one.Ladder, cancellation);
    }

    /// <summary>All arches that carry an appliance, each with its ladder, what has changed since, and the next visit;
    /// those who come next first.</summary>
    /// <param name="policyVersion">The policy now.</param>
    /// <param name="programVersion">The program now.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<IReadOnlyList<ArchLadder>> OpenAsync(
        string policyVersion, string programVersion, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        var today = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        List<ArchTreatment> arches = await db.Treatments.AsNoTracking().Where(one => one.EndedOn == null)
            .ToListAsync(cancellation);
        Dictionary<Guid, KeptLadder> kept = await db.Ladders.AsNoTracking()
            .ToDictionaryAsync(one => one.TreatmentId, one => one.Ladder, cancellation);
        Dictionary<Guid, Patient> patients = await db.Patients.AsNoTracking()
            .Where(one => db.Treatments.Any(of => of.PatientId == one.Id && of.EndedOn == null))
            .ToDictionaryAsync(one => one.Id, cancellation);
        IQueryable<Visit> visits = db.Visits.AsNoTracking()
            .Where(one => db.Treatments.Any(of => of.PatientId == one.PatientId && of.EndedOn == null));
        ILookup<Guid, Visit> noted = (await visits.Where(one => one.State != VisitState.Booked)
            .ToListAsync(cancellation)).ToLookup(one => one.PatientId);
        ILookup<Guid, (DateOnly Day, VisitKind Kind)> diary = (await visits
            .Where(one => one.State != VisitState.Signed && one.Day >= today)
            .Select(one => new { one.PatientId, one.Day, one.Kind }).ToListAsync(cancellation))
            .ToLookup(one => one.PatientId, one => (one.Day, one.Kind));
        List<StockLot> lots = await db.Lots.AsNoTracking().ToListAsync(cancellation);
        return
        [
            .. from arch in arches
               let patient = patients[arch.PatientId]
               let ladder = kept.GetValueOrDefault(arch.Id)
               let next = diary[patient.Id].OrderBy(one => one.Day).Cast<(DateOnly Day, VisitKind Kind)?>()
                   .FirstOrDefault()
               orderby next?.Day ?? DateOnly.MaxValue, patient.FullName, arch.Jaw
               select new ArchLadder(
                   arch, patient, ladder,
                   ladder?.WhatChanged(
                       LadderBasis.Of(patient, arch, noted[patient.Id], lots, today), policyVersion, programVersion)
                   ?? Listing<LadderChange>.Empty,
                   next?.Day, next?.Kind == VisitKind.Debonding),
        ];
    }

    /// <summary>What the ladder of an arch would rest on now.</summary>
    /// <returns>Null when there is no such arch, or the appliance is off.</returns>
    public async Task<LadderBasis?> BasisAsync(Guid treatmentId, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        if (await OpenAsync(db, treatmentId, cancellation) is not { } treatment)
            return null;

        Patient patient = await db.Patients.AsNoTracking()
            .SingleAsync(one => one.Id == treatment.PatientId, cancellation);
        List<Visit> visits = await db.Visits.AsNoTracking()
            .Where(one => one.PatientId == patient.Id && one.State != VisitState.Booked).ToListAsync(cancellation);
        return LadderBasis.Of(
            patient, treatment, visits, await db.Lots.AsNoTracking().ToListAsync(cancellation),
            DateOnly.FromDateTime(clock.GetLocalNow().DateTime));
    }

    /// <summary>Keeps what was found in place of what was there.</summary>
    /// <returns>False when the arch carries no appliance any more: then nothing is kept.</returns>
    public async Task<bool> KeepAsync(
        Guid treatmentId, KeptLadder ladder, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        if (await OpenAsync(db, treatmentId, cancellation) is not { } treatment)
            return false;

        if (await db.Ladders.FirstOrDefaultAsync(one => one.TreatmentId == treatmentId, cancellation) is { } row)
        {
            row.Ladder = ladder;
        }
        else
        {
            db.Ladders.Add(new LadderRow
            {
                TreatmentId = treatmentId, PatientId = treatment.PatientId, Ladder = ladder,
            });
        }

        db.Trail.Add(AuditLine.Of(
            by, clock.GetUtcNow(), AuditAct.Changed, treatment.PatientId, $"{treatment.Jaw.Word()} ladder, computed"));
        await db.SaveChangesAsync(cancellation);
        return true;
    }

    private static Task<ArchTreatment?> OpenAsync(
        PracticeContext db, Guid treatmentId, CancellationToken cancellation) =>
        db.Treatments.AsNoTracking().FirstOrDefaultAsync(
            one => one.Id == treatmentId && one.EndedOn == null, cancellation);
}
