using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net.Http.Headers;
using System.Text;
using Archwright.Cli.Tests.Serving;
using Archwright.Practice.Clients;
using Archwright.Practice.People;
using Archwright.Storage.Desks;
using Archwright.Storage.Opening;

[assembly: AssemblyFixture(typeof(ServedPractice))]

namespace Archwright.Cli.Tests.Serving;

/// <summary>The demo practice, served by the program itself as a process; started by the first test that asks.
/// </summary>
public sealed class ServedPractice : IAsyncDisposable
{
    private readonly SemaphoreSlim _gate = new(1, 1);
    private Process? _server;
    private string _address = "";

    /// <summary>Every line that the program has written for whoever runs it: more than it usually writes.</summary>
    public ConcurrentQueue<string> Log { get; } = new();

    /// <summary>Folder of the records.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("archwright-api-").FullName;

    /// <summary>Where it listens.</summary>
    public async Task<Uri> AddressAsync()
    {
        await _gate.WaitAsync();
        try
        {
            if (_address.Length == 0)
                await StartAsync();
        }
        finally
        {
            _gate.Release();
        }

        return new Uri(_address);
    }

    /// <summary>The records themselves, beside the server.</summary>
    public async Task<PracticeDatabase> DatabaseAsync()
    {
        await AddressAsync();
        return PracticeDatabase.Sqlite(Directory.GetFiles(Folder, "demo-*.db").Single());
    }

    /// <summary>A new token.</summary>
    public async Task<(ApiClient Client, string Token)> TokenAsync(params ApiScope[] scopes) =>
        await new ClientDesk(await DatabaseAsync(), TimeProvider.System).MakeAsync(
            "Test", scopes, 1, new Actor(Guid.NewGuid(), "Dr Test", StaffRole.Orthodontist));

    /// <summary>Somebody who asks with a new token.</summary>
    public async Task<HttpClient> ClientAsync(params ApiScope[] scopes)
    {
        var client = new HttpClient { BaseAddress = await AddressAsync() };
        if (scopes.Length > 0)
        {
            (_, string token) = await TokenAsync(scopes);
            client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        }

        return client;
    }

    /// <summary>A body of JSON.</summary>
    public static StringContent Json(string text) => new(text, Encoding.UTF8, "application/json");

    /// <summary>One of the project's examples.</summary>
    public static string Example(string name)
    {
        using Stream stream = typeof(ServedPractice).Assembly.GetManifestResourceStream("examples/" + name)
            ?? throw new InvalidOperationException($"There is no example {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    public async ValueTask DisposeAsync()
    {
        if (_server is not null)
        {
            _server.Kill(entireProcessTree: true);
            await _server.WaitForExitAsync();
            _server.Dispose();
        }

        _gate.Dispose();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(Folder, recursive: true);
    }

    private async Task StartAsync()
    {
        _server = Process.Start(new ProcessStartInfo(
            "dotnet",
            [
                Path.Combine(AppContext.BaseDirectory, "archwright.dll"), "serve", "--demo", "--port", "0", "--data",
                Folder,
            ])
        {
            RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false,
            Environment = { ["Logging__LogLevel__Default"] = "Information" },
        })!; // null only when a running process is reused
        _server.ErrorDataReceived += (_, line) => Log.Enqueue(line.Data ?? "");
        _server.BeginErrorReadLine();
        while (await _server.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.StartsWith("http://", StringComparison.Ordinal))
            {
                _address = line;
                _ = _server.StandardOutput.BaseStream.CopyToAsync(Stream.Null);
                return;
            }
        }

        throw new InvalidOperationException("The app did not start: " + string.Join('\n', Log));
    }
}
