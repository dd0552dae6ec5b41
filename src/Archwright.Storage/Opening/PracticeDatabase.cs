using Archwright.Practice.Settings;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Archwright.Storage.Opening;

/// <summary>Which database, and short-lived contexts on it.</summary>
public sealed class PracticeDatabase : IDbContextFactory<PracticeContext>
{
    private readonly Func<PracticeContext> make;

    private PracticeDatabase(string words, Func<PracticeContext> make)
    {
        Words = words;
        this.make = make;
    }

    /// <summary>What it is, for people: never with a password.</summary>
    public string Words { get; }

    /// <summary>A file of this computer.</summary>
    /// <param name="file">Path of the file; made when it is not there.</param>
    /// <param name="interceptors">For tests that stop in the middle.</param>
    public static PracticeDatabase Sqlite(string file, params IInterceptor[] interceptors)
    {
        DbContextOptions<SqliteContext> options = new DbContextOptionsBuilder<SqliteContext>()
            .UseSqlite($"Data Source={file};Foreign Keys=True;Default Timeout=30")
            .AddInterceptors(interceptors)
            .WithPasskeys()
            .Options;
        return new PracticeDatabase($"SQLite, {file}", () => new SqliteContext(options));
    }

    /// <summary>A PostgreSQL server.</summary>
    /// <param name="connection">Connection string.</param>
    /// <param name="interceptors">For tests that stop in the middle.</param>
    public static PracticeDatabase Postgres(string connection, params IInterceptor[] interceptors)
    {
        DbContextOptions<PostgresContext> options = new DbContextOptionsBuilder<PostgresContext>()
            .UseNpgsql(connection)
            .AddInterceptors(interceptors)
            .WithPasskeys()
            .Options;
        return new PracticeDatabase("PostgreSQL", () => new PostgresContext(options));
    }

    /// <inheritdoc/>
    public PracticeContext CreateDbContext() => make();

    /// <summary>Brings the database to this version of the program. Several programs may do so at once: one works, the
    /// others wait.</summary>
    public async Task MigrateAsync(CancellationToken cancellation = default)
    {
        await using PracticeContext db = make();
        await db.Database.MigrateAsync(cancellation);
    }

    /// <summary>What the practice has settled; the usual where nothing is.</summary>
    public async Task<PracticeSettings> SettingsAsync(CancellationToken cancellation = default)
    {
        await using PracticeContext db = make();
        return (await db.SettingsRows.AsNoTracking().FirstOrDefaultAsync(cancellation))?.Settings
            ?? new PracticeSettings();
    }

    /// <summary>Settles something.</summary>
    public async Task SettleAsync(PracticeSettings settings, CancellationToken cancellation = default)
    {
        await using PracticeContext db = make();
        SettingsRow? row = await db.SettingsRows.FirstOrDefaultAsync(cancellation);
        if (row is null)
            db.SettingsRows.Add(new SettingsRow { Settings = settings });
        else
            row.Settings = settings;

        await db.SaveChangesAsync(cancellation);
    }
}
