using System.CommandLine;
using Archwright.Storage.Backups;
using Archwright.Storage.Opening;
using Npgsql;

namespace Archwright.Cli.Running;

/// <summary>Where the records of a practice are: a folder, and a PostgreSQL server where one is named.</summary>
internal static class RecordsFolder
{
    /// <summary>The variable that names a PostgreSQL server: a connection string holds a password, which does not
    /// belong on a command line that others can list.</summary>
    public const string DatabaseVariable = "ARCHWRIGHT_DATABASE";

    /// <summary>The option.</summary>
    public static Option<string?> Option() => new("--data")
    {
        Description = "Folder of the records. Usual: a folder of your account on this computer.",
        HelpName = "FOLDER",
    };

    /// <summary>The folder that was named, or the usual one.</summary>
    public static string Of(string? named, bool demo = false)
    {
        if (named is not null)
            return named;

        string home = Environment.GetFolderPath(
            Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create);
        return Path.Combine(
            home.Length > 0 ? home : AppContext.BaseDirectory, "archwright", demo ? "demo" : "practice");
    }

    /// <summary>Connection string of the server; null where none is named.</summary>
    public static string? Postgres =>
        Environment.GetEnvironmentVariable(DatabaseVariable) is { Length: > 0 } named ? named : null;

    /// <summary>Folder of the photographs.</summary>
    public static string Photographs(string folder) => Path.Combine(folder, "photographs");

    /// <summary>The database; null where there is none.</summary>
    public static PracticeDatabase? Database(string folder)
    {
        if (Postgres is { } connection)
            return PracticeDatabase.Postgres(connection);

        string file = Path.Combine(folder, "practice.db");
        return File.Exists(file) ? PracticeDatabase.Sqlite(file) : null;
    }

    /// <summary>How many photographs a backup holds.</summary>
    public static int PhotographsIn(BackupManifest manifest) => manifest.Files.Count(
        one => one.Path.StartsWith(BackupManifest.Photographs, StringComparison.Ordinal));

    /// <summary>Does something with records; what is in the way is told with its mend.</summary>
    /// <exception cref="Refusal">It cannot be done; exit 2, or 1 where the backup itself does not hold.</exception>
    public static async Task<T> TellAsync<T>(Func<Task<T>> act)
    {
        try
        {
            return await act();
        }
        catch (BackupException refused)
        {
            throw new Refusal(refused.Message, refused.Mend);
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            throw new Refusal(
                "the disk refuses: " + refused.Message, "See to it that you may write there and that there is room.");
        }
        catch (NpgsqlException refused)
        {
            throw new Refusal(
                "the PostgreSQL server refuses: " + refused.Message, $"Check what {DatabaseVariable} says.");
        }
    }
}
