using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.Courses;
using Archwright.Practice.Ladders;
using Archwright.Practice.People;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

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

    /// <summary>All ladders of arches that carry an appliance, by treatment.</summary>
    public async Task<IReadOnlyDictionary<Guid, KeptLadder>> AllAsync(CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Ladders.AsNoTracking()
            .Where(one => db.Treatments.Any(of => of.Id == one.TreatmentId && of.EndedOn == null))
            .ToDictionaryAsync(one => one.TreatmentId, one => one.Ladder, cancellation);
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
