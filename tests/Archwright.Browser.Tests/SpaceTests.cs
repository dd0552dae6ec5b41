using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>The view in space, and what stands in its place where a device cannot show it. Rests on the screens
/// themselves.</summary>
[Trait("basis", "law")]
public sealed class SpaceTests(PracticeApp app)
{
    [Fact]
    public async Task The_arch_is_drawn_in_space_and_a_tooth_is_chosen_and_dragged_there()
    {
        await using Screen screen = await app.OpenAsync(height: 1300);
        IPage page = screen.Page;
        await screen.SignInAsync("teodor");
        await screen.OpenChairAsync("Lukas Brandvold-Iyer");
        await IsBuiltAsync(screen);
        await screen.Button("In space").ClickAsync();
        await page.Locator(".space[data-drawn] canvas").WaitForAsync();
        await page.GetByText("Shapes after average teeth, for looking alone.").WaitForAsync();
        ILocator label = page.Locator(".space-labels span", new() { HasText = "11" });
        await label.WaitForAsync();

        await screen.Button("11 upper right central incisor", exact: false).ClickAsync();
        ILocator occlusal = page.GetByLabel("occlusal in mm");
        string before = await occlusal.InputValueAsync();
        await Assertions.Expect(label).ToContainTextAsync("cN"); // the view knows of the choice
        LocatorBoundingBoxResult box = (await label.BoundingBoxAsync())!; // it is on the screen
        // The number stands at the edge of the crown; a little toward the root is the crown itself.
        (float x, float y) = (box.X + box.Width / 2, box.Y - 34);
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x, y + 14, new() { Steps = 6 });
        await page.Mouse.UpAsync();

        await Assertions.Expect(occlusal).Not.ToHaveValueAsync(before);
        Assert.True(
            double.Parse(await occlusal.InputValueAsync(), System.Globalization.CultureInfo.InvariantCulture) > 0.5,
            "An upper tooth that is drawn down goes toward the bite.");
        screen.IsClean();
    }

    [Fact]
    public async Task A_device_without_it_is_told_so_and_the_drawings_go_on()
    {
        await using Screen screen = await app.OpenAsync();
        IPage page = screen.Page;
        await page.AddInitScriptAsync(
            "const real = HTMLCanvasElement.prototype.getContext;"
            + "HTMLCanvasElement.prototype.getContext = function (kind, ...more) {"
            + " return kind.startsWith('webgl') ? null : real.call(this, kind, ...more); };");
        await screen.SignInAsync("teodor");
        await screen.OpenChairAsync("Lukas Brandvold-Iyer");
        await IsBuiltAsync(screen);
        await screen.Button("In space").ClickAsync();

        await page.GetByText("This device does not show the view in space").WaitForAsync();
        await screen.Button("Occlusal").ClickAsync();
        await page.Locator("svg.arch [data-tooth='11']").WaitForAsync();
    }

    private static async Task IsBuiltAsync(Screen screen) => Assert.SkipWhen(
        await screen.Button("In space").CountAsync() == 0
        && Environment.GetEnvironmentVariable("ARCHWRIGHT_ALL_SERVERS") is not "1",
        "The program was built without Node, so without the view in space.");
}
