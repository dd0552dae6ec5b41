using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Archwright.Storage.Tests.Opening;
using Npgsql;

[assembly: AssemblyFixture(typeof(PostgresServer))]

namespace Archwright.Storage.Tests.Opening;

/// <summary>A PostgreSQL server of our own for the time of the tests: real, on this computer, in a folder that is
/// deleted afterwards. Where no PostgreSQL is installed its tests are skipped with the reason; on the build server,
/// which sets <c>ARCHWRIGHT_ALL_SERVERS</c>, they fail instead.</summary>
public sealed class PostgresServer : IAsyncLifetime
{
    private readonly int port = FreePort();
    private string? bin;
    private string folder = "";

    /// <summary>Why there is no server; null when there is one.</summary>
    public string? Missing { get; private set; }

    /// <summary>Makes a database and gives its connection string.</summary>
    public string MakeDatabase()
    {
        if (Missing is { } reason)
        {
            Assert.SkipUnless(Environment.GetEnvironmentVariable("ARCHWRIGHT_ALL_SERVERS") is "1", reason);
            Assert.Fail(reason);
        }

        string name = "t" + Guid.NewGuid().ToString("N");
        using var connection = new NpgsqlConnection(Connection("postgres"));
        connection.Open();
        using var command = new NpgsqlCommand($"CREATE DATABASE {name}", connection);
        command.ExecuteNonQuery();
        return Connection(name);
    }

    public ValueTask InitializeAsync()
    {
        bin = FindPrograms();
        if (bin is null)
        {
            Missing = "No PostgreSQL server on this computer (Debian: apt-get install postgresql).";
            return ValueTask.CompletedTask;
        }

        folder = Directory.CreateTempSubdirectory("archwright-postgres-").FullName;
        string data = Path.Combine(folder, "data");
        if (IsRoot)
            Run("chown", "postgres", folder);
        RunAsServer("initdb", "-D", data, "-A", "trust", "-U", "app", "--no-sync", "-E", "UTF8");
        RunAsServer(
            "pg_ctl", "-s", "-D", data, "-l", Path.Combine(folder, "log"), "-w",
            "-o", $"-p {port} -k {folder} -c listen_addresses=127.0.0.1 -c fsync=off -c max_connections=400", "start");
        return ValueTask.CompletedTask;
    }

    public ValueTask DisposeAsync()
    {
        if (bin is not null)
        {
            NpgsqlConnection.ClearAllPools();
            RunAsServer("pg_ctl", "-s", "-D", Path.Combine(folder, "data"), "-m", "immediate", "stop");
            Directory.Delete(folder, recursive: true);
        }

        return ValueTask.CompletedTask;
    }

    private static bool IsRoot => Environment.UserName == "root";

    private string Connection(string name) =>
        $"Host=127.0.0.1;Port={port.ToString(CultureInfo.InvariantCulture)};Username=app;Database={name};"
        + "Maximum Pool Size=20";

    private static string? FindPrograms()
    {
        const string debian = "/usr/lib/postgresql";
        IEnumerable<string> folders = Directory.Exists(debian)
            ? Directory.GetDirectories(debian).OrderDescending(StringComparer.Ordinal)
                .Select(version => Path.Combine(version, "bin"))
            : [];
        string[] path = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        return folders.Concat(path).FirstOrDefault(place => File.Exists(Path.Combine(place, "initdb"))
                                                            && File.Exists(Path.Combine(place, "pg_ctl")));
    }

    // A PostgreSQL server refuses to be run by root.
    private void RunAsServer(string program, params string[] arguments)
    {
        string path = Path.Combine(bin!, program); // only called once the programs are found
        if (IsRoot)
            Run("runuser", ["-u", "postgres", "--", path, .. arguments]);
        else
            Run(path, arguments);
    }

    // The output of pg_ctl is not read: the server that it starts would hold it open.
    private void Run(string program, params string[] arguments)
    {
        bool talks = !arguments.Contains("-s");
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder, RedirectStandardOutput = talks, UseShellExecute = false,
        };
        using Process process = Process.Start(start)
            ?? throw new InvalidOperationException($"{program} did not start.");
        if (talks)
            process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException(
                $"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}.");
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
