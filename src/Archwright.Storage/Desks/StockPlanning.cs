using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Stock;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>What is to be ordered, and lists of lots that come in.</summary>
/// <param name="contexts">Makes a context for each act.</param>
/// <param name="clock">The time.</param>
public sealed class StockPlanning(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    /// <summary>What the visits in the diary will need.</summary>
    /// <param name="weeks">How far ahead.</param>
    /// <param name="deliveryDays">From ordering to the shelf [days].</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<WireDemand> DemandAsync(
        int weeks, int deliveryDays, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        DateOnly today = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        DateOnly end = today.AddDays(7 * weeks);
        List<Visit> signed = await db.Visits.AsNoTracking().Where(one => one.State == VisitState.Signed)
            .ToListAsync(cancellation);
        List<(Guid Patient, DateOnly Day)> diary = (await db.Visits.AsNoTracking()
            .Where(one => one.State != VisitState.Signed && one.Day >= today && one.Day <= end)
            .Select(one => new { one.PatientId, one.Day }).ToListAsync(cancellation))
            .ConvertAll(one => (one.PatientId, one.Day));
        ILookup<Guid, ArchTreatment> open = (await db.Treatments.AsNoTracking().Where(one => one.EndedOn == null)
            .ToListAsync(cancellation)).ToLookup(one => one.PatientId);
        ILookup<Guid, Visit> past = signed.ToLookup(one => one.PatientId);
        ComingArch[] coming =
        [
            .. from visit in diary
               from treatment in open[visit.Patient]
               select new ComingArch(visit.Day, treatment.Jaw, WireIn(past[visit.Patient], treatment.Jaw)),
        ];
        return WireDemand.Of(
            coming, [.. signed.SelectMany(PastChange.Of)],
            await db.Lots.AsNoTracking().ToListAsync(cancellation), today, deliveryDays);
    }

    /// <summary>The lot that last came with an article's number, which tells the wire; null when none did.</summary>
    public async Task<StockLot?> ArticleAsync(string gtin, CancellationToken cancellation = default)
    {
        if (gtin.Length == 0)
            return null;

        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return (await db.Lots.AsNoTracking().Where(one => one.Gtin == gtin).ToListAsync(cancellation))
            .MaxBy(one => one.Id);
    }

    /// <summary>Takes in a list of lots: a lot that is here already gets the count of the list, the others come onto
    /// the shelf. All of it, or, where somebody takes from a lot at the same moment, none.</summary>
    /// <returns>How many lots are new, and how many were counted.</returns>
    /// <exception cref="DbUpdateConcurrencyException">Somebody took from a lot at the same moment.</exception>
    public async Task<(int New, int Counted)> TakeInAsync(
        IReadOnlyCollection<StockLot> lots, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        List<StockLot> here = await db.Lots.ToListAsync(cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        int added = 0;
        int counted = 0;
        foreach (StockLot lot in lots)
        {
            StockLot? known = here.Find(
                one => one.WireId == lot.WireId && one.Lot == lot.Lot && one.Jaw == lot.Jaw);
            int change = known?.Count(lot.OnHand) ?? lot.OnHand;
            if (known is null)
            {
                db.Lots.Add(lot);
                added++;
            }
            else if (change != 0)
            {
                counted++;
            }
            else
            {
                continue;
            }

            StockLot of = known ?? lot;
            db.Movements.Add(new StockMovement { LotId = of.Id, At = now, StaffName = by.Name, Change = change });
            db.Trail.Add(AuditLine.Of(
                by, now, known is null ? AuditAct.Added : AuditAct.Changed, null,
                $"lot {of.Lot} of {of.WireId}, {change:+0;-0;0} pieces, from a list"));
        }

        await db.SaveChangesAsync(cancellation);
        return (added, counted);
    }

    private static string WireIn(IEnumerable<Visit> signed, Jaw jaw) =>
        signed.OrderBy(one => one.Day).ThenBy(one => one.Starts)
            .LastOrDefault(one => one.Content.Arch(jaw)?.Decided is not null)
            ?.Content.Arch(jaw)?.Decided?.WireId ?? "";
}
