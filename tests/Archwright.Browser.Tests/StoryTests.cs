using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>What people do, in a real browser on the served demo. Rests on the screens themselves.</summary>
[Trait("basis", "law")]
public sealed partial class StoryTests(PracticeApp app)
{
    [Fact]
    public async Task From_the_sign_in_to_a_signed_visit_stock_falls_by_one_and_the_next_visit_is_in_the_diary()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        await page.GotoAsync("/stock");
        int before = await PiecesAsync(page, "FH-2301");
        await page.GotoAsync("/");
        await screen.OpenChairAsync("Amara Nwosu-Field");

        // The upper arch gets a wire from stock; where the advice is another, a reason is given.
        await FitAsync(screen, "superelastic NiTi 0.014 in");
        ILocator lower = screen.Button("Lower arch", exact: false);
        await lower.ClickAsync();
        await Assertions.Expect(lower).ToHaveAttributeAsync("aria-pressed", "true");
        await page.Locator(".candidate").First.WaitForAsync();
        await screen.Button("Leave without a wire").ClickAsync();
        await Assertions.Expect(screen.Button("Leave without a wire")).ToHaveAttributeAsync("aria-pressed", "true");
        await ReasonAsync(screen);
        await screen.Button("A week more").ClickAsync();
        await ReadyAsync(screen);
        await screen.Button("Sign").ClickAsync();

        await page.GetByText("Signed by Dr Maren Oduya-Lindqvist").WaitForAsync();
        await page.GetByText("Next visit in the diary").WaitForAsync();
        await page.GotoAsync("/stock");
        Assert.Equal(before - 1, await PiecesAsync(page, "FH-2301"));
        screen.IsClean();
    }

    [Fact]
    public async Task A_visit_is_signed_on_a_phone_by_the_keyboard_alone()
    {
        await using Screen screen = await app.OpenAsync(390, 844, dark: true);
        IPage page = screen.Page;
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("Name of your account").FocusAsync();
        await page.Keyboard.TypeAsync("maren");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.TypeAsync(Archwright.Practice.Demo.DemoPractice.Password);
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("ol.day").WaitForAsync();
        await PressAsync(page.GetByRole(AriaRole.Link, new() { Name = "Chair of Rowan Achterberg" }));
        await page.Locator("svg.arch").WaitForAsync();

        foreach (ILocator alert in await page.Locator(".alerts input").AllAsync())
        {
            await alert.FocusAsync();
            await page.Keyboard.PressAsync("Space");
            await Assertions.Expect(alert).ToBeCheckedAsync();
        }

        foreach (string arch in new[] { "Upper arch", "Lower arch" })
        {
            await PressAsync(screen.Button(arch, exact: false));
            await Assertions.Expect(screen.Button(arch, exact: false)).ToHaveAttributeAsync("aria-pressed", "true");
            await page.Locator(".candidate").First.WaitForAsync(); // whoever decides before asks for no reason
            await PressAsync(screen.Button("Leave without a wire"));
            await Assertions.Expect(screen.Button("Leave without a wire")).ToHaveAttributeAsync("aria-pressed", "true");
            await ReasonAsync(screen);
        }

        await PressAsync(screen.Button("A week more"));
        await ReadyAsync(screen);
        await PressAsync(screen.Button("Sign"));

        await page.GetByText("Signed by Dr Maren Oduya-Lindqvist").WaitForAsync();
        screen.IsClean();
    }

    [Fact]
    public async Task Two_people_on_one_visit_lose_nothing_and_are_told()
    {
        await using Screen first = await app.OpenAsync();
        await using Screen second = await app.OpenAsync();
        await first.SignInAsync("maren");
        await second.SignInAsync("callum");
        await first.OpenChairAsync("Dario Pellicane");
        await second.OpenChairAsync("Dario Pellicane");

        await second.Button("good").ClickAsync();
        await Assertions.Expect(second.Button("good")).ToHaveAttributeAsync("aria-pressed", "true");
        await second.Page.GetByText("saved", new() { Exact = true }).WaitForAsync();
        await first.Page.Locator("#note").FillAsync("Torque is wanted on 11.");
        await first.Page.Locator("#note").BlurAsync();

        await first.Page.GetByText("Callum Ostrowick has noted something here meanwhile").WaitForAsync();
        await Assertions.Expect(first.Button("good")).ToHaveAttributeAsync("aria-pressed", "true");
        Assert.Equal("Torque is wanted on 11.", await first.Page.Locator("#note").InputValueAsync());
        first.IsClean();
        second.IsClean();
    }

    [Fact]
    public async Task An_assistant_prepares_and_is_offered_no_signature()
    {
        await using Screen screen = await app.OpenAsync();
        await screen.SignInAsync("callum");
        await screen.OpenChairAsync("Inés Valdoro");

        Assert.Equal(0, await screen.Button("Sign").CountAsync());
        await screen.Page.GetByText("Nickel allergy, patch test positive").WaitForAsync();
    }

    [Fact]
    public async Task The_reception_sees_the_diary_and_not_the_chair()
    {
        await using Screen screen = await app.OpenAsync();
        await screen.SignInAsync("gwen");

        Assert.Equal(0, await screen.Page.GetByText("Chair", new() { Exact = true }).CountAsync());
        await screen.Page.GotoAsync("/stock");
        await screen.Page.GetByText("Not for this role").First.WaitForAsync();
    }

    [Fact]
    public async Task A_stranger_is_asked_to_sign_in_and_a_guesser_is_locked_out()
    {
        await using Screen screen = await app.OpenAsync();
        await screen.Page.GotoAsync("/stock");
        await screen.Page.WaitForURLAsync("**/sign-in**");
        for (int i = 0; i < 6; i++)
        {
            await screen.Page.GetByLabel("Name of your account").FillAsync("noor");
            await screen.Page.GetByLabel("Password").FillAsync("not the password");
            await screen.Page.EvaluateAsync("document.body.dataset.before = ''"); // to tell the answer from this page
            await screen.Button("Sign in").ClickAsync();
            await screen.Page.Locator("body:not([data-before]) .told").WaitForAsync();
        }

        await screen.Page.GetByText("This account rests").WaitForAsync();
    }

    [Fact]
    public async Task A_tooth_is_moved_by_the_keyboard_alone_and_the_move_is_taken_back()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        await screen.OpenChairAsync("Oliver Quenby-Sato");
        await page.Locator("[data-tooth='13']").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        ILocator occlusal = page.GetByLabel("occlusal in mm");
        double before = Number(await occlusal.InputValueAsync());

        await screen.Button("toward the bite").FocusAsync();
        await page.Keyboard.PressAsync("Space");
        await Assertions.Expect(occlusal).Not.ToHaveValueAsync(Text(before));
        Assert.Equal(before + 0.1, Number(await occlusal.InputValueAsync()), 2);

        await screen.Button("Undo").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(occlusal).ToHaveValueAsync(Text(before));
        screen.IsClean();
    }

    [Fact]
    public async Task A_tooth_is_dragged_and_its_force_follows()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("maren");
        await screen.OpenChairAsync("Fatima Zahrani-Boult");
        await page.Locator("svg[data-fingers='ready']").WaitForAsync();
        ILocator tooth = page.Locator("[data-tooth='12']");
        string? before = await tooth.GetAttributeAsync("aria-label");
        LocatorBoundingBoxResult box = (await tooth.Locator(".slot").BoundingBoxAsync())!; // it is on the screen

        await page.Mouse.MoveAsync(box.X + box.Width / 2, box.Y + box.Height / 2);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + box.Width / 2, box.Y + box.Height / 2 + 12, new() { Steps = 6 });
        await page.Mouse.UpAsync();

        await Assertions.Expect(tooth).Not.ToHaveAttributeAsync("aria-label", before!);
        await page.GetByText("Positions of today, measured").WaitForAsync();
        screen.IsClean();
    }

    [Fact]
    public async Task Positions_are_taken_as_forecast_in_one_tap_and_the_wire_is_shown_at_work()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await screen.SignInAsync("teodor");
        await screen.OpenChairAsync("Mei-Lin Castellan");

        await screen.Button("As forecast").ClickAsync();
        await page.GetByText("Positions of today, as forecast").WaitForAsync();
        await page.GetByText("on the teeth, on engagement.").First.WaitForAsync();
        await screen.Button("At work").ClickAsync();
        await page.GetByText("at work, once every displaced tooth has come 20 % of its way").WaitForAsync();
        screen.IsClean();
    }

    [Fact]
    public async Task A_bracket_that_came_off_is_noted_by_keyboard_computed_without_kept_and_taken_back()
    {
        await using Screen screen = await app.OpenAsync(390, 844);
        IPage page = screen.Page;
        await screen.SignInAsync("callum");
        await screen.OpenChairAsync("Sanaa El-Khouri-Mills");
        ILocator tooth = page.Locator("[data-tooth='22']");

        await PressAsync(screen.Button("Not bonded, absent"));
        await Looks.AreFreeAsync(page);
        await PressAsync(screen.Button("22 upper left lateral incisor, not bonded"));

        await CalledAsync(", not bonded");
        await Looks.AreFreeAsync(page);
        await page.GetByText("saved", new() { Exact = true }).WaitForAsync();
        await page.ReloadAsync();
        await CalledAsync(", not bonded");

        await PressAsync(tooth);
        await PressAsync(screen.Button("Absent"));
        await CalledAsync(", absent");
        await PressAsync(screen.Button("Undo"));
        await CalledAsync(", not bonded");
        await PressAsync(screen.Button("Bonded"));
        await Assertions.Expect(tooth.Locator(".slot")).ToHaveCountAsync(1);
        screen.IsClean();

        Task CalledAsync(string ending) => Assertions.Expect(tooth).ToHaveAttributeAsync(
            "aria-label", "upper left lateral incisor (22, ISO)" + ending);
    }

    [Fact]
    public async Task A_passkey_is_added_and_opens_the_door()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        ICDPSession tools = await page.Context.NewCDPSessionAsync(page);
        await tools.SendAsync("WebAuthn.enable");
        await tools.SendAsync("WebAuthn.addVirtualAuthenticator", new Dictionary<string, object>
        {
            ["options"] = new Dictionary<string, object>
            {
                ["protocol"] = "ctap2", ["transport"] = "internal", ["hasResidentKey"] = true,
                ["hasUserVerification"] = true, ["isUserVerified"] = true, ["automaticPresenceSimulation"] = true,
            },
        });
        // A passkey belongs to a host with a name.
        string home = app.Address.Replace("127.0.0.1", "localhost", StringComparison.Ordinal);
        await page.GotoAsync(home + "/sign-in");
        await page.GetByLabel("Name of your account").FillAsync("teodor");
        await page.GetByLabel("Password").FillAsync(Archwright.Practice.Demo.DemoPractice.Password);
        await screen.Button("Sign in").ClickAsync();
        await page.Locator("ol.day").WaitForAsync();
        await page.GotoAsync(home + "/account");
        await screen.Button("Add a passkey on this device").ClickAsync();
        await page.GetByText("The passkey is added").WaitForAsync();

        await screen.Button("Sign out").ClickAsync();
        await screen.Button("Sign in with a passkey").ClickAsync();

        await page.Locator("ol.day").WaitForAsync();
    }

    [GeneratedRegex(@"^All \d+ wires$")]
    private static partial Regex AllWires();

    private static async Task FitAsync(Screen screen, string wire)
    {
        IPage page = screen.Page;
        try
        {
            await page.Locator(".candidate").First.WaitForAsync();
        }
        catch (TimeoutException late)
        {
            throw new TimeoutException($"No wires were compared: {await page.Locator("main").InnerTextAsync()}", late);
        }

        ILocator all = page.GetByRole(AriaRole.Button, new() { NameRegex = AllWires() });
        if (await all.CountAsync() > 0)
            await all.ClickAsync();
        await screen.Button($"Fit {wire},", exact: false).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = $"Fit {wire},", Pressed = true }).First.WaitForAsync();
        await ReasonAsync(screen);
    }

    private static async Task ReadyAsync(Screen screen)
    {
        try
        {
            await screen.Page.GetByText("Ready to sign").WaitForAsync();
        }
        catch (TimeoutException late)
        {
            throw new TimeoutException(await screen.Page.Locator("#hinders").InnerTextAsync(), late);
        }
    }

    // Where the choice is other than the advice, the screen asks for a reason; it does so with the choice.
    private static async Task ReasonAsync(Screen screen)
    {
        if (await screen.Button("Seen in the mouth").CountAsync() > 0)
            await PressAsync(screen.Button("Seen in the mouth"));
    }

    private static async Task PressAsync(ILocator what)
    {
        await what.FocusAsync();
        await what.PressAsync("Enter");
    }

    private static async Task<int> PiecesAsync(IPage page, string lot)
    {
        string row = await page.Locator("tr", new() { HasText = lot }).Locator("td.number").InnerTextAsync();
        return int.Parse(row, System.Globalization.CultureInfo.InvariantCulture);
    }

    private static double Number(string text) =>
        double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static string Text(double value) =>
        value.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
}
