using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Backups;

/// <summary>What became of trying a backup.</summary>
/// <param name="Manifest">What it says of itself; null when it says nothing.</param>
/// <param name="Problems">Why it does not hold; empty when it does.</param>
public sealed record BackupReport(BackupManifest? Manifest, IReadOnlyList<string> Problems);

/// <summary>Tries and restores a backup. A file of which nobody knows where it comes from is taken for hostile: only
/// what the manifest names is unpacked, under names that a backup can have, and never more than it says.</summary>
/// <param name="file">The backup.</param>
public sealed partial class BackupReader(string file)
{
    /// <summary>Tries it: every digest, and, for SQLite, the restored database itself with its own check, its counts
    /// and every photograph that its visits name.</summary>
    /// <param name="scratch">An empty place.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="BackupException">PostgreSQL's tools are missing.</exception>
    public async Task<BackupReport> TryAsync(string scratch, CancellationToken cancellation = default)
    {
        string to = Path.Combine(scratch, "tried-" + Path.GetRandomFileName());
        Directory.CreateDirectory(to);
        try
        {
            List<string> problems = [];
            BackupManifest? manifest = await UnpackAsync(to, problems, cancellation);
            if (manifest is null || problems.Count > 0)
                return new BackupReport(manifest, problems);

            if (manifest.Database == "sqlite")
                await TrySqliteAsync(to, manifest, problems, cancellation);
            else
                await PostgresTools.ReadThroughAsync(
                    Path.Combine(to, BackupManifest.PostgresFile), cancellation);
            return new BackupReport(manifest, problems);
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            Directory.Delete(to, recursive: true);
        }
    }

    /// <summary>Unpacks it into an empty folder.</summary>
    /// <returns>What it says of itself; null when that cannot be read, with a problem.</returns>
    internal async Task<BackupManifest?> UnpackAsync(
        string to, List<string> problems, CancellationToken cancellation)
    {
        try
        {
            await using FileStream stream = File.OpenRead(file);
            await using var zip = new ZipArchive(stream, ZipArchiveMode.Read);
            if (await ManifestAsync(zip, cancellation) is not { } manifest)
            {
                problems.Add($"It holds no {BackupManifest.FileName} of the format {BackupManifest.FormatWord}.");
                return null;
            }

            foreach (BackupFile one in manifest.Files)
                await UnpackAsync(zip, one, to, problems, cancellation);
            string needed = manifest.Database == "sqlite" ? BackupManifest.SqliteFile : BackupManifest.PostgresFile;
            if (manifest.Files.All(one => one.Path != needed))
                problems.Add($"It names no {needed}.");
            return manifest;
        }
        catch (InvalidDataException)
        {
            problems.Add("It is no whole zip file: cut off, or something else.");
            return null;
        }
    }

    /// <summary>True for a name that a photograph can have.</summary>
    internal static bool IsPhotograph(string name) => PhotographName().IsMatch(name);

    private static async Task<BackupManifest?> ManifestAsync(ZipArchive zip, CancellationToken cancellation)
    {
        const int MostBytes = 64_000_000; // half a million photographs
        if (zip.GetEntry(BackupManifest.FileName) is not { Length: < MostBytes } entry)
            return null;

        using var reader = new StreamReader(await entry.OpenAsync(cancellation));
        return BackupManifest.Of(await reader.ReadToEndAsync(cancellation));
    }

    private static async Task UnpackAsync(
        ZipArchive zip, BackupFile one, string to, List<string> problems, CancellationToken cancellation)
    {
        bool isPhotograph = one.Path.StartsWith(BackupManifest.Photographs, StringComparison.Ordinal)
            && IsPhotograph(one.Path[BackupManifest.Photographs.Length..]);
        if (!isPhotograph && one.Path is not (BackupManifest.SqliteFile or BackupManifest.PostgresFile))
        {
            problems.Add($"It names a file that no backup holds: {one.Path}.");
            return;
        }

        if (zip.GetEntry(one.Path) is not { } entry)
        {
            problems.Add($"{one.Path} is missing.");
            return;
        }

        if (entry.Length != one.Bytes)
        {
            problems.Add($"{one.Path} has {entry.Length} bytes and should have {one.Bytes}.");
            return;
        }

        string path = Path.Combine(to, one.Path);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!); // below the folder given
        await using (Stream from = await entry.OpenAsync(cancellation))
        await using (FileStream target = File.Create(path))
            await from.CopyToAsync(target, cancellation);
        await using FileStream read = File.OpenRead(path);
        string digest = Convert.ToHexStringLower(await SHA256.HashDataAsync(read, cancellation));
        if (digest != one.Sha256)
            problems.Add($"{one.Path} is not what it was: its digest is another.");
    }

    private static async Task TrySqliteAsync(
        string folder, BackupManifest manifest, List<string> problems, CancellationToken cancellation)
    {
        string path = Path.Combine(folder, BackupManifest.SqliteFile);
        try
        {
            PracticeDatabase restored = PracticeDatabase.Sqlite(path);
            await using PracticeContext db = restored.CreateDbContext();
            List<string> check = await db.Database
                .SqlQueryRaw<string>("SELECT integrity_check AS Value FROM pragma_integrity_check")
                .ToListAsync(cancellation);
            if (check is not ["ok"])
                problems.Add("The database does not hold together: " + string.Join("; ", check.Take(3)));

            string last = (await db.Database.GetAppliedMigrationsAsync(cancellation)).LastOrDefault() ?? "";
            if (last != manifest.LastMigration)
                problems.Add($"The database is at {last} and should be at {manifest.LastMigration}.");
            if (await db.Database.GetPendingMigrationsAsync(cancellation) is { } pending && pending.Any())
                await restored.MigrateAsync(cancellation); // of an older program: it must come up to this one
            BackupCounts counts = await BackupWriter.CountAsync(restored, cancellation);
            if (counts != manifest.Counts)
                problems.Add($"It holds {counts} and should hold {manifest.Counts}.");
            await PhotographsAsync(db, folder, problems, cancellation);
        }
        catch (SqliteException broken)
        {
            problems.Add("The database cannot be opened: " + broken.Message);
        }
    }

    private static async Task PhotographsAsync(
        PracticeContext db, string folder, List<string> problems, CancellationToken cancellation)
    {
        int missing = 0;
        await foreach (Practice.Visits.Visit visit in db.Visits.AsNoTracking().AsAsyncEnumerable()
                           .WithCancellation(cancellation))
        {
            missing += visit.Content.Photos.Count(photo => !File.Exists(
                Path.Combine(folder, BackupManifest.Photographs, Path.GetFileName(photo.File))));
        }

        if (missing > 0)
            problems.Add($"{missing} photographs that visits name are missing.");
    }

    [GeneratedRegex("^[0-9a-f]{64}[.](jpg|png|webp)$")]
    private static partial Regex PhotographName();
}
