using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.Rules;
using Archwright.Practice.Stock;
using Archwright.Practice.Tests;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Desks;

/// <summary>Recalls, lists that come in, and what is needed. Rests on both databases.</summary>
[Trait("basis", "independent")]
public sealed class StockDesksTests(PostgresServer server)
{
    private const string Gtin = "09506000134352";

    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_recalled_lot_finds_who_got_a_piece_and_leaves_a_line_for_each(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid patient, Visit visit, Guid lot) = await made.ReadyToSignAsync();
        await made.ReadyToSignAsync(); // somebody else, with a lot of their own
        await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
        var desk = new RecallDesk(made.Database, made.Clock);

        await desk.RecallAsync(lot, "Letter of the maker.", Samples.Assistant);
        PieceFitted piece = Assert.Single(await desk.WhoAsync(lot, Samples.Assistant));

        Assert.Equal(
            (patient, visit.Id, Jaw.Upper, true), (piece.PatientId, piece.VisitId, piece.Jaw, piece.MayStillBeIn));
        Assert.Contains(
            await made.Files.TrailAsync(patient),
            line => line.Act == AuditAct.Read && line.Subject.Contains("search for lot", StringComparison.Ordinal));
        Assert.DoesNotContain(await made.Shelf.ForAsync(Jaw.Upper, Samples.Today), one => one.Id == lot);
        await Assert.ThrowsAsync<RuleBrokenException>(() => desk.RecallAsync(lot, " ", Samples.Assistant));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_list_puts_counts_right_and_new_lots_on_the_shelf_and_an_article_is_known_again(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        await made.Shelf.ReceiveAsync(Samples.Lot(pieces: 3), Samples.Assistant);
        var planning = new StockPlanning(made.Database, made.Clock);
        StockLot fresh = StockLot.Receive("ss-016", null, "", "N-1", null, 10, 2, Gtin);

        (int added, int counted) = await planning.TakeInAsync(
            [Samples.Lot(pieces: 5), fresh], Samples.Assistant);

        Assert.Equal((1, 1), (added, counted));
        IReadOnlyList<StockLot> lots = await made.Shelf.AllAsync();
        Assert.Equal([("niti-014", 5), ("ss-016", 10)], lots.Select(one => (one.WireId, one.OnHand)));
        Assert.Equal(fresh.Id, (await planning.ArticleAsync(Gtin))?.Id);
        Assert.Null(await planning.ArticleAsync(""));
        await using PracticeContext db = made.Database.CreateDbContext();
        Assert.Equal(15, await db.Movements.SumAsync(one => one.Change)); // 3, then 2 more, then 10
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task What_is_needed_rests_on_the_diary_and_on_what_was_done_before(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        for (int i = 0; i < WireDemand.FewestCases; i++)
        {
            (_, Visit visit, _) = await made.ReadyToSignAsync();
            await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
        }

        var planning = new StockPlanning(made.Database, new At(Samples.Now));
        WireDemand demand = await planning.DemandAsync(weeks: 8, deliveryDays: 7);
        WireDemand none = await planning.DemandAsync(weeks: 1, deliveryDays: 7);

        // Each was found with niti-014 and fitted with a new one, and comes again in six weeks.
        Assert.Equal((3, 0), (demand.Arches, demand.Unknown));
        DemandLine line = Assert.Single(demand.Lines);
        Assert.Equal(("niti-014", Jaw.Upper, 3.0), (line.WireId, line.Jaw, line.Expected));
        Assert.Equal(0, none.Arches);
    }

    private sealed class At(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}
