using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.People;
using Archwright.Practice.Stock;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>The wires in stock.</summary>
/// <param name="contexts">Makes a context for each look.</param>
/// <param name="clock">The time of movements and audit lines.</param>
public sealed class Shelf(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    /// <summary>Puts a lot on the shelf.</summary>
    public async Task ReceiveAsync(StockLot lot, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        db.Lots.Add(lot);
        Note(db, lot, lot.OnHand, AuditAct.Added, by);
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>Notes how many pieces of a lot were counted.</summary>
    /// <exception cref="DbUpdateConcurrencyException">Somebody took from the lot at the same moment.</exception>
    public async Task CountAsync(Guid id, int pieces, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        StockLot lot = await db.Lots.SingleAsync(one => one.Id == id, cancellation);
        int more = lot.Count(pieces);
        if (more == 0)
            return;

        Note(db, lot, more, AuditAct.Changed, by);
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>All lots, by wire and expiry.</summary>
    public async Task<IReadOnlyList<StockLot>> AllAsync(CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Lots.AsNoTracking()
            .OrderBy(one => one.WireId).ThenBy(one => one.Expires).ToListAsync(cancellation);
    }

    /// <summary>Lots from which a piece may be taken for an arch on a day, the first to expire first.</summary>
    public async Task<IReadOnlyList<StockLot>> ForAsync(
        Jaw jaw, DateOnly day, CancellationToken cancellation = default)
    {
        IReadOnlyList<StockLot> all = await AllAsync(cancellation);
        return [.. all.Where(lot => lot.CanServe(jaw, day)).OrderBy(lot => lot.Expires ?? DateOnly.MaxValue)];
    }

    private void Note(PracticeContext db, StockLot lot, int change, AuditAct act, Actor by)
    {
        DateTimeOffset now = clock.GetUtcNow();
        db.Movements.Add(new StockMovement { LotId = lot.Id, At = now, StaffName = by.Name, Change = change });
        db.Trail.Add(AuditLine.Of(by, now, act, null, $"lot {lot.Lot} of {lot.WireId}, {change:+0;-0;0} pieces"));
    }
}
