using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>Pictures of every screen for people to look at: run with <c>ARCHWRIGHT_PICTURES</c> naming a folder.
/// </summary>
[Trait("basis", "docs")]
public sealed class PicturesTests(PracticeApp app)
{
    [Theory]
    [InlineData("tablet-light", 1180, 820, false)]
    [InlineData("tablet-dark", 1180, 820, true)]
    [InlineData("upright-light", 820, 1180, false)]
    [InlineData("phone-light", 390, 844, false)]
    [InlineData("phone-dark", 390, 844, true)]
    public async Task Every_screen_is_photographed(string name, int width, int height, bool dark)
    {
        string? folder = Environment.GetEnvironmentVariable("ARCHWRIGHT_PICTURES");
        Assert.SkipWhen(string.IsNullOrEmpty(folder), "Pictures are made where ARCHWRIGHT_PICTURES names a folder.");
        await using Screen screen = await app.OpenAsync(width, height, dark);
        IPage page = screen.Page;

        await page.GotoAsync("/sign-in");
        await ShootAsync("sign-in");
        await screen.SignInAsync("maren");
        await page.WaitForTimeoutAsync(8_000);
        await ShootAsync("day");
        await screen.OpenChairAsync("Yusuf Adebanjo-Marsh");
        await page.Locator(".candidate").First.WaitForAsync(new() { Timeout = 120_000 });
        await page.Locator(".weeks").WaitForAsync(new() { Timeout = 60_000 });
        await ShootAsync("chair");
        await screen.Button("Frontal").ClickAsync();
        await page.Locator("[data-tooth='13']").ClickAsync();
        await page.WaitForTimeoutAsync(500);
        await ShootAsync("chair-frontal");
        await page.GetByRole(AriaRole.Link, new() { Name = "Course", Exact = true }).ClickAsync();
        await page.Locator(".band").First.WaitForAsync(new() { Timeout = 120_000 });
        await ShootAsync("course");
        await page.GotoAsync("/stock");
        await page.Locator("table").WaitForAsync();
        await ShootAsync("stock");
        await page.GotoAsync("/find?q=am");
        await page.Locator(".found").WaitForAsync();
        await ShootAsync("find");
        await page.GotoAsync("/about");
        await page.GetByText("Intended use.").WaitForAsync();
        await ShootAsync("about");

        async Task ShootAsync(string what) => await page.ScreenshotAsync(new PageScreenshotOptions
        {
            Path = Path.Combine(folder!, $"{what}-{name}.png"), FullPage = true, // the folder is named: see above
        });
    }
}
