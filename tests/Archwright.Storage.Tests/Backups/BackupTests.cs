using System.IO.Compression;
using System.Text;
using Archwright.Practice.Tests;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Backups;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;
using Archwright.Storage.Tests.Opening;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Backups;

/// <summary>One file of all records, made while others write, tried, put back, and refused when it was touched. Rests
/// on both databases.</summary>
[Trait("basis", "independent")]
public sealed class BackupTests(PostgresServer server) : IDisposable
{
    private static readonly byte[] Jpeg = [0xFF, 0xD8, 0xFF, 0xE0, .. "invented picture"u8];

    private readonly string folder = Directory.CreateTempSubdirectory("archwright-backups-").FullName;

    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_backup_is_put_back_as_it_was(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        string photographs = Path.Combine(folder, "photographs");
        (Guid patient, Visit visit) = await SignedWithPhotographAsync(made, photographs);
        string file = Path.Combine(folder, "backup.zip");

        BackupManifest manifest = await new BackupWriter(made.Database, photographs, made.Clock).WriteAsync(file);
        string to = Path.Combine(folder, "restored");
        string? empty = kind == "postgres" ? server.MakeDatabase() : null;
        await new BackupRestorer(file, made.Clock).RestoreAsync(to, empty, setAside: false);

        Assert.Equal((1, 2, 1), (manifest.Counts.Patients, manifest.Counts.Visits, manifest.Counts.SignedVisits));
        PracticeDatabase restored = empty is null
            ? PracticeDatabase.Sqlite(Path.Combine(to, "practice.db")) : PracticeDatabase.Postgres(empty);
        await using PracticeContext db = restored.CreateDbContext();
        Visit read = await db.Visits.SingleAsync(one => one.Id == visit.Id);
        Assert.Equal(visit.Content, read.Content);
        Assert.Equal(patient, read.PatientId);
        Assert.Equal(Jpeg, await File.ReadAllBytesAsync(
            Path.Combine(to, "photographs", read.Content.Photos[0].File)));
        // What the database refuses, it refuses after restoring too.
        Exception refused = await Assert.ThrowsAnyAsync<Exception>(
            () => db.Database.ExecuteSqlRawAsync("DELETE FROM \"Visits\" WHERE \"Signed\" IS NOT NULL"));
        Assert.Contains("never changed", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_made_while_others_write_and_holds_one_moment()
    {
        using TestDatabase made = await TestDatabase.MakeAsync("sqlite", server);
        using var enough = new CancellationTokenSource();
        int written = 0;
        Task writing = Task.Run(async () =>
        {
            while (!enough.IsCancellationRequested)
            {
                await made.Files.AddAsync(Samples.Patient(), Samples.Assistant); // a patient and a line of the trail
                Interlocked.Increment(ref written);
            }
        });
        while (Volatile.Read(ref written) < 3)
            await Task.Yield();

        BackupManifest manifest = await new BackupWriter(made.Database, folder + "/none", made.Clock)
            .WriteAsync(Path.Combine(folder, "busy.zip"));
        await enough.CancelAsync();
        await writing;

        Assert.InRange(manifest.Counts.Patients, 1, written);
        Assert.Equal(manifest.Counts.Patients, manifest.Counts.TrailLines); // never one without the other
    }

    [Fact]
    public async Task Records_that_are_there_are_refused_or_set_aside_and_never_written_over()
    {
        using TestDatabase made = await TestDatabase.MakeAsync("sqlite", server);
        await made.ReadyToSignAsync();
        string file = Path.Combine(folder, "backup.zip");
        await new BackupWriter(made.Database, folder + "/none", made.Clock).WriteAsync(file);
        string to = Path.Combine(folder, "there");
        Directory.CreateDirectory(to);
        string there = Path.Combine(to, "practice.db");
        PracticeDatabase other = PracticeDatabase.Sqlite(there);
        await other.MigrateAsync();
        await other.SettleAsync(new Practice.Settings.PracticeSettings { Name = "Other" });
        SqliteConnection.ClearAllPools();
        var restorer = new BackupRestorer(file, made.Clock);

        BackupException refused = await Assert.ThrowsAsync<BackupException>(
            () => restorer.RestoreAsync(to, null, setAside: false));
        await using (PracticeContext open = other.CreateDbContext())
        {
            await open.Database.OpenConnectionAsync();
            await open.Patients.CountAsync();
            await Assert.ThrowsAsync<BackupException>(() => restorer.RestoreAsync(to, null, setAside: true));
        }

        SqliteConnection.ClearAllPools();
        Restored restored = await restorer.RestoreAsync(to, null, setAside: true);

        Assert.Contains("--set-aside", refused.Mend, StringComparison.Ordinal);
        Assert.Equal("Test", (await PracticeDatabase.Sqlite(there).SettingsAsync()).Name);
        Assert.Equal("Other", (await PracticeDatabase.Sqlite(restored.SetAside!).SettingsAsync()).Name);
        await Assert.ThrowsAsync<BackupException>(
            () => new BackupWriter(made.Database, folder, made.Clock).WriteAsync(file)); // nor a backup over another
    }

    [Fact]
    public async Task A_backup_that_was_touched_is_refused_with_the_reason_and_nothing_is_changed()
    {
        using TestDatabase made = await TestDatabase.MakeAsync("sqlite", server);
        string photographs = Path.Combine(folder, "photographs");
        await SignedWithPhotographAsync(made, photographs);
        string file = Path.Combine(folder, "backup.zip");
        await new BackupWriter(made.Database, photographs, made.Clock).WriteAsync(file);

        await RefusedAsync(made, "digest", Touched(file, (zip, one) =>
            one.FullName.StartsWith("photographs/", StringComparison.Ordinal)
                ? Encoding.UTF8.GetBytes(new string('x', (int)one.Length)) : Bytes(one)));
        await RefusedAsync(made, "missing", Touched(file, (zip, one) =>
            one.FullName.StartsWith("photographs/", StringComparison.Ordinal) ? null : Bytes(one)));
        await RefusedAsync(made, "should hold", Touched(file, (zip, one) => one.FullName == "manifest.json"
            ? Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Bytes(one)).Replace(
                "\"patients\": 1", "\"patients\": 2", StringComparison.Ordinal)) : Bytes(one)));
        await RefusedAsync(made, "no backup holds", Touched(file, (zip, one) => one.FullName == "manifest.json"
            ? Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Bytes(one)).Replace(
                "photographs/", "../", StringComparison.Ordinal)) : Bytes(one)));
        await File.WriteAllBytesAsync(Path.Combine(folder, "cut.zip"), (await File.ReadAllBytesAsync(file))[..900]);
        await RefusedAsync(made, "no whole zip", Path.Combine(folder, "cut.zip"));
    }

    [Fact]
    public async Task A_backup_that_would_not_hold_is_told_as_soon_as_it_is_made_and_not_kept()
    {
        using TestDatabase made = await TestDatabase.MakeAsync("sqlite", server);
        string photographs = Path.Combine(folder, "photographs");
        await SignedWithPhotographAsync(made, photographs);
        Directory.Delete(photographs, recursive: true); // the visit still names it
        string file = Path.Combine(folder, "backup.zip");

        BackupException told = await Assert.ThrowsAsync<BackupException>(
            () => new BackupWriter(made.Database, photographs, made.Clock).WriteAsync(file));

        Assert.Contains("does not hold: 1 photographs", told.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(folder, "backup*"));
    }

    private async Task RefusedAsync(TestDatabase made, string why, string file)
    {
        string to = Path.Combine(folder, "refused-" + Path.GetRandomFileName());

        BackupException refused = await Assert.ThrowsAsync<BackupException>(
            () => new BackupRestorer(file, made.Clock).RestoreAsync(to, null, setAside: true));

        Assert.Contains(why, refused.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(to));
    }

    private string Touched(string file, Func<ZipArchive, ZipArchiveEntry, byte[]?> change)
    {
        string made = Path.Combine(folder, Path.GetRandomFileName() + ".zip");
        using ZipArchive from = ZipFile.OpenRead(file);
        using ZipArchive to = ZipFile.Open(made, ZipArchiveMode.Create);
        foreach (ZipArchiveEntry entry in from.Entries)
        {
            if (change(from, entry) is not { } bytes)
                continue;

            using Stream stream = to.CreateEntry(entry.FullName).Open();
            stream.Write(bytes);
        }

        return made;
    }

    private static byte[] Bytes(ZipArchiveEntry entry)
    {
        using Stream stream = entry.Open();
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }

    private static async Task<(Guid Patient, Visit Visit)> SignedWithPhotographAsync(
        TestDatabase made, string photographs)
    {
        Photo photo = await new PhotoShelf(photographs).KeepAsync(new MemoryStream(Jpeg), "front");
        (Guid patient, Visit visit, _) = await made.ReadyToSignAsync();
        await using (PracticeContext db = made.Database.CreateDbContext())
        {
            Visit noted = await db.Visits.SingleAsync(one => one.Id == visit.Id);
            noted.Note(noted.Content with { Photos = Listing<Photo>.Of([photo]) }, Samples.Assistant);
            await db.SaveChangesAsync();
            visit = noted;
        }

        (Visit signed, _) = await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
        return (patient, signed);
    }
}
