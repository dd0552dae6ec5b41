using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.People;
using Archwright.Practice.Stock;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>What the next weeks need, and on which arches that rests.</summary>
/// <param name="Demand">By wire.</param>
/// <param name="Arches">All arches that carry an appliance, with their ladders.</param>
public sealed record StockOutlook(WireDemand Demand, IReadOnlyList<ArchLadder> Arches);

/// <summary>What is to be ordered, and lists of lots that come in.</summary>
/// <param name="contexts">Makes a context for each act.</param>
/// <param name="ladders">The ladders of arches.</param>
/// <param name="clock">The time.</param>
public sealed class StockPlanning(
    IDbContextFactory<PracticeContext> contexts, LadderDesk ladders, TimeProvider clock)
{
    // Older visits say little of what a practice does today, and a large practice has very many.
    private const int YearsOfHabit = 2;

    /// <summary>What the ladders of arches in treatment, and the visits in the diary, will need. Nothing is computed
    /// that takes time: ladders are computed beforehand.</summary>
    /// <param name="span">Weeks ahead, and days from ordering to the shelf.</param>
    /// <param name="policyVersion">The policy now: a ladder by another one does not count.</param>
    /// <param name="programVersion">The program now.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<StockOutlook> DemandAsync(
        (int Weeks, int DeliveryDays) span, string policyVersion, string programVersion,
        CancellationToken cancellation = default)
    {
        DateOnly today = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        DateOnly end = today.AddDays(7 * span.Weeks);
        IReadOnlyList<ArchLadder> arches = await ladders.OpenAsync(policyVersion, programVersion, cancellation);
        PlannedNeed[] planned =
        [
            .. arches.Where(one => one is { Ladder: not null, IsDue: false, ComesOff: false })
                .SelectMany(one => PlannedNeed.Of(one.Treatment.Jaw, one.Ladder!, one.Next, today)) // there: see above
                .Where(one => one.Day <= end),
        ];
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        DateOnly since = today.AddYears(-YearsOfHabit);
        List<Visit> signed = await db.Visits.AsNoTracking()
            .Where(one => one.State == VisitState.Signed && one.Day >= since).ToListAsync(cancellation);
        ILookup<Guid, Visit> past = signed.ToLookup(one => one.PatientId);
        ComingArch[] coming =
        [
            .. from arch in arches
               where !arch.ComesOff && (arch.IsDue || !PlannedNeed.HasPlan(arch.Ladder)) && arch.Next <= end
               select new ComingArch(
                   arch.Next!.Value, arch.Treatment.Jaw, WireIn(past[arch.Patient.Id], arch.Treatment.Jaw)),
        ];
        var demand = WireDemand.Of(
            planned, coming, [.. signed.SelectMany(PastChange.Of)],
            await db.Lots.AsNoTracking().ToListAsync(cancellation), today, span.DeliveryDays);
        return new StockOutlook(demand, arches);
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
