using Archwright.Practice.Leaflets;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Archwright.Browser.Tests;

/// <summary>Answers and the practice's own words, on the screen and printed. Rests on the texts themselves, on another
/// library that reads the print back, and on the axe engine.</summary>
[Collection("texts")] // the languages offered are one setting for all
[Trait("basis", "independent")]
public sealed class AnswersStoryTests(PracticeApp app)
{
    [Theory]
    [InlineData("en", 1180, 900, false)]
    [InlineData("ar", 1180, 900, true)]
    [InlineData("de", 390, 844, false)]
    public async Task They_are_shown_in_the_language_chosen_and_printed_without_the_screen_around_them(
        string code, int width, int height, bool dark)
    {
        await using Screen screen = await app.OpenAsync(width, height, dark);
        IPage page = screen.Page;
        await screen.SignInAsync("callum");
        await page.GotoAsync("/answers");
        LeafletTexts texts = LeafletTexts.In(code);
        await screen.Button(texts.OwnName).ClickAsync();
        await page.Locator($"article[lang={code}][data-ready=yes]").WaitForAsync();

        Assert.Equal(texts.IsRightToLeft ? "rtl" : "ltr", await page.Locator("article").GetAttributeAsync("dir"));
        Assert.Equal(2, await page.Locator("article path.back").CountAsync());
        await Looks.AreFreeAsync(page);
        await Looks.ShootAsync(
            page, code == "en" ? "answers-tablet-light" : $"answers-{code}", forDocuments: code == "en");
        if (code != "ar")
        {
            using PdfDocument print = PdfDocument.Open(await page.PdfAsync(new() { Format = "A4" }));
            string[] words = [.. print.GetPages().SelectMany(one => one.GetWords()).Select(word => word.Text)];
            foreach (string key in new[] { "answers.this.text", "answers.hurt.text", "feel.relief" })
                Assert.All(texts[key].Split(' '), word => Assert.Contains(word, words));
            Assert.DoesNotContain("Print", words);
            Assert.InRange(print.NumberOfPages, 1, 2);
        }

        screen.IsClean();
    }

    [Fact]
    public async Task Opened_for_a_visit_they_show_the_patient_s_own_wire()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        await page.GetByRole(AriaRole.Link, new() { Name = "Course of Yusuf Adebanjo-Marsh" }).ClickAsync();
        string? visit = await page.Locator("table.timeline tbody tr", new() { HasText = "(earlier records)" })
            .First.Locator("a").GetAttributeAsync("href");
        await page.GotoAsync(visit + "/leaflet");
        await page.GetByRole(AriaRole.Link, new() { Name = "Answers to what patients ask" }).ClickAsync();
        await page.Locator("article[data-ready=yes]").WaitForAsync();

        await Assertions.Expect(page.Locator("article")).ToContainTextAsync("A is the wire you have now.");
        await Assertions.Expect(page.Locator("article")).Not.ToContainTextAsync("Yusuf");
        screen.IsClean();
    }

    [Fact]
    public async Task The_practice_puts_its_own_words_and_goes_back_to_ours()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        await page.GotoAsync("/settings/texts");
        await page.Locator("summary", new() { HasText = "Answers" }).ClickAsync();
        await page.Locator(".text-list button", new() { HasText = "Dry the spot and cover it" }).ClickAsync();
        ILocator own = page.GetByLabel("Your words", new() { Exact = false });
        await Assertions.Expect(own).ToHaveValueAsync(LeafletTexts.In("en")["answers.pokes.text"]);

        await own.FillAsync("Wax {now}.");
        await page.GetByText("Leave out { and }").WaitForAsync();
        await Assertions.Expect(screen.Button("Keep these words")).ToBeDisabledAsync();
        await own.FillAsync("Wax it. Take 2 tablets.");
        await page.GetByText("It looks like a dose").WaitForAsync();
        await Looks.AreFreeAsync(page);
        await Looks.ShootAsync(page, "texts-tablet-light", forDocuments: true);
        await own.FillAsync("Put wax on it and ring us.");
        await Assertions.Expect(page.Locator(".preview .here")).ToHaveTextAsync("Put wax on it and ring us.");
        // The whole of it: every question of the answers stands around the one that is worked on.
        foreach (string key in new[] { "answers.this", "answers.kept", "answers.thicker", "answers.foot" })
        {
            await Assertions.Expect(page.Locator(".preview")).ToContainTextAsync(
                LeafletTexts.In("en")[key].Split('.', '{')[^1].Trim());
        }

        await screen.Button("Keep these words").ClickAsync();
        await page.GetByText("Kept. Leaflets that are written from now on say it.").WaitForAsync();

        await page.GotoAsync("/answers");
        await page.GetByText("Put wax on it and ring us.").WaitForAsync();
        await page.GotoAsync("/settings/texts");
        await page.Locator("summary", new() { HasText = "Answers" }).ClickAsync();
        await page.Locator(".text-list button", new() { HasText = "Dry the spot and cover it" }).ClickAsync();
        await screen.Button("Back to our words").ClickAsync();
        await page.GetByText("Back to our words.", new() { Exact = true }).WaitForAsync();
        await page.GotoAsync("/answers");
        await page.GetByText("Dry the spot and cover it").WaitForAsync();
        screen.IsClean();
    }

    [Theory]
    [InlineData("en", "A lost tie can wait.")]
    [InlineData("ar", "لا تقلق.")]
    public async Task The_preview_is_the_whole_leaflet_with_the_words_on_the_screen_framed(string code, string words)
    {
        await using Screen screen = await app.OpenAsync(height: 1400);
        IPage page = screen.Page;
        LeafletTexts texts = LeafletTexts.In(code);
        await screen.SignInAsync("maren");
        await page.GotoAsync("/settings/texts");
        await screen.Button(texts.OwnName).ClickAsync();
        await page.Locator(".text-list button", new() { HasText = TextStart(texts["broken.tie"]) }).ClickAsync();

        // The field stands there already, with the words of another text: only once the chosen one is in it, it is
        // overwritten.
        ILocator field = page.GetByLabel("Your words", new() { Exact = false });
        await Assertions.Expect(field).ToHaveValueAsync(texts["broken.tie"]);
        await field.FillAsync(words);

        ILocator preview = page.Locator(".preview article");
        await Assertions.Expect(preview.Locator(".here")).ToHaveTextAsync(words);
        foreach (string key in new[] { "title", "did", "why", "does", "feel", "eat", "broken", "call", "next" })
            await Assertions.Expect(preview).ToContainTextAsync(texts[key]);
        Assert.Equal(texts.IsRightToLeft ? "rtl" : "ltr", await preview.GetAttributeAsync("dir"));
        await Looks.AreFreeAsync(page);
        await Looks.ShootAsync(page, $"texts-whole-{code}");
        screen.IsClean();
    }

    private static string TextStart(string text) => text[..Math.Min(text.Length, 20)];

    [Fact]
    public async Task The_languages_of_leaflets_are_those_that_the_practice_offers_and_the_usual_one_else()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        await page.GotoAsync("/settings");
        ILocator offered = page.Locator("[data-languages]");
        ILocator usual = page.Locator("[data-usual-language]");
        await Assertions.Expect(offered.GetByRole(AriaRole.Button)).ToHaveCountAsync(5);
        foreach (string code in LeafletTexts.Codes)
            await offered.Locator($"[lang={code}]").ClickAsync();
        await screen.Button("Keep these settings").ClickAsync();
        await page.GetByText("Offer one language at least").WaitForAsync();
        await offered.Locator("[lang=de]").ClickAsync();
        await offered.Locator("[lang=pl]").ClickAsync();
        await usual.GetByRole(AriaRole.Button, new() { Name = "Polish" }).ClickAsync();
        await Looks.AreFreeAsync(page);
        await Looks.ShootAsync(page, "settings-languages");
        await screen.Button("Keep these settings").ClickAsync();
        await page.GetByText("Kept.").WaitForAsync();

        await page.GotoAsync("/answers");
        await page.Locator("article[lang=pl]").WaitForAsync();
        ILocator switchOf = page.GetByRole(AriaRole.Group, new() { Name = "Language" });
        await Assertions.Expect(switchOf.GetByRole(AriaRole.Button)).ToHaveTextAsync(["Deutsch", "Polski"]);
        await page.GotoAsync("/patient/new");
        await Assertions.Expect(page.GetByLabel("Language of the leaflet")).ToHaveValueAsync("Polish");

        await page.GotoAsync("/settings");
        foreach (string code in new[] { "en", "es", "ar" })
            await offered.Locator($"[lang={code}]").ClickAsync();
        await usual.GetByRole(AriaRole.Button, new() { Name = "English" }).ClickAsync();
        await screen.Button("Keep these settings").ClickAsync();
        await page.GetByText("Kept.").WaitForAsync();
        screen.IsClean();
    }

    [Fact]
    public async Task An_assistant_does_not_change_the_words()
    {
        await using Screen screen = await app.OpenAsync();
        await screen.SignInAsync("callum");
        await screen.Page.GotoAsync("/settings/texts");
        Assert.Contains("/not-allowed", screen.Page.Url, StringComparison.Ordinal);
    }
}
