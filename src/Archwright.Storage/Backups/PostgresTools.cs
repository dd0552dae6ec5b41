using System.ComponentModel;
using System.Diagnostics;
using Npgsql;

namespace Archwright.Storage.Backups;

/// <summary>The tools that PostgreSQL brings: pg_dump and pg_restore. A password goes to them by the environment, never
/// on the command line, which others can list.</summary>
internal static class PostgresTools
{
    private static readonly TimeSpan Patience = TimeSpan.FromHours(2);

    /// <summary>Writes a database into a file in the custom format.</summary>
    public static Task DumpAsync(string connection, string file, CancellationToken cancellation) => RunAsync(
        "pg_dump", connection, ["--format=custom", "--no-owner", "--no-privileges", $"--file={file}"], cancellation);

    /// <summary>Reads a dump into an empty database, whole or not at all.</summary>
    public static Task RestoreAsync(string connection, string file, CancellationToken cancellation)
    {
        string database = new NpgsqlConnectionStringBuilder(connection).Database ?? "";
        return RunAsync(
            "pg_restore", connection,
            ["--no-owner", "--no-privileges", "--exit-on-error", "--single-transaction", $"--dbname={database}", file],
            cancellation);
    }

    /// <summary>Reads a dump from beginning to end without a server.</summary>
    public static Task ReadThroughAsync(string file, CancellationToken cancellation)
    {
        string nowhere = OperatingSystem.IsWindows() ? "NUL" : "/dev/null";
        return RunAsync("pg_restore", null, ["--file=" + nowhere, file], cancellation);
    }

    private static async Task RunAsync(
        string tool, string? connection, IEnumerable<string> arguments, CancellationToken cancellation)
    {
        var start = new ProcessStartInfo(Find(tool), arguments)
        {
            RedirectStandardError = true, RedirectStandardOutput = true, UseShellExecute = false,
        };
        if (connection is not null)
            Tell(start, new NpgsqlConnectionStringBuilder(connection));
        try
        {
            using Process process = Process.Start(start)!; // null only when a running process is reused
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            patience.CancelAfter(Patience);
            Task<string> output = process.StandardOutput.ReadToEndAsync(patience.Token);
            string error = await process.StandardError.ReadToEndAsync(patience.Token);
            await output;
            await process.WaitForExitAsync(patience.Token);
            if (process.ExitCode != 0)
            {
                throw new BackupException(
                    $"{tool} ended with {process.ExitCode}: {error.Trim()}",
                    $"Check that {tool} is of the server's version or newer, and that the account may read it all.");
            }
        }
        catch (Win32Exception missing)
        {
            throw new BackupException(
                $"{tool} was not found on this computer.",
                "Install PostgreSQL's client tools (Debian: apt-get install postgresql-client), or have the server's "
                + "own backup save the database and copy the folder of the photographs beside it.", missing);
        }
    }

    private static void Tell(ProcessStartInfo start, NpgsqlConnectionStringBuilder to)
    {
        void Set(string name, string? value)
        {
            if (!string.IsNullOrEmpty(value))
                start.Environment[name] = value;
        }

        Set("PGHOST", to.Host);
        Set("PGPORT", to.Port.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Set("PGUSER", to.Username);
        Set("PGPASSWORD", to.Password);
        Set("PGDATABASE", to.Database);
    }

    // On Debian the tools of each server version stand in a folder of their own as well.
    private static string Find(string tool)
    {
        const string servers = "/usr/lib/postgresql";
        string? newest = Directory.Exists(servers)
            ? Directory.GetDirectories(servers)
                .OrderByDescending(one => int.TryParse(Path.GetFileName(one), out int version) ? version : 0)
                .Select(one => Path.Combine(one, "bin", tool)).FirstOrDefault(File.Exists)
            : null;
        return newest ?? tool;
    }
}
