using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>On a phone everything reads from top to bottom. Rests on the widths that the browser gives.</summary>
[Trait("basis", "law")]
public sealed class PhoneTests(PracticeApp app)
{
    // Names what is wider than its place: the page, or a part that would scroll by itself. The frontal drawing is left
    // out, whose teeth would be too small for a finger.
    private const string TooWide = """
        () => [document.documentElement, ...document.querySelectorAll('.scroll, .card, main')]
          .filter(part => part.scrollWidth > part.clientWidth + 1)
          .map(part => `${part.tagName} ${part.className} ${part.getAttribute('aria-label') ?? ''}`).join('; ')
        """;

    [Theory]
    [InlineData("/ceilings", ".sources li")]
    [InlineData("/policy", ".history li")]
    [InlineData("/bench?wires=niti-016,ss-016,bti-016,ms-0175", "[data-computed]")]
    [InlineData("/stock", "[data-basis]")]
    [InlineData("/programs", "main h1")]
    [InlineData("/keeping", "main h2")]
    [InlineData("/staff", "td")]
    [InlineData("/settings", ".switch")]
    public async Task No_screen_of_the_practice_scrolls_sideways(string path, string sign)
    {
        await using Screen screen = await app.OpenAsync(390, 844);
        await screen.SignInAsync("maren");

        await screen.Page.GotoAsync(path);
        await screen.Page.Locator(sign).First.WaitForAsync();

        Assert.Equal("", await screen.Page.EvaluateAsync<string>(TooWide));
        screen.IsClean();
    }

    [Fact]
    public async Task Neither_chair_nor_course_nor_record_scrolls_sideways()
    {
        await using Screen screen = await app.OpenAsync(390, 844);
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        await screen.OpenChairAsync("Yusuf Adebanjo-Marsh");
        await page.Locator(".candidate").First.WaitForAsync();
        await page.Locator("summary", new() { HasText = "Forces tooth by tooth" }).ClickAsync();
        await page.Locator(".loads td").First.WaitForAsync();
        Assert.Equal("", await page.EvaluateAsync<string>(TooWide));

        await page.GetByRole(AriaRole.Link, new() { Name = "Course", Exact = true }).ClickAsync();
        await page.Locator("svg.chart").First.WaitForAsync();
        Assert.Equal("", await page.EvaluateAsync<string>(TooWide));

        await page.GetByRole(AriaRole.Link, new() { Name = "Record", Exact = true }).ClickAsync();
        await page.Locator(".teeth").First.WaitForAsync();
        Assert.Equal("", await page.EvaluateAsync<string>(TooWide));
        screen.IsClean();
    }

    [Fact]
    public async Task What_is_too_wide_is_found()
    {
        await using Screen screen = await app.OpenAsync(390, 844);
        await screen.Page.SetContentAsync(
            "<div class='scroll' style='overflow-x:auto;width:300px'><div style='width:400px'>wide</div></div>");

        Assert.Equal("DIV scroll ", await screen.Page.EvaluateAsync<string>(TooWide));
    }
}
