using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>How a screen looks, to a program and to people.</summary>
internal static class Looks
{
    /// <summary>No violation of WCAG 2, levels A and AA, that the axe engine finds.</summary>
    public static async Task AreFreeAsync(IPage page)
    {
        AxeResult found = await page.RunAxe(AccessTests.Levels);
        Assert.True(found.Violations.Length == 0, page.Url + "\n" + string.Join("\n", found.Violations.SelectMany(
            one => one.Nodes.Select(node => $"{one.Id}: {node.Html} {node.Any.FirstOrDefault()?.Message}"))));
    }

    /// <summary>A picture of the whole page, where <c>ARCHWRIGHT_PICTURES</c> names a folder; of what the device shows
    /// for the documents, where the name is among the few.</summary>
    public static async Task ShootAsync(IPage page, string name, bool forDocuments = false)
    {
        if (Environment.GetEnvironmentVariable("ARCHWRIGHT_PICTURES") is not { Length: > 0 } folder)
            return;

        await page.EvaluateAsync("scrollTo(0, 0)");
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), FullPage = true });
        if (forDocuments && Directory.Exists(Path.Combine(folder, "few")))
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, "few", $"app-{name}.png") });
    }
}
