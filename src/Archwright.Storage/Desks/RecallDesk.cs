using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.People;
using Archwright.Practice.Stock;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>Somebody who got a piece of a lot.</summary>
/// <param name="PatientId">Who.</param>
/// <param name="FullName">Given and family names.</param>
/// <param name="VisitId">At which visit.</param>
/// <param name="Day">When.</param>
/// <param name="Jaw">On which arch.</param>
/// <param name="MayStillBeIn">True unless a later signed visit fitted another piece, or took the wire out.</param>
public sealed record PieceFitted(
    Guid PatientId, string FullName, Guid VisitId, DateOnly Day, Jaw Jaw, bool MayStillBeIn);

/// <summary>Recalls: takes a lot off the shelf for good and finds who got a piece of it. Both leave audit lines, the
/// finding one for each patient.</summary>
/// <param name="contexts">Makes a context for each act.</param>
/// <param name="clock">The time.</param>
public sealed class RecallDesk(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    /// <summary>Notes that a lot is recalled: no piece of it is fitted from now on.</summary>
    /// <exception cref="Archwright.Practice.Rules.RuleBrokenException">No reason is given.</exception>
    public async Task RecallAsync(Guid lotId, string why, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        StockLot lot = await db.Lots.SingleAsync(one => one.Id == lotId, cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        lot.Recall(why, DateOnly.FromDateTime(now.UtcDateTime));
        db.Trail.Add(AuditLine.Of(by, now, AuditAct.Changed, null, $"lot {lot.Lot} of {lot.WireId}, recalled"));
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>Who got a piece of a lot, the latest first.</summary>
    public async Task<IReadOnlyList<PieceFitted>> WhoAsync(
        Guid lotId, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        StockLot lot = await db.Lots.AsNoTracking().SingleAsync(one => one.Id == lotId, cancellation);
        Guid[] taken = [.. await db.Movements.AsNoTracking()
            .Where(one => one.LotId == lotId && one.VisitId != null).Select(one => one.VisitId!.Value)
            .Distinct().ToListAsync(cancellation)];
        Guid[] ids = [.. await db.Visits.AsNoTracking().Where(one => taken.Contains(one.Id))
            .Select(one => one.PatientId).Distinct().ToListAsync(cancellation)];
        ILookup<Guid, Visit> visits = (await db.Visits.AsNoTracking()
            .Where(one => ids.Contains(one.PatientId) && one.State == VisitState.Signed).ToListAsync(cancellation))
            .ToLookup(one => one.PatientId);
        List<Patient> patients = await db.Patients.AsNoTracking().Where(one => ids.Contains(one.Id))
            .ToListAsync(cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        db.Trail.AddRange(patients.Select(one => AuditLine.Of(
            by, now, AuditAct.Read, one.Id, $"search for lot {lot.Lot} of {lot.WireId}")));
        await db.SaveChangesAsync(cancellation);
        return
        [
            .. patients.SelectMany(patient => Pieces(patient, lotId, [.. visits[patient.Id]]))
                .OrderByDescending(one => one.Day).ThenBy(one => one.FullName, StringComparer.Ordinal),
        ];
    }

    private static IEnumerable<PieceFitted> Pieces(Patient patient, Guid lot, Visit[] visits)
    {
        foreach (Jaw jaw in Enum.GetValues<Jaw>())
        {
            Visit[] changed =
            [
                .. visits.Where(one => one.Content.Arch(jaw)?.Decided is { Act: not WireAct.Keep })
                    .OrderBy(one => one.Day).ThenBy(one => one.Starts),
            ];
            for (int i = 0; i < changed.Length; i++)
            {
                if (changed[i].Content.Arch(jaw)?.Decided?.LotId == lot)
                {
                    yield return new PieceFitted(
                        patient.Id, patient.FullName, changed[i].Id, changed[i].Day, jaw,
                        MayStillBeIn: i == changed.Length - 1);
                }
            }
        }
    }
}
