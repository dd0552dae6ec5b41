using System.Diagnostics;
using System.Text.Json;

namespace Archwright.Browser.Tests;

/// <summary>The program that serves the app. Rests on the contract of the command line.</summary>
[Trait("basis", "law")]
public sealed class ServeTests(PracticeApp app)
{
    [Fact]
    public async Task It_is_well_and_serves_its_own_scripts_whole()
    {
        await using Screen screen = await app.OpenAsync(); // skips where nothing is served
        using var client = new HttpClient { BaseAddress = new Uri(app.Address) };

        Assert.Equal("well", await client.GetStringAsync("/health"));
        Assert.True((await client.GetByteArrayAsync("/_framework/blazor.web.js")).Length > 100_000);
        Assert.True((await client.GetByteArrayAsync("/_content/Archwright.Web/app.css")).Length > 5_000);
    }

    [Fact]
    public async Task With_json_the_address_is_one_document_and_a_new_practice_asks_for_its_first_account()
    {
        string folder = Directory.CreateTempSubdirectory("archwright-own-").FullName;
        using Process server = Process.Start(new ProcessStartInfo(
            "dotnet",
            [
                Path.Combine(AppContext.BaseDirectory, "archwright.dll"), "serve", "--json", "--port", "0", "--data",
                folder,
            ])
        {
            RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false,
        })!; // null only when a running process is reused
        try
        {
            using JsonDocument told = JsonDocument.Parse((await server.StandardOutput.ReadLineAsync())!);
            Assert.Equal("archwright-serve/1", told.RootElement.GetProperty("format").GetString());
            Assert.False(told.RootElement.GetProperty("demo").GetBoolean());
            using var client = new HttpClient();
            string page = await client.GetStringAsync(told.RootElement.GetProperty("address").GetString() + "/");
            Assert.Contains("Make the first account", page, StringComparison.Ordinal);
            Assert.DoesNotContain("Demo practice", page, StringComparison.Ordinal);
        }
        finally
        {
            server.Kill(entireProcessTree: true);
            await server.WaitForExitAsync();
            Directory.Delete(folder, recursive: true);
        }
    }
}
