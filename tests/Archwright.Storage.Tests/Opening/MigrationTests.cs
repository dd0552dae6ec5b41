using Archwright.Practice.Settings;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Opening;

/// <summary>A database is made and brought up to date by the program. Rests on the databases themselves.</summary>
[Trait("basis", "independent")]
public sealed class MigrationTests(PostgresServer server)
{
    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task The_migrations_make_the_model(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        await using PracticeContext db = made.Database.CreateDbContext();

        Assert.False(db.Database.HasPendingModelChanges());
        Assert.Empty(await db.Database.GetPendingMigrationsAsync());
        Assert.NotEmpty(await db.Database.GetAppliedMigrationsAsync());
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Several_programs_may_start_on_a_new_database_at_once(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);

        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => made.Database.MigrateAsync()));

        Assert.Equal("Test", (await made.Database.SettingsAsync()).Name);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Settings_are_kept_and_changed(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var settings = new PracticeSettings { Name = "Ours", SessionMinutes = 30, Force = ShownForce.GramForce };

        await made.Database.SettleAsync(settings);

        Assert.Equal(settings, await made.Database.SettingsAsync());
    }

    [Fact]
    public async Task A_file_of_SQLite_writes_ahead_so_that_readers_do_not_wait()
    {
        using TestDatabase made = await TestDatabase.MakeAsync("sqlite", server);
        await using PracticeContext db = made.Database.CreateDbContext();

        string mode = (await db.Database.SqlQueryRaw<string>("SELECT journal_mode AS Value FROM pragma_journal_mode")
            .ToListAsync()).Single();

        Assert.Equal("wal", mode);
    }

    [Fact]
    public void The_words_for_a_database_hold_no_password() => Assert.DoesNotContain(
        "secret", PracticeDatabase.Postgres("Host=db;Username=a;Password=secret").Words, StringComparison.Ordinal);
}
