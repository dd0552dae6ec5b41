using System.Globalization;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Backups;

/// <summary>What was restored.</summary>
/// <param name="Manifest">What the backup says of itself.</param>
/// <param name="SetAside">Where the records lie that were there before; null when there were none.</param>
public sealed record Restored(BackupManifest Manifest, string? SetAside);

/// <summary>Puts a backup back. Records that are there are never written over: they are refused, or set aside under
/// another name when that is asked for.</summary>
/// <param name="file">The backup.</param>
/// <param name="clock">The time, for the name of what is set aside.</param>
public sealed class BackupRestorer(string file, TimeProvider clock)
{
    /// <summary>Restores into a folder, and, for PostgreSQL, into an empty database.</summary>
    /// <param name="folder">Folder of the records.</param>
    /// <param name="postgres">Connection string of an empty database; null for SQLite.</param>
    /// <param name="setAside">Whether records that are there may be set aside.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="BackupException">The backup does not hold, or something is in the way.</exception>
    public async Task<Restored> RestoreAsync(
        string folder, string? postgres, bool setAside, CancellationToken cancellation = default)
    {
        if (!File.Exists(file))
            throw new BackupException($"There is no file {file}.", "Check the name.");

        Directory.CreateDirectory(folder);
        // Beside the target, so that moving is a change of names on one disk.
        string scratch = Path.Combine(folder, ".restoring-" + Path.GetRandomFileName());
        Directory.CreateDirectory(scratch);
        try
        {
            BackupManifest manifest = await TriedAsync(scratch, cancellation);
            bool isSqlite = manifest.Database == "sqlite";
            if (isSqlite != postgres is null)
                throw Mismatch(isSqlite);

            string unpacked = Path.Combine(scratch, "whole");
            Directory.CreateDirectory(unpacked);
            await new BackupReader(file).UnpackAsync(unpacked, [], cancellation);
            string? aside = isSqlite ? SetAside(folder, setAside) : null;
            if (isSqlite)
                File.Move(Path.Combine(unpacked, BackupManifest.SqliteFile), Database(folder));
            else
                await IntoPostgresAsync(unpacked, postgres ?? "", cancellation);
            Photographs(unpacked, folder);
            return new Restored(manifest, aside);
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            Directory.Delete(scratch, recursive: true);
        }
    }

    private static string Database(string folder) => Path.Combine(folder, BackupManifest.SqliteFile);

    private async Task<BackupManifest> TriedAsync(string scratch, CancellationToken cancellation)
    {
        BackupReport report = await new BackupReader(file).TryAsync(scratch, cancellation);
        return report is { Manifest: { } manifest, Problems.Count: 0 } ? manifest : throw new BackupException(
            "The backup does not hold: " + string.Join(" ", report.Problems),
            "Nothing was changed. Take another backup.");
    }

    private static BackupException Mismatch(bool isSqlite) => isSqlite
        ? new BackupException(
            "The backup is of a SQLite file, and ARCHWRIGHT_DATABASE names a PostgreSQL server.",
            "Take the variable away to restore into the folder. Moving from one to the other is not part of this.")
        : new BackupException(
            "The backup is of a PostgreSQL server, and none is named.",
            "Make an empty database and name it in ARCHWRIGHT_DATABASE.");

    private string? SetAside(string folder, bool allowed)
    {
        if (!File.Exists(Database(folder)))
            return null;

        if (!allowed)
        {
            throw new BackupException(
                $"There are records in {folder} already.",
                "Give another folder with --data; or end the app and give --set-aside, which keeps them under another "
                + "name. Nothing was changed.");
        }

        string stamp = clock.GetLocalNow().ToString("yyyy-MM-dd-HHmmss", CultureInfo.InvariantCulture);
        string aside = Path.Combine(folder, $"practice-before-{stamp}.db");
        try
        {
            if (!IsAlone(Database(folder)))
                throw Busy(folder, null);

            File.Move(Database(folder), aside);
        }
        catch (Exception busy) when (busy is SqliteException or IOException)
        {
            throw Busy(folder, busy);
        }

        return aside;
    }

    // What was written ahead goes into the file first. SQLite changes to this way of writing only when nobody else has
    // the file open; otherwise it says that it stays with the other.
    private static bool IsAlone(string path)
    {
        using var open = new SqliteConnection($"Data Source={path};Pooling=False;Default Timeout=5");
        open.Open();
        using SqliteCommand settle = open.CreateCommand();
        settle.CommandText = "PRAGMA journal_mode = DELETE";
        return settle.ExecuteScalar() is "delete";
    }

    private static BackupException Busy(string folder, Exception? said) => new(
        $"The records in {folder} are in use.", "End the app first. Nothing was changed.", said);

    private static async Task IntoPostgresAsync(string unpacked, string connection, CancellationToken cancellation)
    {
        await using (PracticeContext db = PracticeDatabase.Postgres(connection).CreateDbContext())
        {
            int tables = (await db.Database.SqlQueryRaw<int>(
                "SELECT count(*)::int AS \"Value\" FROM information_schema.tables WHERE table_schema = 'public'")
                .ToListAsync(cancellation)).Single();
            if (tables > 0)
            {
                throw new BackupException(
                    "The database that ARCHWRIGHT_DATABASE names is not empty.",
                    "Make a new, empty one and name that. Nothing was changed.");
            }
        }

        await PostgresTools.RestoreAsync(
            connection, Path.Combine(unpacked, BackupManifest.PostgresFile), cancellation);
    }

    // A photograph is named by its digest: one that is there already is the same.
    private static void Photographs(string unpacked, string folder)
    {
        string from = Path.Combine(unpacked, BackupManifest.Photographs);
        if (!Directory.Exists(from))
            return;

        string to = Path.Combine(folder, BackupManifest.Photographs);
        Directory.CreateDirectory(to);
        foreach (string photo in Directory.GetFiles(from))
        {
            string target = Path.Combine(to, Path.GetFileName(photo));
            if (!File.Exists(target))
                File.Move(photo, target);
        }
    }
}
