using System.Globalization;
using System.Text.RegularExpressions;
using Archwright.Dentition.Catalogue;
using Archwright.Mechanics.Bench;
using Archwright.Practice.Bench;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Archwright.Browser.Tests;

/// <summary>The bench on the screen. Rests on the bench tests of the mechanics, run here beside it, and on the axe
/// engine.</summary>
[Trait("basis", "independent")]
public sealed class BenchStoryTests(PracticeApp app)
{
    [Fact]
    public async Task The_figures_on_the_screen_are_those_of_the_engine_and_stand_beside_the_picture()
    {
        await using Screen screen = await app.OpenAsync();
        await OpenAsync(screen, "/bench?wires=niti-016,ss-016&temperature=36");

        CatalogueWire niti = Wire("niti-016");
        BendResult bent = BendTest.Run(
            niti.WholeWire, BenchTests.Span, 36, BendStep.ThereAndBack(BenchTests.Top, BenchTests.ReadEvery));
        BendPoint there = bent.Readings.First(point => Math.Abs(point.Deflection - 1) < 1e-9);
        BendPoint back = bent.Readings.Last(point => Math.Abs(point.Deflection - 1) < 1e-9);
        IReadOnlyList<string> row = await RowAsync(screen, "bend", "1 mm");
        Assert.Equal([Centinewtons(there.Force), Centinewtons(back.Force)], row.Take(2));
        Assert.Equal(4, row.Count);
        Assert.Equal(2, await screen.Page.Locator("#bend path.back").CountAsync());
        Assert.Equal(2, await screen.Page.Locator("#slide path.there").CountAsync());
        await Assertions.Expect(screen.Page.Locator("#twist")).ToContainTextAsync("A is round: it turns in its slots");
        await Assertions.Expect(screen.Page.Locator("[data-computed]")).ToContainTextAsync("A bench is not a mouth");
        await IsPrintedAsync(screen, row);
        screen.IsClean();
    }

    [Fact]
    public async Task The_address_holds_the_comparison_and_a_colleague_sees_the_same()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await OpenAsync(screen, "/bench");
        await screen.Button("One wire more").ClickAsync();
        await page.GetByLabel("C", new() { Exact = true }).WaitForAsync();
        await page.GetByLabel("C", new() { Exact = true }).SelectOptionAsync("ss-019x025");
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("wires=niti-016,ss-016,ss-019x025&"));
        await screen.Button("ice-cold drink", exact: false).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("temperature=5&"));
        await screen.Button("dry").ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("state=dry$"));
        await page.Locator("[data-computed*='temperature=5&'][data-computed$='state=dry']").WaitForAsync();
        string shown = await page.Locator(".bench").InnerTextAsync();

        await using Screen colleague = await app.OpenAsync();
        await OpenAsync(colleague, new Uri(page.Url).PathAndQuery);

        Assert.Equal(shown, await colleague.Page.Locator(".bench").InnerTextAsync());
        Assert.Equal("true", await colleague.Button("dry").GetAttributeAsync("aria-pressed"));
        screen.IsClean();
        colleague.IsClean();
    }

    [Fact]
    public async Task Cold_softens_a_wire_that_transforms_and_the_slider_is_moved_by_key()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await OpenAsync(screen, "/bench?wires=niti-016,ss-016&temperature=36");
        string warm = await page.Locator("#bend").InnerTextAsync();
        ILocator slider = page.GetByLabel("Temperature of the wires", new() { Exact = false });
        await slider.FocusAsync();
        await page.Keyboard.PressAsync("Home");
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("temperature=0&"));
        await page.Locator("[data-computed*='temperature=0&']").WaitForAsync();

        Assert.NotEqual(warm, await page.Locator("#bend").InnerTextAsync());
        IReadOnlyList<string> cold = await RowAsync(screen, "bend", "3.1 mm");
        Assert.True(
            Number(cold[0]) < 0.9 * BenchTests.Bend(Wire("niti-016"), 36, out _).There[^1].Y * 100,
            "The plateau falls with the temperature.");
        screen.IsClean();
    }

    [Fact]
    public async Task What_an_address_says_wrongly_is_told_and_a_wire_that_does_not_go_in_says_why()
    {
        await using Screen screen = await app.OpenAsync();
        await OpenAsync(screen, "/bench?wires=ss-0215x028,no-such<b>,ss-016&temperature=900&slot=018&state=oily");
        string told = await screen.Page.Locator(".bench").InnerTextAsync();

        Assert.Contains("The catalogue has no wire 'no-such<b>'", told, StringComparison.Ordinal);
        Assert.Contains("'900' is not between 0 and 60 °C", told, StringComparison.Ordinal);
        Assert.Contains("'oily' is neither wet nor dry", told, StringComparison.Ordinal);
        Assert.Contains("A: It does not go into the slot", told, StringComparison.Ordinal);
        screen.IsClean();
    }

    [Theory]
    [InlineData("tablet-light", 1180, 980, false)]
    [InlineData("tablet-dark", 1180, 980, true)]
    [InlineData("phone-light", 390, 844, false)]
    [InlineData("phone-dark", 390, 844, true)]
    public async Task It_has_no_violation_of_level_A_or_AA(string name, int width, int height, bool dark)
    {
        await using Screen screen = await app.OpenAsync(width, height, dark);
        await OpenAsync(
            screen, "/bench?wires=niti-016,ss-016,bti-017x025,ss-019x025&temperature=36&slot=022&tie=1&state=wet");
        await Looks.AreFreeAsync(screen.Page);
        await Looks.ShootAsync(screen.Page, "bench-" + name, forDocuments: name == "tablet-light");
        screen.IsClean();
    }

    // The print holds figures and sentences, and nothing that is there to be pressed.
    private static async Task IsPrintedAsync(Screen screen, IReadOnlyList<string> row)
    {
        byte[] file = await screen.Page.PdfAsync(new() { Format = "A4" });
        if (Environment.GetEnvironmentVariable("ARCHWRIGHT_PICTURES") is { Length: > 0 } folder)
            await File.WriteAllBytesAsync(Path.Combine(folder, "bench.pdf"), file);
        using PdfDocument print = PdfDocument.Open(file);
        string[] words = [.. print.GetPages().SelectMany(one => one.GetWords()).Select(word => word.Text)];
        Assert.All(row, figure => Assert.Contains(figure, words));
        Assert.Contains("round:", words);
        Assert.Contains("36", words);
        Assert.DoesNotContain("Print", words);
        Assert.DoesNotContain("ice-cold", words);
        Assert.InRange(print.NumberOfPages, 1, 4);
    }

    private static async Task OpenAsync(Screen screen, string address)
    {
        await screen.SignInAsync("maren");
        await screen.Page.GotoAsync(address);
        await screen.Page.Locator("[data-computed]").WaitForAsync();
    }

    private static async Task<IReadOnlyList<string>> RowAsync(Screen screen, string panel, string head) =>
        await screen.Page.Locator($"#{panel} tbody tr", new()
        {
            Has = screen.Page.GetByRole(AriaRole.Rowheader, new() { Name = head, Exact = true }),
        }).Locator("td").AllInnerTextsAsync();

    private static CatalogueWire Wire(string id) =>
        WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? wire : throw new ArgumentException(id);

    private static string Centinewtons(double force) =>
        (100 * force).ToString("0", CultureInfo.InvariantCulture);

    private static double Number(string text) => double.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture);
}
