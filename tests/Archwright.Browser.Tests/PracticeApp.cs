using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Archwright.Browser.Tests;
using Archwright.Practice.Demo;
using Archwright.Storage.Opening;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(PracticeApp))]

namespace Archwright.Browser.Tests;

/// <summary>The demo practice served by the program itself as a process, and a real Chromium. Where no browser is
/// installed its tests are skipped with the reason; on the build server, which sets <c>ARCHWRIGHT_ALL_SERVERS</c>,
/// they fail instead.</summary>
public sealed class PracticeApp : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("archwright-app-").FullName;
    private static readonly string[] Levels = ["warn:", "fail:", "crit:"];

    private const int MostShown = 60;

    private readonly ConcurrentQueue<string> complaints = new();
    private readonly ConcurrentQueue<string> log = new();
    private Process? server;
    private IPlaywright? playwright;
    private IBrowser? browser;
    private string? missing;

    /// <summary>Where the app listens.</summary>
    public string Address { get; private set; } = "";

    /// <summary>From the start of the program to its address.</summary>
    public TimeSpan TimeToAddress { get; private set; }

    /// <summary>The records themselves, beside the app.</summary>
    public PracticeDatabase Records => PracticeDatabase.Sqlite(Directory.GetFiles(folder, "demo-*.db").Single());

    /// <summary>Every line that the program has written for whoever runs it.</summary>
    public IReadOnlyCollection<string> Log => log;

    /// <summary>The served process.</summary>
    public Process Server => server ?? throw new InvalidOperationException("The app is not served.");

    public async ValueTask InitializeAsync()
    {
        string chromium = Environment.GetEnvironmentVariable("CHROMIUM") ?? "/usr/bin/chromium";
        if (!File.Exists(chromium))
        {
            missing = $"No Chromium at {chromium} (Debian: apt-get install chromium; or name one in CHROMIUM).";
            return;
        }

        await ServeAsync();
        Assertions.SetDefaultExpectTimeout(Screen.Patience); // the usual five seconds are none on a busy machine
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = chromium,
            Headless = true,
            Args =
            [
                "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync", "--use-angle=swiftshader",
                "--enable-unsafe-swiftshader",
            ],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
            await browser.DisposeAsync();
        playwright?.Dispose();
        if (server is not null)
        {
            server.Kill(entireProcessTree: true);
            await server.WaitForExitAsync();
            server.Dispose();
        }

        Directory.Delete(folder, recursive: true);
        // Whatever the tests did, the app had nothing to warn of and no fault went unhandled.
        Assert.True(complaints.IsEmpty, string.Join("\n", complaints.Take(MostShown)));
        // And whatever was looked at, nobody's name stands in a line for whoever runs it.
        string[] names = [.. DemoPractice.Make(DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime))
            .Patients.Select(one => one.FamilyName)];
        Assert.DoesNotContain(log, line => names.Any(one => line.Contains(one, StringComparison.OrdinalIgnoreCase)));
    }

    /// <summary>Opens a screen of its own, with its own cookies.</summary>
    /// <param name="width">Across [px].</param>
    /// <param name="height">Down [px].</param>
    /// <param name="dark">Whether the device likes it dark.</param>
    public async Task<Screen> OpenAsync(int width = 1180, int height = 820, bool dark = false)
    {
        if (missing is { } reason)
        {
            Assert.SkipUnless(Environment.GetEnvironmentVariable("ARCHWRIGHT_ALL_SERVERS") is "1", reason);
            Assert.Fail(reason);
        }

        IBrowserContext context = await browser!.NewContextAsync(new BrowserNewContextOptions // there unless missing
        {
            BaseURL = Address,
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            ReducedMotion = ReducedMotion.Reduce,
            HasTouch = true,
        });
        return new Screen(await context.NewPageAsync(), new Uri(Address));
    }

    // What the app logs at level warning and above: the line with the level, and the one with the words after it.
    private void Complained(string? line)
    {
        if (line is null || (complaints.IsEmpty && !IsComplaint(line)))
            return;

        complaints.Enqueue(line);
    }

    private static bool IsComplaint(string line) => Levels.Any(one => line.StartsWith(one, StringComparison.Ordinal));

    /// <summary>A telephone that runs no script, without cookies.</summary>
    public async Task<IBrowserContext> OldPhoneAsync() => await browser!.NewContextAsync(new() // opened before: there
    {
        BaseURL = Address, JavaScriptEnabled = false, ViewportSize = new ViewportSize { Width = 320, Height = 568 },
    });

    private async Task ServeAsync()
    {
        long began = Stopwatch.GetTimestamp();
        var start = new ProcessStartInfo(
            "dotnet",
            [
                Path.Combine(AppContext.BaseDirectory, "archwright.dll"), "serve", "--demo", "--port", "0", "--data",
                folder,
            ])
        {
            RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false,
        };
        server = Process.Start(start) ?? throw new InvalidOperationException("The app did not start.");
        server.ErrorDataReceived += (_, line) =>
        {
            log.Enqueue(line.Data ?? "");
            Complained(line.Data);
        };
        server.BeginErrorReadLine();
        while (await server.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.StartsWith("http://", StringComparison.Ordinal))
            {
                Address = line;
                break;
            }
        }

        TimeToAddress = Stopwatch.GetElapsedTime(began);
        if (Address.Length == 0)
        {
            throw new InvalidOperationException(
                $"The app ended with {server.ExitCode.ToString(CultureInfo.InvariantCulture)}.");
        }

        _ = server.StandardOutput.BaseStream.CopyToAsync(Stream.Null);
    }
}
