using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Settings;
using Archwright.Practice.Stock;
using Archwright.Practice.Tests;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Desks;

/// <summary>What the record screens write, on both databases. Rests on what was put in.</summary>
[Trait("basis", "law")]
public sealed class RecordsTests(PostgresServer server)
{
    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task An_arch_takes_one_appliance_until_it_is_off_and_each_step_is_in_the_trail(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        Patient patient = Samples.Patient();
        await made.Files.AddAsync(patient, Samples.Assistant);
        ArchTreatment first = Samples.Upper(patient.Id);
        await made.Files.BeginAsync(first, Samples.Assistant);

        RuleBrokenException second = await Assert.ThrowsAsync<RuleBrokenException>(
            () => made.Files.BeginAsync(Samples.Upper(patient.Id), Samples.Assistant));
        await made.Files.ChangeTreatmentAsync(
            first.Id, one => one.Rebond(Samples.UpperTeeth.Without(ToothNumber.FromIso(17))), Samples.Assistant);
        await made.Files.ChangeTreatmentAsync(first.Id, one => one.Debond(Samples.Today), Samples.Assistant);
        await made.Files.BeginAsync(Samples.Upper(patient.Id), Samples.Assistant);

        Assert.Equal(PracticeRules.AnArchCarriesOneAppliance, second.Rule);
        Assert.Equal(2, (await made.Files.OpenAsync(patient.Id, Samples.Assistant))!.Treatments.Count);
        Assert.Equal(
            ["file", "upper appliance", "upper appliance", "upper appliance", "upper appliance", "patient"],
            (await made.Files.TrailAsync(patient.Id)).Select(line => line.Subject));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_visit_is_booked_and_noted_in_the_trail(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid id, _, _) = await made.ReadyToSignAsync();
        var visit = Visit.Book(
            id, Samples.Today.AddDays(3), new TimeOnly(8, 0), 30, VisitKind.Emergency, "Wire pokes.");

        await made.Diary.BookAsync(visit, Samples.Assistant);

        Assert.Equal(visit.Id, Assert.Single(await made.Diary.DayAsync(visit.Day)).Visit.Id);
        AuditLine line = Assert.Single(await made.Files.TrailAsync(id));
        Assert.Equal((AuditAct.Added, "visit of 2026-03-05"), (line.Act, line.Subject));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_lot_is_received_and_counted_and_both_are_movements_with_a_name(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        StockLot lot = Samples.Lot(pieces: 10);
        await made.Shelf.ReceiveAsync(lot, Samples.Assistant);
        await made.Shelf.CountAsync(lot.Id, 7, Samples.Orthodontist);
        await made.Shelf.CountAsync(lot.Id, 7, Samples.Orthodontist);

        Assert.Equal(7, Assert.Single(await made.Shelf.AllAsync()).OnHand);
        await using PracticeContext db = made.Database.CreateDbContext();
        List<StockMovement> moves = await db.Movements.OrderBy(one => one.At).ToListAsync();
        Assert.Equal([10, -3], moves.Select(one => one.Change));
        Assert.Equal([Samples.Assistant.Name, Samples.Orthodontist.Name], moves.Select(one => one.StaffName));
        Assert.Equal(2, await db.Trail.CountAsync(line => line.Subject.Contains("lot T-1")));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Settings_are_kept_and_a_demo_stays_one(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var desk = new SettingsDesk(made.Database, await made.Database.SettingsAsync(), TimeProvider.System);
        PracticeSettings wanted = desk.Settled with { Force = ShownForce.Newton, IsDemo = false };

        await desk.SettleAsync(wanted, Samples.Orthodontist);

        Assert.Equal(ShownForce.Newton, (await made.Database.SettingsAsync()).Force);
        Assert.True((await made.Database.SettingsAsync()).IsDemo);
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(
            () => desk.SettleAsync(wanted with { SessionMinutes = 0 }, Samples.Orthodontist));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_photograph_is_found_through_the_visit_that_names_it_and_a_look_leaves_a_line(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid id, Visit visit, _) = await made.ReadyToSignAsync();
        var photo = new Photo("ab.png", "front", "ab");
        await made.Desk.NoteAsync(
            new VisitEdit(
                visit.Id, visit.Revision, visit.Content,
                visit.Content with { Photos = visit.Content.Photos.With(photo) }),
            Samples.Assistant);

        Assert.Equal(photo, await made.Files.PhotoAsync(visit.Id, "ab.png", Samples.Assistant));
        Assert.Null(await made.Files.PhotoAsync(visit.Id, "other.png", Samples.Assistant));
        Assert.Null(await made.Files.PhotoAsync(Guid.NewGuid(), "ab.png", Samples.Assistant));
        Assert.Equal("photograph, front", (await made.Files.TrailAsync(id))[0].Subject);
    }
}
