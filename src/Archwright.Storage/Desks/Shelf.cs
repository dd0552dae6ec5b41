using Archwright.Dentition.Teeth;
using Archwright.Practice.Stock;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>The wires in stock.</summary>
/// <param name="contexts">Makes a context for each look.</param>
public sealed class Shelf(IDbContextFactory<PracticeContext> contexts)
{
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
}
