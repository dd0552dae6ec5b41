using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>Whose record it is, and that everybody is invented, can be read on every screen. Rests on the screens
/// themselves.</summary>
[Trait("basis", "law")]
public sealed partial class WhoTests(PracticeApp app)
{
    [Theory]
    [InlineData(1180, 820)]
    [InlineData(390, 844)]
    public async Task Name_age_and_birth_date_stay_in_view_on_every_screen_of_a_patient(int width, int height)
    {
        await using Screen screen = await app.OpenAsync(width, height);
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        await screen.OpenChairAsync("Hana Sugimori-Lund");
        string visit = new Uri(page.Url).AbsolutePath;
        await StaysAsync(page);
        await page.GetByRole(AriaRole.Link, new() { Name = "Course", Exact = true }).ClickAsync();
        await page.Locator("svg.chart").First.WaitForAsync();
        string patient = new Uri(page.Url).AbsolutePath;
        await StaysAsync(page);
        foreach (string path in new[] { $"{patient}/record", $"{patient}/book", $"{visit}/leaflet" })
        {
            await page.GotoAsync(path);
            await page.Locator(".patient-name").WaitForAsync();
            await StaysAsync(page);
        }

        screen.IsClean();
    }

    [Fact]
    public async Task A_demo_says_on_every_screen_that_everybody_in_it_is_invented()
    {
        await using Screen screen = await app.OpenAsync();
        await screen.SignInAsync("maren");
        foreach (string path in new[]
                 {
                     "/", "/stock", "/find?q=am", "/about", "/account", "/patient/new", "/settings", "/staff",
                     "/ceilings", "/policy", "/programs", "/settings/texts", "/keeping", "/answers", "/bench",
                 })
        {
            await screen.Page.GotoAsync(path);
            await screen.Page.Locator("main h1").First.WaitForAsync();
            await Assertions.Expect(screen.Page.Locator(".demo")).ToContainTextAsync("Everybody in it is invented");
        }
    }

    private static async Task StaysAsync(IPage page)
    {
        ILocator name = page.Locator(".patient-name");
        await Assertions.Expect(name.Locator("h1")).ToHaveTextAsync(NameAndAge());
        await Assertions.Expect(name).ToContainTextAsync(Born());
        await page.EvaluateAsync("scrollTo(0, document.documentElement.scrollHeight)");
        await Assertions.Expect(name).ToBeInViewportAsync(new() { Ratio = 1 });
        // In view and not behind something.
        Assert.True(await name.EvaluateAsync<bool>(
            "it => { const box = it.querySelector('h1').getBoundingClientRect();"
            + " return it.contains(document.elementFromPoint(box.left + 4, box.top + box.height / 2)); }"));
    }

    [GeneratedRegex(@"^Hana Sugimori-Lund, \d{1,2}$")]
    private static partial Regex NameAndAge();

    [GeneratedRegex(@"born \d{1,2} [A-Z][a-z]{2} \d{4}")]
    private static partial Regex Born();
}
