using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
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
using Archwright.Web.Keeping;
using Archwright.Web.Sessions;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;

namespace Archwright.Web.Tests.Keeping;

/// <summary>The ladders of all arches, one after the other. Rests on real, straight arches in SQLite.</summary>
[Trait("basis", "law")]
public sealed class LadderRoundTests : IAsyncLifetime
{
    private const int Arches = 3;

    private readonly string folder = Directory.CreateTempSubdirectory("archwright-round-").FullName;
    private readonly LadderPlanner planner =
        new(VisitPolicy.Default, TimeProvider.System, () => SentenceStyle.Default);

    private PracticeDatabase database = null!; // made before each test
    private LadderDesk desk = null!;

    public async ValueTask InitializeAsync()
    {
        database = PracticeDatabase.Sqlite(Path.Combine(folder, "practice.db"));
        await database.MigrateAsync();
        await database.SettleAsync(new PracticeSettings { Name = "Test", IsDemo = true });
        await using PracticeContext db = database.CreateDbContext();
        db.AddRange(Samples.Lot("niti-014"), Samples.Lot("niti-016"));
        for (int i = 0; i < Arches; i++)
        {
            Patient patient = Samples.Patient();
            db.AddRange(patient, ArchTreatment.Begin(
                patient.Id, Jaw.Upper,
                new Appliance
                {
                    SlotCode = "022", Prescription = "roth", Bonded = Samples.UpperTeeth, WorkingWire = "niti-016",
                },
                Samples.Today, ToothMap<ToothOffset>.Empty));
        }

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
    public async Task All_that_are_due_are_computed_and_kept_and_a_second_round_finds_nothing_to_do()
    {
        using LadderWork work = Work();
        LadderRound round = Round(work);
        List<int> done = [];
        round.Changed += (_, _) => done.Add(round.State.Done);

        Task first = round.Begin(Samples.Assistant);
        Assert.Same(first, round.Begin(Samples.Assistant)); // one at a time
        await first;

        Assert.Equal(new RoundState(false, Arches, Arches, "Done."), round.State);
        Assert.Equal([0, 1, 2, 3, 3], done);
        Assert.All(await OpenAsync(), one => Assert.False(one.IsDue));

        await round.Begin(Samples.Assistant);
        Assert.Equal(new RoundState(false, 0, 0, "Done."), round.State);
    }

    [Fact]
    public async Task One_that_is_stopped_keeps_what_is_done_and_goes_on_where_it_stood()
    {
        using LadderWork work = Work();
        LadderRound round = Round(work);
        EventHandler stop = (_, _) =>
        {
            if (round.State.Done == 1)
                round.Stop();
        };
        round.Changed += stop;
        await round.Begin(Samples.Assistant);
        round.Changed -= stop;

        Assert.Equal(new RoundState(false, 1, Arches, "Stopped. What was done is kept."), round.State);
        Assert.Equal(Arches - 1, (await OpenAsync()).Count(one => one.IsDue));

        await round.Begin(Samples.Assistant);
        Assert.Equal(new RoundState(false, Arches - 1, Arches - 1, "Done."), round.State);
    }

    private Task<IReadOnlyList<ArchLadder>> OpenAsync() => desk.OpenAsync(planner.PolicyVersion, ProgramVersion.Text);

    private LadderWork Work() => new(desk, planner, NullLogger<LadderWork>.Instance);

    private LadderRound Round(LadderWork work) => new(desk, work, planner, NullLogger<LadderRound>.Instance);
}
