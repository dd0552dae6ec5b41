using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.Ladders;
using Archwright.Practice.Rules;
using Archwright.Practice.Stock;
using Archwright.Practice.Tests;
using Archwright.Practice.Tests.Ladders;
using Archwright.Practice.Values;
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
    public async Task A_piece_is_out_once_another_was_fitted_or_the_wire_taken_out_and_in_while_it_was_kept(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var desk = new RecallDesk(made.Database, made.Clock);
        foreach ((WireAct act, string wire, bool isIn) in new[]
                 {
                     (WireAct.Fit, "ss-016", false), (WireAct.LeaveOut, "", false), (WireAct.Keep, "niti-014", true),
                 })
        {
            (Guid patient, Visit visit, Guid lot) = await made.ReadyToSignAsync();
            (Visit signed, _) = await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
            await using (PracticeContext db = made.Database.CreateDbContext())
            {
                db.Add(Visit.FromEarlierRecords(
                    patient, signed.Day.AddDays(42), signed.Starts, VisitKind.Adjustment,
                    Samples.With(arch => arch with { Decided = new Decision(act, wire, null, "") }), "Dr Iva Lund"));
                await db.SaveChangesAsync();
            }

            PieceFitted piece = Assert.Single(await desk.WhoAsync(lot, Samples.Assistant));
            Assert.Equal((act, isIn), (act, piece.MayStillBeIn));
        }
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_list_puts_counts_right_and_new_lots_on_the_shelf_and_an_article_is_known_again(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        await made.Shelf.ReceiveAsync(Samples.Lot(pieces: 3), Samples.Assistant);
        var planning = Planning(made);
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

        StockOutlook outlook = await DemandAsync(made, weeks: 8);
        WireDemand demand = outlook.Demand;
        WireDemand none = (await DemandAsync(made, weeks: 1)).Demand;

        // Each was found with niti-014 and fitted with a new one, and comes again in six weeks.
        Assert.Equal((3, 0), (demand.Arches, demand.Unknown));
        DemandLine line = Assert.Single(demand.Lines);
        Assert.Equal(("niti-014", Jaw.Upper, 3.0), (line.WireId, line.Jaw, line.Expected));
        Assert.Equal(0, none.Arches);
        Assert.Equal(3, outlook.Arches.Count);
        Assert.All(outlook.Arches, one => Assert.True(one.IsDue));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_ladder_takes_the_place_of_habit_until_something_changes_at_the_arch(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid patient, Visit visit, _) = await made.ReadyToSignAsync();
        (_, Visit next) = await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
        var ladders = new LadderDesk(made.Database, Now);
        Guid arch = Assert.Single(await ladders.OpenAsync("test-1", "0")).Treatment.Id;
        KeptLadder ladder = KeptSamples.Ladder((await ladders.BasisAsync(arch))!);

        StockOutlook without = await DemandAsync(made, weeks: 16);
        await ladders.KeepAsync(arch, ladder, Samples.Orthodontist);
        StockOutlook near = await DemandAsync(made, weeks: 11);
        StockOutlook far = await DemandAsync(made, weeks: 12);
        StockOutlook otherPolicy = await DemandAsync(made, weeks: 12, policy: "test-2");

        Assert.True(Assert.Single(without.Arches).IsDue);
        Assert.Equal(1, without.Demand.Arches);
        ArchLadder told = Assert.Single(near.Arches);
        Assert.Equal((patient, false, next.Day), (told.Patient.Id, told.IsDue, told.Next));
        Assert.Empty(near.Demand.Lines); // niti-014 is in, and steel goes in after twelve weeks
        Assert.Equal(0, near.Demand.Arches);
        DemandLine line = Assert.Single(far.Demand.Lines);
        Assert.Equal(("ss-019x025", 1.0, 1, 1), (line.WireId, line.Expected, line.ByLadders, line.ToOrder));
        Assert.Equal(Samples.Today.AddDays(84 - 7), line.OrderBy);
        Assert.Equal([LadderChange.Policy], Assert.Single(otherPolicy.Arches).Changes);

        await made.Desk.NoteAsync(
            new VisitEdit(next.Id, next.Revision, next.Content, Samples.With(one => one with
            {
                Decided = null, Seen = new ArchSeen(next.Day, PositionsFrom.Measured, Samples.HighCanine),
            })),
            Samples.Assistant);
        StockOutlook changed = await DemandAsync(made, weeks: 12);
        Assert.Contains(LadderChange.Positions, Assert.Single(changed.Arches).Changes);
        Assert.Equal(1, changed.Demand.Arches); // by the diary and by habit again
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task An_arch_without_a_ladder_stands_by_habit_and_one_that_needs_nothing_does_not(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var ladders = new LadderDesk(made.Database, Now);
        foreach (bool arrived in new[] { false, true })
        {
            (Guid patient, _, _) = await made.ReadyToSignAsync();
            Guid arch = (await ladders.OpenAsync("test-1", "0")).Single(one => one.Patient.Id == patient).Treatment.Id;
            await ladders.KeepAsync(
                arch,
                KeptSamples.Ladder((await ladders.BasisAsync(arch))!) with
                {
                    Sequences = Listing<KeptSequence>.Empty, IsAtWorkingWire = arrived, Because = "Too far.",
                },
                Samples.Orthodontist);
        }

        // Each comes onto the shelf with a lot of its own, of a wire that is there already: nothing is stale.
        StockOutlook outlook = await DemandAsync(made, weeks: 8);

        Assert.All(outlook.Arches, one => Assert.False(one.IsDue));
        Assert.Equal(1, outlook.Demand.Arches);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Where_the_appliance_comes_off_at_the_next_visit_nothing_is_needed_or_computed(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid patient, Visit visit, _) = await made.ReadyToSignAsync();
        await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
        await made.Diary.BookAsync(
            Visit.Book(patient, Samples.Today.AddDays(7), new TimeOnly(9, 0), 60, VisitKind.Debonding),
            Samples.Assistant);

        StockOutlook outlook = await DemandAsync(made, weeks: 8);

        ArchLadder arch = Assert.Single(outlook.Arches);
        Assert.Equal((true, false, Samples.Today.AddDays(7)), (arch.ComesOff, arch.IsDue, arch.Next));
        Assert.Equal(0, outlook.Demand.Arches);
    }

    private static readonly At Now = new(Samples.Now);

    private static StockPlanning Planning(TestDatabase made) =>
        new(made.Database, new LadderDesk(made.Database, Now), Now);

    private static Task<StockOutlook> DemandAsync(TestDatabase made, int weeks, string policy = "test-1") =>
        Planning(made).DemandAsync((weeks, 7), policy, "0");

    private sealed class At(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}
