using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>Nobody is shut out: the checks of WCAG 2, levels A and AA, that a program can make, on every screen. Rests
/// on the axe engine, which is shown to find planted faults.</summary>
[Trait("basis", "independent")]
public sealed class AccessTests(PracticeApp app)
{
    internal static readonly AxeRunOptions Levels = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa"] },
    };

    [Theory]
    [InlineData(1180, 820, false)]
    [InlineData(1180, 820, true)]
    [InlineData(390, 844, false)]
    [InlineData(390, 844, true)]
    public async Task No_screen_has_a_violation_of_level_A_or_AA(int width, int height, bool dark)
    {
        await using Screen screen = await app.OpenAsync(width, height, dark);
        IPage page = screen.Page;
        await page.GotoAsync("/sign-in");
        await IsFreeAsync(page);
        await screen.SignInAsync("maren");
        await IsFreeAsync(page);
        await screen.OpenChairAsync("Hana Sugimori-Lund");
        await page.Locator(".candidate").First.WaitForAsync();
        await page.Locator("[data-tooth='12']").ClickAsync();
        await page.GetByLabel("occlusal in mm").WaitForAsync();
        await IsFreeAsync(page);
        if (await screen.Button("In space").CountAsync() > 0)
        {
            await screen.Button("In space").ClickAsync();
            await page.Locator(".space[data-drawn]").WaitForAsync();
            await IsFreeAsync(page);
        }

        await page.GetByRole(AriaRole.Link, new() { Name = "Course", Exact = true }).ClickAsync();
        await page.Locator("svg.chart").First.WaitForAsync();
        await IsFreeAsync(page);
        string patient = new Uri(page.Url).Segments[^1];
        foreach (string path in new[]
                 {
                     "/stock", "/find?q=am", "/about", "/account", "/day/2020-01-01", "/not-found",
                     "/patient/new", "/settings", "/staff", "/ceilings", $"/patient/{patient}/record",
                     $"/patient/{patient}/book", "/policy", "/programs", "/settings/texts", "/keeping", "/answers",
                     "/bench",
                 })
        {
            await page.GotoAsync(path);
            await page.Locator("main h1").First.WaitForAsync();
            await page.WaitForTimeoutAsync(300);
            await IsFreeAsync(page);
        }

        screen.IsClean();
    }

    [Fact]
    public async Task Planted_faults_are_found()
    {
        await using Screen screen = await app.OpenAsync();
        await screen.Page.SetContentAsync("<html lang='en'><title>t</title><main><img src='x'><input></main></html>");

        AxeResult found = await screen.Page.RunAxe(Levels);

        Assert.Equal(["image-alt", "label"], found.Violations.Select(one => one.Id).Order(StringComparer.Ordinal));
    }

    private static async Task IsFreeAsync(IPage page)
    {
        AxeResult found = await page.RunAxe(Levels);
        Assert.True(found.Violations.Length == 0, page.Url + "\n" + string.Join("\n", found.Violations.SelectMany(
            one => one.Nodes.Select(node => $"{one.Id}: {node.Html} {node.Any.FirstOrDefault()?.Message}"))));
    }
}
