using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Archwright.Practice.Keeping;
using Archwright.Practice.People;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Archwright.Treatment.Policies;
using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>What whoever runs the practice does: programs, backup, export, retention, stock. Rests on what the screens
/// promise, and on the axe engine.</summary>
[Trait("basis", "law")]
public sealed partial class ManageTests(PracticeApp app)
{
    [Fact]
    public async Task A_token_is_made_shown_once_asks_and_is_taken_back()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        await page.GotoAsync("/programs");
        await page.GetByLabel("Name of the program").FillAsync("Study desk");
        await page.GetByLabel("Name of the program").BlurAsync();
        await screen.Button("Make the token").ClickAsync();
        await page.GetByText("Choose at least one thing").WaitForAsync();
        await page.GetByLabel("patients:read").CheckAsync();
        await screen.Button("Make the token").ClickAsync();
        string token = await page.Locator("[data-token]").InnerTextAsync();
        await IsFreeAsync(page);
        await ShootAsync(page, "programs");

        Assert.Equal(200, await AskAsync(token));
        await page.ReloadAsync();
        await page.Locator("tr", new() { HasText = "Study desk" }).WaitForAsync();
        Assert.DoesNotContain(token, await page.ContentAsync(), StringComparison.Ordinal);
        await screen.Button("Take back the token of Study desk").ClickAsync();
        await page.GetByText("The token of Study desk is refused from now on.").WaitForAsync();
        Assert.Equal(401, await AskAsync(token));
        await page.GotoAsync("/api");
        await page.GetByRole(AriaRole.Heading, new() { Name = "The API, version 1" }).WaitForAsync();
        await IsFreeAsync(page);
        await ShootAsync(page, "api");
        Assert.DoesNotContain(app.Log, line => line.Contains(token, StringComparison.Ordinal));
        screen.IsClean();
    }

    [Fact]
    public async Task A_backup_and_a_patients_whole_record_are_taken_out_as_files()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        await page.GotoAsync("/keeping");
        await page.GetByText("Nobody.").WaitForAsync();
        await IsFreeAsync(page);
        await ShootAsync(page, "keeping");
        using ZipArchive backup = await DownloadAsync(
            page, () => screen.Button("Make a backup now").ClickAsync(), "archwright-backup-");
        Assert.NotNull(backup.GetEntry("manifest.json"));
        Assert.NotNull(backup.GetEntry("practice.db"));

        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Course of Hana Sugimori-Lund" }).First.ClickAsync();
        await page.Locator("table.timeline").WaitForAsync();
        await page.GotoAsync(page.Url.TrimEnd('/') + "/record");
        await screen.Button("Take the whole record out").WaitForAsync();
        using ZipArchive record = await DownloadAsync(
            page, () => screen.Button("Take the whole record out").ClickAsync(), "record-");
        using var reader = new StreamReader(record.GetEntry("record.json")!.Open());
        Assert.Contains("Sugimori-Lund", await reader.ReadToEndAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain(app.Log, line => Personal().IsMatch(line));
        screen.IsClean();
    }

    [Fact]
    public async Task A_record_that_the_rule_no_longer_keeps_is_listed_and_deleted_when_confirmed()
    {
        Patient gone = await LongGoneAsync();
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        await page.GotoAsync("/keeping");
        await page.GetByText("Now records are kept for ever.").WaitForAsync();
        Assert.Equal(0, await page.GetByText(gone.FullName).CountAsync());
        await RuleAsync(screen, "0");
        await page.GetByText("Years are 1 to 200").WaitForAsync();

        await RuleAsync(screen, "10");
        await page.GetByText("Now records are kept 10 years after the last entry.").WaitForAsync();
        ILocator row = page.Locator("tr", new() { HasText = gone.FullName });
        await row.WaitForAsync();
        Assert.Equal(1, await page.Locator("tbody tr").CountAsync()); // nobody else of the practice
        await IsFreeAsync(page);
        await ShootAsync(page, "keeping-due");
        await screen.Button($"Delete… the record of {gone.FullName}").ClickAsync();
        await screen.Button($"Keep the record of {gone.FullName}").ClickAsync();
        await screen.Button($"Delete… the record of {gone.FullName}").ClickAsync();
        await IsFreeAsync(page);
        await screen.Button($"Delete for good the record of {gone.FullName}").ClickAsync();
        await page.GetByText($"The record of {gone.FullName} is deleted.").WaitForAsync();
        await page.GetByText("Nobody.").WaitForAsync();
        await page.GetByText("by Dr Maren").First.WaitForAsync(); // who, and under which rule, stays

        await page.GotoAsync($"/find?q={gone.FamilyName}");
        await Assertions.Expect(page.Locator(".found")).ToHaveCountAsync(0);
        await page.GotoAsync("/keeping");
        await RuleAsync(screen, "");
        await page.GetByText("Now records are kept for ever.").WaitForAsync();
        screen.IsClean();
    }

    [Fact]
    public async Task An_assistant_does_not_open_what_deletes()
    {
        await using Screen screen = await app.OpenAsync();
        await screen.SignInAsync("callum");
        await screen.Page.GotoAsync("/keeping");
        Assert.Contains("/not-allowed", screen.Page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ladders_are_begun_from_the_stock_told_of_and_stopped_while_the_page_stays_whole()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("callum");
        await page.GotoAsync("/stock");
        ILocator begin = page.Locator("[data-round]").GetByRole(
            AriaRole.Button, new() { NameRegex = new Regex(@"^Compute \d+ ladders?$") });
        await begin.WaitForAsync();
        await page.Locator("[data-without] summary").ClickAsync();
        await Assertions.Expect(page.GetByText("Not computed yet.")).Not.ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("[data-basis]")).ToContainTextAsync(
            new Regex(@"\d+ arches have no ladder"));

        await begin.ClickAsync();
        await page.GetByText(new Regex(@"Computing ladders: \d+ of [1-9]\d* arches\.")).WaitForAsync();
        await IsFreeAsync(page);
        await ShootAsync(page, "stock-round");
        await page.ReloadAsync(); // it goes on without the page that asked
        await page.GetByText(new Regex(@"Computing ladders: \d+ of [1-9]\d* arches\.")).WaitForAsync();
        await screen.Button("Stop").ClickAsync();
        await page.GetByText("Stopped. What was done is kept.").WaitForAsync();
        await begin.WaitForAsync();
        screen.IsClean();
    }

    [Fact]
    public async Task The_policy_in_force_is_shown_with_its_sources_and_its_history()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("callum");
        await page.GotoAsync("/policy");
        await Assertions.Expect(page.Locator("[data-policy]")).ToHaveTextAsync(VisitPolicy.Default.Version);
        foreach (string told in VisitPolicy.Default.Intervals.Select(one => one.Source)
            .Concat(VisitPolicy.Default.Alerts.Select(one => one.Sentence)))
        {
            await Assertions.Expect(page.Locator("main")).ToContainTextAsync(told);
        }

        await page.GetByText("All of it, with sources").First.ClickAsync();
        await Assertions.Expect(page.Locator("pre.lines").First).ToBeVisibleAsync();
        string[] kept = [.. (await page.Locator("pre.lines").AllTextContentsAsync())];
        Assert.Equal(
            [PolicyLines.Of(VisitPolicy.Default.Ceilings), PolicyLines.Of(VisitPolicy.Default)],
            kept.Select(one => one.ReplaceLineEndings("\n")));
        await IsFreeAsync(page);
        await ShootAsync(page, "policy-history");
        screen.IsClean();
    }

    private static async Task RuleAsync(Screen screen, string years)
    {
        ILocator field = screen.Page.GetByLabel("Years after the last entry");
        await field.FillAsync(years);
        await field.BlurAsync();
        await screen.Button("Keep this rule").ClickAsync();
    }

    // Somebody invented whose treatment ended twelve years ago.
    private async Task<Patient> LongGoneAsync()
    {
        DateOnly today = DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);
        var patient = Patient.Create(
            new PatientDetails
            {
                GivenNames = "Perpetua", FamilyName = "Oldacre-Finch", BornOn = today.AddYears(-30), IsInvented = true,
            },
            practiceIsDemo: true, today);
        await using PracticeContext db = app.Records.CreateDbContext();
        db.Add(patient);
        db.Add(Visit.FromEarlierRecords(
            patient.Id, today.AddYears(-12), new TimeOnly(9, 0), VisitKind.Debonding, VisitContent.Blank, "Dr Maren"));
        await db.SaveChangesAsync();
        return patient;
    }

    [Fact]
    public async Task Without_the_token_of_a_form_and_without_the_role_nothing_is_taken_out()
    {
        await using Screen assistant = await app.OpenAsync();
        await assistant.SignInAsync("callum");
        await assistant.Page.GotoAsync("/keeping");
        await assistant.Page.GetByText("Not for this role").First.WaitForAsync();
        await using Screen owner = await app.OpenAsync();
        await owner.SignInAsync("maren");

        IAPIResponse forged = await Post(owner.Page);
        IAPIResponse wrongRole = await Post(assistant.Page);

        Assert.Equal(400, forged.Status);
        Assert.DoesNotContain(
            "application/zip", wrongRole.Headers.GetValueOrDefault("content-type", ""), StringComparison.Ordinal);

        static Task<IAPIResponse> Post(IPage page)
        {
            IFormData form = page.APIRequest.CreateFormData();
            form.Set("nothing", "1");
            return page.APIRequest.PostAsync("/keeping/backup", new() { Form = form });
        }
    }

    [Fact]
    public async Task A_label_is_scanned_its_article_known_again_and_a_recall_finds_nobody_who_got_nothing()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("callum");
        await page.GotoAsync("/stock");
        await page.Locator("[data-basis]").WaitForAsync();
        await ScanAsync(page, "(01)09506000134352(17)991231(10)SCAN-1");
        await page.GetByText("This article is new here").WaitForAsync();
        await Assertions.Expect(page.GetByLabel("Lot, as on the label")).ToHaveValueAsync("SCAN-1");
        await Assertions.Expect(page.GetByLabel("Expires, if the label says")).ToHaveValueAsync(new Regex("99-12-31$"));
        ILocator wire = page.Locator("form select").First;
        await wire.SelectOptionAsync("ss-018");
        await page.GetByLabel("Expires, if the label says").FillAsync("2099-12-31");
        await screen.Button("Put on the shelf").ClickAsync();
        await page.GetByText("Lot SCAN-1 is on the shelf").WaitForAsync();
        await ScanAsync(page, "(01)09506000134352(17)991231(10)SCAN-2");
        await page.GetByText("This article came before as").WaitForAsync();
        await Assertions.Expect(wire).ToHaveValueAsync("ss-018");
        await IsFreeAsync(page);
        await ShootAsync(page, "stock");

        await page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("^Lot SCAN-1 ") }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Lot SCAN-1" }).WaitForAsync();
        await screen.Button("Find the patients").ClickAsync();
        await page.GetByText("Nobody, as far as signed visits say.").WaitForAsync();
        await screen.Button("Note the recall").ClickAsync();
        await page.GetByText("Say why the lot is recalled").WaitForAsync();
        await page.GetByLabel("Why, and who says so").FillAsync("Letter of the maker.");
        await page.GetByLabel("Why, and who says so").BlurAsync();
        await screen.Button("Note the recall").ClickAsync();
        await page.GetByText("Recalled on").WaitForAsync();
        await IsFreeAsync(page);
        await ShootAsync(page, "lot");
        screen.IsClean();
    }

    [Fact]
    public async Task A_list_comes_out_and_goes_in_and_a_bad_one_is_told_whole_and_changes_nothing()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("callum");
        string list = await (await page.APIRequest.GetAsync("/stock/list.csv")).TextAsync();
        Assert.StartsWith("wire,arch,form,lot,gtin,expires,pieces,reorder_at\n", list, StringComparison.Ordinal);
        await page.GotoAsync("/stock");
        await page.Locator("[data-basis]").WaitForAsync();

        await GiveAsync(page, list + "ss-016,either,,LIST-9,,,7,1\nss-0016,middle,,L,,,2.5,\n");
        await page.GetByText("The list was not taken in.").WaitForAsync();
        int lines = list.Split('\n').Length; // the last is empty: the line number of the bad row less one
        await page.GetByText($"line {lines + 1}, wire").WaitForAsync();
        Assert.Equal(0, await page.GetByText("LIST-9").CountAsync());
        await ShootAsync(page, "stock-list-refused");

        await GiveAsync(page, list + "ss-016,either,,LIST-9,,,7,1\n");
        await page.GetByText("The list is taken in: 1 new lots").WaitForAsync();
        await page.Locator("tr", new() { HasText = "LIST-9" }).WaitForAsync();
        screen.IsClean();
    }

    [Theory]
    [InlineData(1180, 820, true)]
    [InlineData(390, 844, false)]
    public async Task The_screens_are_free_of_violations_in_the_dark_and_on_a_phone(int width, int height, bool dark)
    {
        await using Screen screen = await app.OpenAsync(width, height, dark);
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        foreach ((string path, string name) in new[]
                 {
                     ("/programs", "programs"), ("/keeping", "keeping"), ("/stock", "stock"), ("/policy", "policy"),
                     ("/api", "api"),
                 })
        {
            await page.GotoAsync(path);
            await page.Locator("main h1").First.WaitForAsync();
            await Assertions.Expect(page.GetByRole(AriaRole.Status).Filter(new() { HasText = "…" }))
                .ToHaveCountAsync(0);
            await IsFreeAsync(page);
            await ShootAsync(page, name + (dark ? "-dark" : "-phone"));
        }

        screen.IsClean();
    }

    private async Task<int> AskAsync(string token)
    {
        using var client = new HttpClient();
        client.DefaultRequestHeaders.Authorization = new("Bearer", token);
        using HttpResponseMessage answer = await client.GetAsync(
            new Uri(app.Address + "/api/v1/patients?name=hana"));
        return (int)answer.StatusCode;
    }

    private static async Task<ZipArchive> DownloadAsync(IPage page, Func<Task> act, string begins)
    {
        IDownload download = await page.RunAndWaitForDownloadAsync(act);
        Assert.StartsWith(begins, download.SuggestedFilename, StringComparison.Ordinal);
        var whole = new MemoryStream();
        await using (Stream stream = await download.CreateReadStreamAsync())
            await stream.CopyToAsync(whole);
        return new ZipArchive(whole, ZipArchiveMode.Read);
    }

    private static async Task ScanAsync(IPage page, string label)
    {
        ILocator field = page.GetByLabel("Scan the label");
        await field.FillAsync(label);
        await field.PressAsync("Enter"); // as a scanner ends what it types
        await field.BlurAsync();
    }

    private static async Task GiveAsync(IPage page, string list)
    {
        ILocator field = page.GetByLabel("Take a list in");
        await Assertions.Expect(field).ToBeEnabledAsync();
        await field.SetInputFilesAsync(new FilePayload
        {
            Name = "list.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(list),
        });
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

    [GeneratedRegex("Sugimori|Hana", RegexOptions.IgnoreCase)]
    private static partial Regex Personal();
}
