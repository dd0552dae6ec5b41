using Archwright.Practice.Audit;
using Archwright.Practice.Keeping;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Rules;
using Archwright.Practice.Tests;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Desks;

/// <summary>Deletion by the practice's rule. Rests on both databases.</summary>
[Trait("basis", "independent")]
public sealed class RetentionDeskTests(PostgresServer server) : IDisposable
{
    private static readonly Retention TenYears = new(10, null);

    private readonly string folder = Directory.CreateTempSubdirectory("archwright-keeping-").FullName;

    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory, MemberData(nameof(Kinds))]
    public async Task Who_is_due_is_listed_and_deleted_whole_when_an_orthodontist_confirms(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid patient, _) = await SignedAndReleasedAsync(made);
        RetentionDesk desk = Desk(made, years: 11);

        DueForDeletion due = Assert.Single(await desk.DueAsync(TenYears));
        await Assert.ThrowsAsync<RuleBrokenException>(
            () => desk.DeleteAsync(patient, TenYears, Samples.Assistant));
        await desk.DeleteAsync(patient, TenYears, Samples.Orthodontist);

        Assert.Equal((patient, 2, true), (due.PatientId, due.Visits, due.IsOpen));
        Assert.Empty(await desk.DueAsync(TenYears));
        await using PracticeContext db = made.Database.CreateDbContext();
        Assert.Equal(0, await db.Patients.CountAsync());
        Assert.Equal(0, await db.Visits.CountAsync());
        Assert.Equal(0, await db.Treatments.CountAsync());
        Assert.Equal(0, await db.Leaflets.CountAsync());
        Assert.Equal(0, await db.Links.CountAsync());
        AuditLine line = await db.Trail.SingleAsync(one => one.Act == AuditAct.Deleted);
        Assert.Contains("10 years", line.Subject, StringComparison.Ordinal);
        List<AuditLine> trail = await db.Trail.ToListAsync();
        Assert.DoesNotContain(trail, one => one.Subject.Contains("Mira", StringComparison.OrdinalIgnoreCase)
            || one.Subject.Contains("Østby", StringComparison.OrdinalIgnoreCase));
        Assert.Equal("Dr Iva Lund", Assert.Single(await desk.DoneAsync()).StaffName);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task What_the_rule_still_keeps_is_neither_listed_nor_deleted(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid patient, _) = await SignedAndReleasedAsync(made);

        foreach ((int years, Retention rule) in new[]
                 {
                     (9, TenYears), (11, new Retention(10, 30)), (90, new Retention(null, null)),
                 })
        {
            RetentionDesk desk = Desk(made, years);
            Assert.Empty(await desk.DueAsync(rule));
            await Assert.ThrowsAsync<RuleBrokenException>(
                () => desk.DeleteAsync(patient, rule, Samples.Orthodontist));
        }

        await using PracticeContext db = made.Database.CreateDbContext();
        Assert.Equal(1, await db.Patients.CountAsync());
        Assert.Equal(2, await db.Visits.CountAsync());
        Assert.Equal(0, await db.Disposals.CountAsync());
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task The_database_lets_nothing_else_go(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid gone, _) = await SignedAndReleasedAsync(made);
        await Desk(made, years: 11).DeleteAsync(gone, TenYears, Samples.Orthodontist);
        (_, Visit kept) = await SignedAndReleasedAsync(made);
        await using PracticeContext db = made.Database.CreateDbContext();

        foreach (string attack in new[]
                 {
                     "DELETE FROM \"Visits\" WHERE \"Signed\" IS NOT NULL",
                     "UPDATE \"Visits\" SET \"PatientId\" = (SELECT \"PatientId\" FROM \"Disposals\")",
                     "UPDATE \"Disposals\" SET \"StaffName\" = ''", "DELETE FROM \"Disposals\"",
                 })
        {
            Exception refused = await Assert.ThrowsAnyAsync<Exception>(() => db.Database.ExecuteSqlRawAsync(attack));
            Assert.Matches("never changed|only ever added", refused.Message);
        }

        Assert.Equal(kept.Id, (await db.Visits.SingleAsync(one => one.State == VisitState.Signed)).Id);
    }

    private RetentionDesk Desk(TestDatabase made, int years) => new(
        made.Database, new PhotoShelf(folder), new Later(Samples.Now.AddYears(years)));

    private static async Task<(Guid Patient, Visit Visit)> SignedAndReleasedAsync(TestDatabase made)
    {
        (Guid patient, Visit visit, _) = await made.ReadyToSignAsync();
        (Visit signed, _) = await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
        var leaflets = new LeafletDesk(made.Database, made.Clock);
        ReleasedLeaflet released = await leaflets.ReleaseAsync(
            signed.Id, LeafletWriter.Write(signed, LeafletTexts.In("en"), "F")!, LeafletPictures.None,
            Samples.Orthodontist);
        await leaflets.LinkAsync(released.Id, 30, Samples.Orthodontist);
        return (patient, signed);
    }

    private sealed class Later(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;
    }
}
