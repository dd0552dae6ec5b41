using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Archwright.Practice.Demo;
using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>Figures of the served app, printed and not judged: run with <c>ARCHWRIGHT_FIGURES=1</c> on a machine that
/// does nothing else.</summary>
[Trait("basis", "ours")]
public sealed class FiguresTests(PracticeApp app)
{
    private const string WatchDrag = """
        () => {
          const svg = document.querySelector('svg.arch');
          window.waits = [];
          let moved = 0;
          svg.addEventListener('pointermove', () => { moved ||= performance.now(); }, { capture: true });
          new MutationObserver(() => requestAnimationFrame(() => {
            if (moved) { window.waits.push(performance.now() - moved); moved = 0; }
          })).observe(svg, { attributes: true, subtree: true, childList: true });
        }
        """;

    private const int Moves = 60;

    private static readonly string[] Users = ["maren", "teodor", "priya", "callum", "gwen"];

    [Fact]
    public async Task Start_memory_pages_drag_and_fifty_at_once()
    {
        Assert.SkipUnless(
            Environment.GetEnvironmentVariable("ARCHWRIGHT_FIGURES") is "1",
            "Figures are taken with ARCHWRIGHT_FIGURES=1.");
        await using Screen screen = await app.OpenAsync();
        Say($"start to address, demo made anew: {app.TimeToAddress.TotalSeconds:0.0} s");
        var first = Stopwatch.StartNew();
        await screen.Page.GotoAsync("/sign-in");
        Say($"first page after it: {first.Elapsed.TotalSeconds:0.00} s");
        await screen.SignInAsync("maren");
        await PagesAsync(screen);
        await DragAsync(screen);
        app.Server.Refresh();
        Say($"memory of the app, one screen: {app.Server.WorkingSet64 / 1048576} MB");
        await FiftyAsync();
        app.Server.Refresh();
        Say($"memory of the app, after fifty people: {app.Server.WorkingSet64 / 1048576} MB");
        await FiftyLiveAsync();
        app.Server.Refresh();
        Say($"memory of the app, fifty live screens: {app.Server.WorkingSet64 / 1048576} MB");
    }

    // From the tap on a link to the heading of the page.
    private static async Task PagesAsync(Screen screen)
    {
        (string Path, string Sign)[] pages =
        [
            ("/", "ol.day"), ("/stock", "table"), ("/find?q=am", ".found"), ("/ceilings", ".sources"),
            ("/settings", "h1:has-text('Settings')"), ("/about", "h1"),
        ];
        List<double> waits = [];
        for (int round = 0; round < 10; round++)
        {
            foreach ((string path, string sign) in pages)
            {
                var wait = Stopwatch.StartNew();
                await screen.Page.GotoAsync(path);
                await screen.Page.Locator(sign).First.WaitForAsync();
                waits.Add(wait.Elapsed.TotalMilliseconds);
            }
        }

        Tell("page, loaded whole", waits);
    }

    private async Task DragAsync(Screen screen)
    {
        IPage page = screen.Page;
        await page.GotoAsync("/");
        await screen.OpenChairAsync("Fatima Zahrani-Boult");
        await page.Locator("svg[data-fingers='ready']").WaitForAsync();
        await page.Locator(".candidate").First.WaitForAsync();
        await page.WaitForTimeoutAsync(5_000);
        await page.EvaluateAsync(WatchDrag);
        LocatorBoundingBoxResult box = (await page.Locator("[data-tooth='12'] .slot").BoundingBoxAsync())!; // on screen
        float x = box.X + box.Width / 2;
        float y = box.Y + box.Height / 2;
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        double work = await WorkAsync(async () =>
        {
            for (int i = 1; i <= Moves; i++)
            {
                await page.Mouse.MoveAsync(x, y + 6 + (i % 20) * 0.7f);
                await page.WaitForTimeoutAsync(250);
            }
        });
        await page.Mouse.UpAsync();
        JsonElement? waits = await page.EvaluateAsync("window.waits");
        Tell("finger to forces", [.. waits!.Value.EnumerateArray().Select(one => one.GetDouble())]);
        Say($"of the processor by the app: {work / Moves:0} ms a move");
    }

    // Fifty people sign in and read pages at the same time, without browsers: those would measure themselves.
    private async Task FiftyAsync()
    {
        var signIns = new ConcurrentQueue<double>();
        var pages = new ConcurrentQueue<double>();
        await Task.WhenAll(Enumerable.Range(0, 50).Select(async i =>
        {
            using var client = new HttpClient { BaseAddress = new Uri(app.Address) };
            var wait = Stopwatch.StartNew();
            string form = await client.GetStringAsync("/sign-in");
            Match token = Regex.Match(form, "name=\"__RequestVerificationToken\" value=\"([^\"]+)\"");
            using HttpResponseMessage day = await client.PostAsync(
                "/account/sign-in",
                new FormUrlEncodedContent(new Dictionary<string, string>
                {
                    ["__RequestVerificationToken"] = token.Groups[1].Value, ["to"] = "/account",
                    ["user"] = Users[i % Users.Length], ["password"] = DemoPractice.Password,
                }));
            Assert.Contains("Signed in as", await day.Content.ReadAsStringAsync(), StringComparison.Ordinal);
            signIns.Enqueue(wait.Elapsed.TotalMilliseconds);
            for (int round = 0; round < 20; round++)
            {
                wait.Restart();
                await client.GetStringAsync("/account");
                pages.Enqueue(wait.Elapsed.TotalMilliseconds);
            }
        }));
        Tell("fifty at once: sign-in (two pages and a password)", [.. signIns]);
        Tell("fifty at once: page", [.. pages]);
    }

    // Fifty browsers with a live screen each turn the pages of the diary at the same moment. They run on this machine
    // too, so that what is told is no less than what fifty tablets would see.
    private async Task FiftyLiveAsync()
    {
        List<Screen> screens = [];
        try
        {
            for (int i = 0; i < 50; i++)
            {
                screens.Add(await app.OpenAsync());
                await screens[i].SignInAsync(Users[i % Users.Length]);
            }

            var turns = new ConcurrentQueue<double>();
            double work = 0;
            for (int round = 0; round < 4; round++)
            {
                string way = round % 2 == 0 ? "The day after" : "The day before";
                work += await WorkAsync(() => Task.WhenAll(
                    screens.Select(async screen => turns.Enqueue(await TurnAsync(screen.Page, way)))));
            }

            Tell("fifty live screens at once: another day", [.. turns]);
            Say($"of the processor by the app: {work / turns.Count:0} ms a turn; the rest is the browsers'");
        }
        finally
        {
            foreach (Screen screen in screens)
                await screen.DisposeAsync();
        }
    }

    // What the app takes of the processor, on all cores, while something is done [ms].
    private async Task<double> WorkAsync(Func<Task> done)
    {
        app.Server.Refresh();
        TimeSpan before = app.Server.TotalProcessorTime;
        await done();
        app.Server.Refresh();
        return (app.Server.TotalProcessorTime - before).TotalMilliseconds;
    }

    // From the tap to the heading of the other day.
    private static async Task<double> TurnAsync(IPage page, string way)
    {
        string before = await page.Locator("h1").InnerTextAsync();
        var wait = Stopwatch.StartNew();
        await page.GetByLabel(way, new() { Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("h1")).Not.ToHaveTextAsync(before);
        return wait.Elapsed.TotalMilliseconds;
    }

    private static void Tell(string what, IReadOnlyList<double> waits)
    {
        double[] sorted = [.. waits.Order()];
        (double middle, double late) = (sorted[sorted.Length / 2], sorted[(int)(0.95 * (sorted.Length - 1))]);
        Say($"{what}: median {middle:0} ms, p95 {late:0} ms, {sorted.Length} of them");
    }

    private static void Say(FormattableString words) =>
        TestContext.Current.TestOutputHelper?.WriteLine(words.ToString(CultureInfo.InvariantCulture));
}
