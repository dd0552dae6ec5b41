using System.Text.Json;
using System.Text.Json.Serialization;

namespace Archwright.Storage.Backups;

/// <summary>A file inside a backup.</summary>
/// <param name="Path">Inside the backup: "photographs/….jpg".</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Sha256">Its digest, in hexadecimal.</param>
public sealed record BackupFile(string Path, long Bytes, string Sha256);

/// <summary>How many rows a backup holds of what matters most.</summary>
/// <param name="Patients">Patients.</param>
/// <param name="Visits">Visits.</param>
/// <param name="SignedVisits">Signed ones among them.</param>
/// <param name="TrailLines">Lines of the trail.</param>
public sealed record BackupCounts(int Patients, int Visits, int SignedVisits, int TrailLines);

/// <summary>What a backup says of itself.</summary>
public sealed record BackupManifest
{
    /// <summary>The word of <see cref="Format"/>.</summary>
    public const string FormatWord = "archwright-backup/1";

    /// <summary>Name of the manifest inside the backup.</summary>
    public const string FileName = "manifest.json";

    /// <summary>The database inside the backup, of SQLite.</summary>
    public const string SqliteFile = "practice.db";

    /// <summary>The database inside the backup, as pg_dump writes it.</summary>
    public const string PostgresFile = "practice.dump";

    /// <summary>Folder of the photographs inside the backup.</summary>
    public const string Photographs = "photographs/";

    /// <summary>Always <see cref="FormatWord"/>.</summary>
    public string Format { get; init; } = FormatWord;

    /// <summary>When it was made.</summary>
    public required DateTimeOffset MadeAt { get; init; }

    /// <summary>Version of the program that made it.</summary>
    public required string ProgramVersion { get; init; }

    /// <summary>sqlite or postgres.</summary>
    public required string Database { get; init; }

    /// <summary>The last migration of the database: which version of the program it belongs to.</summary>
    public required string LastMigration { get; init; }

    /// <summary>What it holds.</summary>
    public required BackupCounts Counts { get; init; }

    /// <summary>Every file, in order.</summary>
    public required IReadOnlyList<BackupFile> Files { get; init; }

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    };

    /// <summary>As JSON text.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options);

    /// <summary>From JSON text.</summary>
    /// <returns>Null when the text is no manifest of this format.</returns>
    public static BackupManifest? Of(string json)
    {
        try
        {
            BackupManifest? read = JsonSerializer.Deserialize<BackupManifest>(json, Options);
            return read?.Format == FormatWord ? read : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
