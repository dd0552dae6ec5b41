using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>Pictures of every screen for people to look at: <c>scripts/pictures.sh</c> runs this with
/// <c>ARCHWRIGHT_PICTURES</c> naming a folder. The few that the documents show go into its folder <c>few</c>, as tall
/// as the device.</summary>
[Trait("basis", "docs")]
public sealed class PicturesTests(PracticeApp app)
{
    private static readonly string[] Few =
    [
        "day-tablet-light", "chair-tablet-light", "space-tablet-dark", "course-tablet-light", "ladder-tablet-light",
        "bench-tablet-light", "answers-tablet-light", "texts-tablet-light", "stock-tablet-light",
        "settings-tablet-light",
        "policy-tablet-light", "programs-tablet-light", // what keeps records names a folder of this computer
    ];

    [Theory]
    [InlineData("tablet-light", 1180, 980, false)]
    [InlineData("tablet-dark", 1180, 980, true)]
    [InlineData("upright-light", 820, 1180, false)]
    [InlineData("phone-light", 390, 844, false)]
    [InlineData("phone-dark", 390, 844, true)]
    public async Task Every_screen_is_photographed(string name, int width, int height, bool dark)
    {
        string? folder = Environment.GetEnvironmentVariable("ARCHWRIGHT_PICTURES");
        Assert.SkipWhen(string.IsNullOrEmpty(folder), "Pictures are made where ARCHWRIGHT_PICTURES names a folder.");
        await using Screen screen = await app.OpenAsync(width, height, dark);
        var camera = new Camera(screen.Page, folder!, name); // the folder is named: see above
        await screen.Page.GotoAsync("/sign-in");
        await camera.ShootAsync("sign-in");
        await screen.SignInAsync("maren");
        await screen.Page.Locator(".day-line").Nth(3).GetByText("computing").WaitForAsync(
            new() { State = WaitForSelectorState.Hidden });
        await camera.ShootAsync("day");
        await ChairAsync(screen, camera);
        await PatientAsync(screen, camera);
        await PracticeAsync(screen, camera);
    }

    private static async Task ChairAsync(Screen screen, Camera camera)
    {
        IPage page = screen.Page;
        await screen.OpenChairAsync("Yusuf Adebanjo-Marsh");
        await page.Locator(".candidate").First.WaitForAsync();
        await page.Locator(".weeks").WaitForAsync();
        await camera.ShootAsync("chair");
        await screen.Button("Frontal").ClickAsync();
        await page.Locator("[data-tooth='13']").ClickAsync();
        await page.GetByLabel("occlusal in mm").WaitForAsync();
        await camera.ShootAsync("chair-frontal");
        if (await screen.Button("In space").CountAsync() > 0)
        {
            await screen.Button("In space").ClickAsync();
            await page.Locator(".space[data-drawn]").WaitForAsync();
            await page.WaitForTimeoutAsync(1_500);
            await camera.ShootAsync("space");
        }
    }

    private static async Task PatientAsync(Screen screen, Camera camera)
    {
        IPage page = screen.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Course", Exact = true }).ClickAsync();
        await page.Locator(".band").First.WaitForAsync();
        await page.GetByText("Looking ahead").First.WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        await camera.ShootAsync("course");
        await LadderAsync(page, camera);
        await page.GetByRole(AriaRole.Link, new() { Name = "Record", Exact = true }).ClickAsync();
        await page.Locator(".teeth").First.WaitForAsync();
        await camera.ShootAsync("record");
        string patient = new Uri(page.Url).AbsolutePath[..^"/record".Length];
        await page.GotoAsync(patient + "/book");
        await page.Locator(".fields").First.WaitForAsync();
        await camera.ShootAsync("book");
        await page.GotoAsync("/patient/new");
        await page.Locator(".fields").First.WaitForAsync();
        await camera.ShootAsync("new-patient");
    }

    // Computed once, in a minute or two; the record shows it from then on.
    private static async Task LadderAsync(IPage page, Camera camera)
    {
        const string upper = "section.ladder:has(#ladder-Upper)";
        ILocator ladder = page.Locator(upper);
        ILocator compute = ladder.GetByRole(AriaRole.Button, new() { Name = "Compute the ladder" });
        if (await compute.IsVisibleAsync())
            await compute.ClickAsync();
        await ladder.Locator(".sequence").First.WaitForAsync();
        await ladder.GetByRole(AriaRole.Button, new() { Name = "Compute anew" }).WaitForAsync();
        await camera.ShootAsync("ladder", upper);
    }

    private static async Task PracticeAsync(Screen screen, Camera camera)
    {
        foreach ((string path, string what, string sign) in new[]
                 {
                     ("/stock", "stock", "table"), ("/find?q=am", "find", ".found"),
                     ("/find?q=zz", "find-nobody", "[role=status]"), ("/settings", "settings", ".switch"),
                     ("/policy", "policy", ".history li"), ("/keeping", "keeping", "main h2"),
                     ("/programs", "programs", "main h1"), ("/account", "account", "main h1"),
                     ("/staff", "staff", "td"), ("/ceilings", "ceilings", ".sources li"),
                     ("/about", "about", "main h1"), ("/day/2020-01-01", "empty-day", "main h2"),
                     ("/nowhere", "not-found", "main h1"),
                     ("/answers", "answers", "article[data-ready=yes]"), ("/settings/texts", "texts", ".preview"),
                     ("/bench?wires=niti-016,ss-016,bti-016,ms-0175", "bench", "[data-computed]"),
                 })
        {
            await screen.Page.GotoAsync(path);
            await screen.Page.Locator(sign).First.WaitForAsync();
            if (what == "stock")
                await screen.Page.Locator("[data-basis]").WaitForAsync();
            await camera.ShootAsync(what, what == "stock" ? "section:has([data-basis])" : null);
        }
    }

    private sealed class Camera(IPage page, string folder, string name)
    {
        /// <param name="what">Which screen.</param>
        /// <param name="part">The part that the documents show; null for what the device shows.</param>
        public async Task ShootAsync(string what, string? part = null)
        {
            await page.WaitForTimeoutAsync(400);
            await page.EvaluateAsync("scrollTo(0, 0)");
            await page.ScreenshotAsync(new PageScreenshotOptions
            {
                Path = Path.Combine(folder, $"{what}-{name}.png"), FullPage = true,
            });
            if (!Few.Contains($"{what}-{name}"))
                return;

            string few = Path.Combine(folder, "few", $"app-{what}-{name}.png");
            if (part is null)
                await page.ScreenshotAsync(new PageScreenshotOptions { Path = few });
            else
                await page.Locator(part).ScreenshotAsync(new LocatorScreenshotOptions { Path = few });
        }
    }
}
