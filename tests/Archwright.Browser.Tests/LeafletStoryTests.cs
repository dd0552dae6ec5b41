using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>A leaflet from its release to the patient's telephone and back. Rests on what a private link must be, and
/// on the axe engine.</summary>
[Collection("texts")] // the languages offered are one setting for all
[Trait("basis", "law")]
public sealed partial class LeafletStoryTests(PracticeApp app)
{
    private const string Patient = "Yusuf Adebanjo-Marsh";

    // More than one address may ask in a minute.
    private const int TooOften = 70;

    [Fact]
    public async Task A_leaflet_is_released_read_on_a_phone_answered_and_its_link_taken_back()
    {
        await using Screen staff = await app.OpenAsync();
        IPage page = staff.Page;
        await staff.SignInAsync("maren");
        string visit = await LastSignedAsync(page);
        await page.GotoAsync(visit + "/leaflet");
        await page.GetByText("None yet. Nothing reaches a patient before.").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "العربية" }).ClickAsync();
        await page.GetByText("No speaker has reviewed the words in Arabic yet.").WaitForAsync();
        await IsFreeAsync(page);
        await ShootAsync(page, "leaflet-desk-ar");
        await staff.Button("English").ClickAsync();
        await page.GetByText("Reading grade").WaitForAsync();
        await staff.Button("Release this leaflet").ClickAsync();
        await page.GetByText("Released. It may be printed").WaitForAsync();

        string link = await LinkAsync(staff);
        string paper = (await page.Locator("a[href$='.pdf']").First.GetAttributeAsync("href"))!; // the link is there
        byte[] printed = await (await page.APIRequest.GetAsync(paper)).BodyAsync();
        Assert.Equal("%PDF"u8, printed.AsSpan(0, 4));
        await IsFreeAsync(page);
        await ShootAsync(page, "leaflet-desk");

        await ReadOnAPhoneAsync(link);
        await page.GotoAsync("/");
        await staff.OpenChairAsync(Patient);
        await page.GetByText("The patient's diary").WaitForAsync();

        await page.GotoAsync(visit + "/leaflet");
        await staff.Button("Take back").First.ClickAsync();
        await page.GetByText("Taken back: the link opens nothing any more.").WaitForAsync();
        await OpensNothingAsync(link);
        staff.IsClean();
        Assert.DoesNotContain(app.Log, line => Personal().IsMatch(line));
        Assert.DoesNotContain(app.Log, line => line.Contains(link.Split('/')[^1], StringComparison.Ordinal));
    }

    // A phone that knows no script and has no cookie: everything on it works, and nothing else can be reached.
    private async Task ReadOnAPhoneAsync(string link)
    {
        foreach (bool dark in new[] { false, true })
        {
            await using Screen modern = await app.OpenAsync(390, 844, dark);
            await modern.Page.GotoAsync(link);
            await modern.Page.Locator("h1").WaitForAsync();
            await InSpaceAsync(modern);
            await IsFreeAsync(modern.Page);
            await ShootAsync(modern.Page, dark ? "patient-dark" : "patient");
            modern.IsClean();
        }

        await WithoutSpaceAsync(link);
        await using IBrowserContext old = await app.OldPhoneAsync();
        IPage phone = await old.NewPageAsync();
        await phone.GotoAsync(link);
        await Assertions.Expect(phone.Locator("figure[data-week='0']").First).ToBeVisibleAsync();
        await Assertions.Expect(phone.Locator("figure[data-week='1']").First).ToBeVisibleAsync();
        await Assertions.Expect(phone.Locator("button[data-space]")).ToHaveCountAsync(
            await phone.Locator("button[data-space][hidden]").CountAsync());
        string html = await phone.ContentAsync();
        Assert.DoesNotMatch(Personal(), html);
        Assert.DoesNotMatch(Identity(), html);
        await phone.GetByRole(AriaRole.Button, new() { Name = "7", Exact = true }).ClickAsync();
        await phone.GetByText("Saved. Thank you.").WaitForAsync();
        Assert.Equal("true", await phone.GetByRole(AriaRole.Button, new() { Name = "7", Exact = true })
            .GetAttributeAsync("aria-pressed"));
        Assert.Empty(await old.CookiesAsync());
        foreach (string path in new[] { "/", "/stock", "/find?q=a", "/settings", "/visit/" + Guid.NewGuid() })
        {
            await phone.GotoAsync(path);
            Assert.Contains("/sign-in", phone.Url, StringComparison.Ordinal);
        }
    }

    // The weeks in space: said to be a forecast, moved by the slider, to look at alone.
    private static async Task InSpaceAsync(Screen phone)
    {
        ILocator button = phone.Page.Locator("button[data-space]").First;
        if (await phone.Page.Locator("button[data-space]").CountAsync() == 0)
        {
            Assert.False(
                Environment.GetEnvironmentVariable("ARCHWRIGHT_ALL_SERVERS") is "1",
                "Built without the view in space.");
            return;
        }

        string path = (await button.GetAttributeAsync("data-space"))!; // it has one by its selector
        string sent = await (await phone.Page.APIRequest.GetAsync(path)).TextAsync();
        Assert.DoesNotMatch(Personal(), sent);
        Assert.DoesNotMatch(Identity(), sent);
        await button.ClickAsync();
        ILocator space = phone.Page.Locator(".space[data-drawn]").First;
        await space.WaitForAsync();
        Assert.Contains("not a promise", await space.GetAttributeAsync("aria-label"), StringComparison.Ordinal);
        await Assertions.Expect(phone.Page.Locator("p:has(+ [data-weeks])").First).ToContainTextAsync("not a promise");
        byte[] today = await space.ScreenshotAsync();
        ILocator slider = phone.Page.Locator(".weeks input[type=range]").First;
        string last = (await slider.GetAttributeAsync("max"))!; // it stands in the page
        await slider.FillAsync(last);
        await phone.Page.Locator($".space[data-week='{last}']").First.WaitForAsync();
        await Assertions.Expect(phone.Page.Locator($"figure[data-week='{last}']").First).ToBeVisibleAsync();
        Assert.NotEqual(today, await space.ScreenshotAsync());
    }

    // A phone that draws nothing in space says so and keeps its drawing.
    private async Task WithoutSpaceAsync(string link)
    {
        await using Screen phone = await app.OpenAsync(390, 844);
        await phone.Page.AddInitScriptAsync(
            "const real = HTMLCanvasElement.prototype.getContext;"
            + "HTMLCanvasElement.prototype.getContext = function (kind, ...more) {"
            + " return kind.startsWith('webgl') ? null : real.call(this, kind, ...more); };");
        await phone.Page.GotoAsync(link);
        if (await phone.Page.Locator("button[data-space]").CountAsync() == 0)
            return;

        await phone.Page.Locator("button[data-space]").First.ClickAsync();
        await phone.Page.GetByText("This phone does not show it in 3-D.").First.WaitForAsync();
        await Assertions.Expect(phone.Page.Locator("figure[data-week='0']").First).ToBeVisibleAsync();
    }

    private async Task OpensNothingAsync(string link)
    {
        await using IBrowserContext old = await app.OldPhoneAsync();
        IAPIRequestContext ask = old.APIRequest;
        string closed = await (await ask.GetAsync(link)).TextAsync();
        foreach (string path in new[]
                 {
                     link, link + "/leaflet.pdf", link + "/upper.json", "/p/x", link[..^1], "/p/" + new string('A', 43),
                     "/p/" + Guid.NewGuid(),
                 })
        {
            IAPIResponse answer = await ask.GetAsync(path);
            Assert.Equal(410, answer.Status);
            Assert.Equal(closed, await answer.TextAsync());
        }

        List<int> statuses = [];
        for (int i = 0; i < TooOften; i++)
            statuses.Add((await ask.GetAsync("/p/guess-" + i)).Status);
        Assert.Contains(429, statuses);
        Assert.DoesNotContain(200, statuses);
    }

    private static async Task<string> LinkAsync(Screen staff)
    {
        await staff.Button("Make a link").ClickAsync();
        return await staff.Page.Locator("code.link").InnerTextAsync();
    }

    private static async Task<string> LastSignedAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Link, new() { Name = $"Course of {Patient}" }).ClickAsync();
        await page.Locator("table.timeline").WaitForAsync();
        string? path = await page.Locator("table.timeline tbody tr", new() { HasText = "(earlier records)" })
            .First.Locator("a").GetAttributeAsync("href");
        return Assert.IsType<string>(path);
    }

    private static async Task IsFreeAsync(IPage page)
    {
        AxeResult found = await page.RunAxe(AccessTests.Levels);
        Assert.True(found.Violations.Length == 0, page.Url + "\n" + string.Join("\n", found.Violations.SelectMany(
            one => one.Nodes.Select(node => $"{one.Id}: {node.Html}"))));
    }

    private static async Task ShootAsync(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("ARCHWRIGHT_PICTURES") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), FullPage = true });
    }

    [GeneratedRegex("Yusuf|Adebanjo|Marsh|born", RegexOptions.IgnoreCase)]
    private static partial Regex Personal();

    [GeneratedRegex("[0-9a-f]{8}-[0-9a-f]{4}-", RegexOptions.IgnoreCase)]
    private static partial Regex Identity();
}
