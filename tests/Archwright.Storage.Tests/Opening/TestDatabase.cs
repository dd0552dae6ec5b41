using Archwright.Practice.Settings;
using Archwright.Practice.Tests;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Practice = Archwright.Practice;

namespace Archwright.Storage.Tests.Opening;

/// <summary>A new, migrated database of either kind.</summary>
internal sealed class TestDatabase : IDisposable
{
    /// <summary>Both kinds.</summary>
    public static readonly string[] Kinds = ["sqlite", "postgres"];

    private readonly string? folder;
    private readonly TickingClock clock = new();

    public TimeProvider Clock => clock;

    private TestDatabase(string kind, string connection, string? folder)
    {
        Kind = kind;
        Connection = connection;
        this.folder = folder;
        Database = kind == "sqlite"
            ? PracticeDatabase.Sqlite(connection)
            : PracticeDatabase.Postgres(connection);
    }

    public string Kind { get; }

    /// <summary>File or connection string.</summary>
    public string Connection { get; }

    public PracticeDatabase Database { get; }

    public VisitDesk Desk => new(Database, clock);

    public PatientFiles Files => new(Database, clock);

    public Diary Diary => new(Database, clock);

    public Shelf Shelf => new(Database, clock);

    /// <summary>Makes one; up to a migration of before and without settings, where one is named.</summary>
    public static async Task<TestDatabase> MakeAsync(string kind, PostgresServer server, string? migrateTo = null)
    {
        string? place = kind == "sqlite" ? Directory.CreateTempSubdirectory("archwright-storage-").FullName : null;
        var made = new TestDatabase(
            kind, place is null ? server.MakeDatabase() : Path.Combine(place, "practice.db"), place);
        if (migrateTo is not null)
        {
            await using PracticeContext db = made.Database.CreateDbContext();
            await db.GetService<IMigrator>().MigrateAsync(migrateTo);
            return made;
        }

        await made.Database.MigrateAsync();
        await made.Database.SettleAsync(new PracticeSettings { Name = "Test", IsDemo = true });
        return made;
    }

    /// <summary>The same database, watched.</summary>
    public PracticeDatabase WithInterceptor(IInterceptor interceptor) => Kind == "sqlite"
        ? PracticeDatabase.Sqlite(Connection, interceptor)
        : PracticeDatabase.Postgres(Connection, interceptor);

    /// <summary>A patient with an upper arch, a lot and a visit that can be signed and takes a piece.</summary>
    public async Task<(Guid Patient, Practice.Visits.Visit Visit, Guid Lot)> ReadyToSignAsync(int pieces = 3)
    {
        Practice.People.Patient patient = Samples.Patient();
        Practice.Stock.StockLot lot = Samples.Lot(pieces: pieces);
        Practice.Visits.Visit visit = Samples.Visit(patient.Id, Samples.With(arch => arch with
        {
            Decided = new Practice.Visits.Decision(Practice.Visits.WireAct.Fit, "niti-014", lot.Id, ""),
        }));
        await using PracticeContext db = Database.CreateDbContext();
        db.AddRange(patient, lot, Samples.Upper(patient.Id), visit);
        await db.SaveChangesAsync();
        return (patient.Id, visit, lot.Id);
    }

    public void Dispose()
    {
        if (folder is null)
            return;

        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    // A second passes between two looks, so that what happens later stands later.
    private sealed class TickingClock : TimeProvider
    {
        private int seconds;

        public override DateTimeOffset GetUtcNow() => Samples.Now.AddSeconds(Interlocked.Increment(ref seconds));
    }
}
