using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>Patients, appliances, alerts, photographs, stock, staff and settings, by the screens alone. Rests on the
/// screens themselves.</summary>
[Trait("basis", "law")]
public sealed class RecordsTests(PracticeApp app)
{
    // A whole picture of one pixel.
    private static readonly byte[] Pixel = Convert.FromBase64String(
        "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");

    [Fact]
    public async Task A_new_patient_gets_an_appliance_and_an_alert_and_stands_at_the_chair()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("callum");
        await page.GotoAsync("/patient/new");
        await page.GetByLabel("Given names").FillAsync("Ottoline");
        await page.GetByLabel("Family name").FillAsync("Varga-Stout");
        await page.GetByLabel("Birth date").FillAsync("2013-05-04");
        await page.GetByLabel("Birth date").BlurAsync();
        await screen.Button("Add, and book the visit").ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Ottoline Varga-Stout", Level = 1 }).WaitForAsync();

        await screen.Button("nickel").ClickAsync();
        await page.GetByLabel("In words").First.FillAsync("Rash from ear rings.");
        await page.GetByLabel("In words").First.BlurAsync();
        await screen.Button("Raise the alert").ClickAsync();
        await page.Locator("ul.alerts").GetByText("Rash from ear rings.").WaitForAsync();
        await screen.Button("27 upper left second molar").ClickAsync();
        await screen.Button("Note the upper appliance").ClickAsync();
        await page.GetByText("13 teeth, usually elastic tie").WaitForAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "bonding" }).ClickAsync();
        await page.Locator("svg.arch").WaitForAsync();
        Assert.Equal(13, await page.Locator("svg.arch [data-tooth]").CountAsync());
        await page.Locator("ul.alerts").GetByText("Rash from ear rings.").WaitForAsync();
        screen.IsClean();
    }

    [Fact]
    public async Task Somebody_who_is_here_already_is_shown_first()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("gwen");
        await page.GotoAsync("/find?q=hana");
        string born = await page.Locator(".found span").First.InnerTextAsync();
        var day = DateOnly.ParseExact(
            born["born ".Length..], "d MMM yyyy", System.Globalization.CultureInfo.InvariantCulture);
        await page.GotoAsync("/patient/new");
        await page.GetByLabel("Given names").FillAsync("Hana");
        await page.GetByLabel("Family name").FillAsync("Sugimori-Lund");
        await page.GetByLabel("Birth date").FillAsync(
            day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        await page.GetByLabel("Birth date").BlurAsync();
        await screen.Button("Add, and book the visit").ClickAsync();

        await page.GetByText("Already here, with the same birth date").WaitForAsync();
        await screen.Button("Another person: add all the same").WaitForAsync();
        screen.IsClean();
    }

    [Fact]
    public async Task The_reception_finds_a_patient_and_books_a_visit()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("gwen");
        await page.GotoAsync("/find?q=rekow");
        await page.GetByRole(AriaRole.Link, new() { Name = "Tomasz Rekowski" }).ClickAsync();
        await screen.Button("30 min").ClickAsync();
        await screen.Button("Book").ClickAsync();

        await page.GetByText("In the diary:").First.WaitForAsync();
        screen.IsClean();
    }

    [Fact]
    public async Task A_photograph_is_kept_with_the_visit_and_what_is_no_picture_is_refused()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("callum");
        await screen.OpenChairAsync("Tomasz Rekowski");
        ILocator file = page.Locator("input[type=file]");
        await Assertions.Expect(file).ToBeEnabledAsync();

        await file.SetInputFilesAsync(new FilePayload
        {
            Name = "front.png", MimeType = "image/png", Buffer = "no picture at all"u8.ToArray(),
        });
        await page.GetByText("no JPEG, PNG or WebP picture").WaitForAsync();
        await file.SetInputFilesAsync(new FilePayload { Name = "x.bin", MimeType = "image/png", Buffer = Pixel });
        ILocator picture = page.Locator(".photos img");
        await picture.WaitForAsync();
        await picture.ScrollIntoViewIfNeededAsync();
        await Assertions.Expect(picture).ToHaveJSPropertyAsync("naturalWidth", 1);

        // Nobody sees it without signing in.
        string path = (await picture.GetAttributeAsync("src"))!;
        using var stranger = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false });
        using HttpResponseMessage answer = await stranger.GetAsync(new Uri(app.Address + path));
        Assert.NotEqual(System.Net.HttpStatusCode.OK, answer.StatusCode);
        screen.IsClean();
    }

    [Fact]
    public async Task A_lot_comes_onto_the_shelf_and_is_counted()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("callum");
        await page.GotoAsync("/stock");
        await page.GetByLabel("Lot, as on the label").FillAsync("NEW-77");
        await page.GetByLabel("Lot, as on the label").BlurAsync();
        await screen.Button("Put on the shelf").ClickAsync();
        ILocator row = page.Locator("tr", new() { HasText = "NEW-77" });
        await row.WaitForAsync();

        await row.GetByRole(AriaRole.Spinbutton).FillAsync("4");
        await row.GetByRole(AriaRole.Spinbutton).BlurAsync();
        await page.GetByText("Lot NEW-77: 4 pieces.").WaitForAsync();

        await Assertions.Expect(row.Locator("td.number")).ToHaveTextAsync("4");
        screen.IsClean();
    }

    [Fact]
    public async Task A_new_account_opens_the_door_until_it_is_closed()
    {
        await using Screen owner = await app.OpenAsync();
        await owner.SignInAsync("maren");
        await owner.Page.GotoAsync("/staff");
        await owner.Page.GetByLabel("Name, as it stands").FillAsync("Ada Brookstone");
        await owner.Page.GetByLabel("Name of the account").FillAsync("ada");
        await owner.Page.GetByLabel("First password").FillAsync(Archwright.Practice.Demo.DemoPractice.Password);
        await owner.Page.GetByLabel("First password").BlurAsync();
        await owner.Button("Make the account").ClickAsync();
        await owner.Page.GetByText("Ada Brookstone can sign in.").WaitForAsync();
        await using Screen guest = await app.OpenAsync();
        await guest.SignInAsync("ada");

        await owner.Button("Close the account of Ada Brookstone").ClickAsync();
        await owner.Page.GetByText("The account of Ada Brookstone is closed").WaitForAsync();
        await using Screen late = await app.OpenAsync();
        await late.Page.GotoAsync("/sign-in");
        await late.Page.GetByLabel("Name of your account").FillAsync("ada");
        await late.Page.GetByLabel("Password").FillAsync(Archwright.Practice.Demo.DemoPractice.Password);
        await late.Button("Sign in").ClickAsync();

        await late.Page.Locator(".told").WaitForAsync();
        owner.IsClean();
    }

    [Fact]
    public async Task Settings_are_for_orthodontists_and_stand_where_they_belong()
    {
        await using Screen assistant = await app.OpenAsync();
        await assistant.SignInAsync("callum");
        await assistant.Page.GotoAsync("/settings");
        await assistant.Page.GetByText("Not for this role").First.WaitForAsync();
        await using Screen owner = await app.OpenAsync();
        await owner.SignInAsync("maren");
        await owner.Page.GotoAsync("/settings");
        await owner.Page.GetByLabel("Name of the practice").FillAsync("Fernhollow and Daughters");
        await owner.Page.GetByLabel("Name of the practice").BlurAsync();
        await owner.Button("Keep these settings").ClickAsync();
        await owner.Page.GetByText("Kept.").WaitForAsync();

        await owner.Page.GotoAsync("/ceilings");
        await owner.Page.GetByText("upper canine (13 and 23, ISO)").WaitForAsync();
        await using Screen next = await app.OpenAsync();
        await next.Page.GotoAsync("/sign-in");
        await next.Page.GetByRole(AriaRole.Heading, new() { Name = "Fernhollow and Daughters" }).WaitForAsync();
        owner.IsClean();
    }
}
