using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Backups;

/// <summary>Makes one file of all records, while the program goes on running: the database as it stood at one moment,
/// and every photograph, with a digest of each.</summary>
/// <param name="database">Which records.</param>
/// <param name="photographs">Folder of the photographs.</param>
/// <param name="clock">The time.</param>
/// <remarks>SQLite is copied by its own online backup, which never sees half a transaction. Photographs are files that
/// never change and are only added: they are taken after the database, so that none is missing that it names.</remarks>
public sealed class BackupWriter(PracticeDatabase database, string photographs, TimeProvider clock)
{
    /// <summary>Writes the backup, and tries it by restoring it into a scratch folder.</summary>
    /// <param name="file">Where it goes; must not be there yet.</param>
    /// <param name="cancellation">Gives up; nothing is left then.</param>
    /// <returns>What it holds.</returns>
    /// <exception cref="BackupException">It cannot be made, or does not hold when tried.</exception>
    public async Task<BackupManifest> WriteAsync(string file, CancellationToken cancellation = default)
    {
        if (File.Exists(file))
        {
            throw new BackupException(
                $"There is a file {file} already.", "A backup is never written over another: give another name.");
        }

        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!); // a full path has a folder
        string scratch = Directory.CreateTempSubdirectory("archwright-backup-").FullName;
        string unfinished = file + ".part";
        try
        {
            BackupManifest manifest = await GatherAsync(scratch, unfinished, cancellation);
            BackupReport report = await new BackupReader(unfinished).TryAsync(scratch, cancellation);
            if (report.Problems.Count > 0)
            {
                throw new BackupException(
                    "The backup was written and does not hold: " + string.Join(" ", report.Problems),
                    "Make it again; if it happens again, look at the disk.");
            }

            File.Move(unfinished, file);
            return manifest;
        }
        finally
        {
            File.Delete(unfinished);
            SqliteConnection.ClearAllPools();
            Directory.Delete(scratch, recursive: true);
        }
    }

    private async Task<BackupManifest> GatherAsync(
        string scratch, string unfinished, CancellationToken cancellation)
    {
        await using PracticeContext db = database.CreateDbContext();
        bool isSqlite = db.Database.IsSqlite();
        string name = isSqlite ? BackupManifest.SqliteFile : BackupManifest.PostgresFile;
        string copy = Path.Combine(scratch, "copy-" + name);
        string connection = db.Database.GetConnectionString() ?? "";
        BackupCounts counts;
        if (isSqlite)
        {
            CopySqlite(connection, copy);
            counts = await CountAsync(PracticeDatabase.Sqlite(copy), cancellation);
        }
        else
        {
            counts = await CountAsync(database, cancellation);
            await PostgresTools.DumpAsync(connection, copy, cancellation);
        }

        List<BackupFile> files = [];
        await using FileStream stream = File.Create(unfinished);
        await using var zip = new ZipArchive(stream, ZipArchiveMode.Create);
        files.Add(await AddAsync(zip, copy, name, cancellation));
        foreach (string photo in Photographs())
        {
            files.Add(await AddAsync(
                zip, photo, BackupManifest.Photographs + Path.GetFileName(photo), cancellation));
        }

        var manifest = new BackupManifest
        {
            MadeAt = clock.GetUtcNow(),
            ProgramVersion = typeof(BackupWriter).Assembly
                .GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown",
            Database = isSqlite ? "sqlite" : "postgres",
            LastMigration = (await db.Database.GetAppliedMigrationsAsync(cancellation)).LastOrDefault() ?? "",
            Counts = counts,
            Files = files,
        };
        await using var writer = new StreamWriter(
            await zip.CreateEntry(BackupManifest.FileName).OpenAsync(cancellation));
        await writer.WriteAsync(manifest.ToJson().AsMemory(), cancellation);
        return manifest;
    }

    /// <summary>How many rows there are of what matters most.</summary>
    internal static async Task<BackupCounts> CountAsync(PracticeDatabase of, CancellationToken cancellation)
    {
        await using PracticeContext db = of.CreateDbContext();
        return new BackupCounts(
            await db.Patients.CountAsync(cancellation),
            await db.Visits.CountAsync(cancellation),
            await db.Visits.CountAsync(one => one.State == VisitState.Signed, cancellation),
            await db.Trail.CountAsync(cancellation));
    }

    private static void CopySqlite(string connection, string copy)
    {
        using var from = new SqliteConnection(connection);
        using var to = new SqliteConnection($"Data Source={copy};Pooling=False");
        from.Open();
        to.Open();
        from.BackupDatabase(to);
        // The copy is one file: what it writes ahead is written in.
        using SqliteCommand settle = to.CreateCommand();
        settle.CommandText = "PRAGMA journal_mode = DELETE";
        settle.ExecuteNonQuery();
    }

    private IEnumerable<string> Photographs() => Directory.Exists(photographs)
        ? Directory.GetFiles(photographs).Where(one => BackupReader.IsPhotograph(Path.GetFileName(one)))
            .Order(StringComparer.Ordinal)
        : [];

    private static async Task<BackupFile> AddAsync(
        ZipArchive zip, string path, string name, CancellationToken cancellation)
    {
        // Photographs are compressed already.
        ZipArchiveEntry entry = zip.CreateEntry(
            name, name.StartsWith(BackupManifest.Photographs, StringComparison.Ordinal)
                ? CompressionLevel.NoCompression : CompressionLevel.Fastest);
        await using FileStream from = File.OpenRead(path);
        await using (Stream to = await entry.OpenAsync(cancellation))
            await from.CopyToAsync(to, cancellation);
        from.Position = 0;
        return new BackupFile(
            name, from.Length, Convert.ToHexStringLower(await SHA256.HashDataAsync(from, cancellation)));
    }
}
