using Archwright.Dentition.Comparison;
using Archwright.Practice.Courses;
using Archwright.Practice.Ladders;
using Archwright.Practice.People;
using Archwright.Practice.Settings;
using Archwright.Practice.Tests;
using Archwright.Practice.Values;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;
using Archwright.Treatment.Policies;
using Archwright.Web.Sessions;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;

namespace Archwright.Web.Tests.Sessions;

/// <summary>Ladders computed in the background. Rests on a real, straight arch in SQLite.</summary>
[Trait("basis", "law")]
public sealed class LadderWorkTests : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("archwright-ladder-").FullName;
    private readonly Patient patient = Samples.Patient();
    private PracticeDatabase database = null!; // made before each test
    private ArchTreatment arch = null!;
    private LadderDesk desk = null!;

    public async ValueTask InitializeAsync()
    {
        database = PracticeDatabase.Sqlite(Path.Combine(folder, "practice.db"));
        await database.MigrateAsync();
        await database.SettleAsync(new PracticeSettings { Name = "Test", IsDemo = true });
        arch = ArchTreatment.Begin(
            patient.Id,
            Archwright.Dentition.Teeth.Jaw.Upper,
            new Appliance
            {
                SlotCode = "022", Prescription = "roth", Bonded = Samples.UpperTeeth, WorkingWire = "niti-016",
            },
            Samples.Today,
            ToothMap<ToothOffset>.Empty);
        await using PracticeContext db = database.CreateDbContext();
        db.AddRange(patient, arch, Samples.Lot("niti-014"), Samples.Lot("niti-016"));
        await db.SaveChangesAsync();
        desk = new LadderDesk(database, TimeProvider.System);
    }

    public ValueTask DisposeAsync()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task It_is_kept_when_done_and_everybody_who_looks_is_told()
    {
        using LadderWork work = Work();
        int told = 0;
        work.Changed += (_, about) => told += about.TreatmentId == arch.Id ? 1 : 0;

        Task first = work.Begin(arch.Id, Samples.Assistant);
        Assert.NotNull(work.Of(arch.Id));
        Assert.Same(first, work.Begin(arch.Id, Samples.Assistant)); // one at a time for an arch
        await first;

        KeptLadder kept = (await desk.OfAsync(patient.Id))[arch.Id];
        Assert.NotEmpty(kept.Sequences);
        Assert.Null(work.Of(arch.Id));
        Assert.InRange(told, 2, int.MaxValue); // that it began, and that it is there
    }

    [Fact]
    public async Task One_that_is_stopped_keeps_nothing_and_may_be_begun_again()
    {
        using LadderWork work = Work();
        Task stopped = work.Begin(arch.Id, Samples.Assistant);
        work.Stop(arch.Id);
        await stopped;

        Assert.Null(work.Of(arch.Id));
        Assert.Empty(await desk.OfAsync(patient.Id));

        await work.Begin(arch.Id, Samples.Assistant);
        Assert.Single(await desk.OfAsync(patient.Id));
    }

    [Fact]
    public async Task One_that_cannot_be_says_why()
    {
        using LadderWork work = Work();
        Guid nobody = Guid.CreateVersion7();

        await work.Begin(nobody, Samples.Assistant);

        LadderTask failed = work.Of(nobody)!;
        Assert.Equal(LadderStanding.Failed, failed.Standing);
        Assert.Contains("no appliance", failed.Fault, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_fault_of_ours_is_told_without_its_inside()
    {
        using var work = new LadderWork(
            desk,
            new LadderPlanner(
                VisitPolicy.Default, TimeProvider.System, () => throw new InvalidOperationException("inside")),
            NullLogger<LadderWork>.Instance);

        await work.Begin(arch.Id, Samples.Assistant);

        Assert.Contains("A fault of the program", work.Of(arch.Id)!.Fault, StringComparison.Ordinal);
        Assert.DoesNotContain("inside", work.Of(arch.Id)!.Fault, StringComparison.Ordinal);
    }

    private LadderWork Work() => new(
        desk,
        new LadderPlanner(VisitPolicy.Default, TimeProvider.System, () => SentenceStyle.Default),
        NullLogger<LadderWork>.Instance);
}
