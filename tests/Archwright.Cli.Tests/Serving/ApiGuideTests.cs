using System.Diagnostics;
using System.Text.RegularExpressions;
using Archwright.Cli.Tests.Running;
using Archwright.Practice.Clients;

namespace Archwright.Cli.Tests.Serving;

/// <summary>The lines of the API's guide do what the guide says. Rests on the real server and on curl.</summary>
[Trait("basis", "docs")]
public sealed partial class ApiGuideTests(ServedPractice practice)
{
    private static readonly Lazy<string> Guide = new(() =>
    {
        using Stream stream = typeof(ApiGuideTests).Assembly.GetManifestResourceStream("guide/api.md")
            ?? throw new InvalidOperationException("There is no guide.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    });

    public static TheoryData<int> Scripts => [.. Enumerable.Range(0, Script().Count(Guide.Value))];

    [Fact]
    public void There_are_scripts_for_every_part() => Assert.True(Scripts.Count >= 8);

    [Theory, MemberData(nameof(Scripts))]
    public async Task A_script_of_the_guide_runs_and_answers_what_stands_below_it(int index)
    {
        Assert.SkipUnless(File.Exists("/bin/bash") && File.Exists("/usr/bin/curl"), "bash or curl is not here.");
        Match script = Script().Matches(Guide.Value)[index];
        using var folder = new Folder();
        Directory.CreateDirectory(folder.File("examples"));
        await File.WriteAllTextAsync(
            Path.Combine(folder.File("examples"), "upper-mild.json"), ServedPractice.Example("upper-mild.json"));
        (_, string token) = await practice.TokenAsync([.. ApiScopes.All]);
        using Process shell = Process.Start(new ProcessStartInfo(
            "/bin/bash", ["-euo", "pipefail", "-c", script.Groups["body"].Value])
        {
            RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false,
            WorkingDirectory = folder.Path,
            Environment =
            {
                ["ARCHWRIGHT"] = (await practice.AddressAsync()).ToString().TrimEnd('/'), ["TOKEN"] = token,
            },
        })!; // null only when a running process is reused
        Task<string> output = shell.StandardOutput.ReadToEndAsync();
        string error = await shell.StandardError.ReadToEndAsync();
        await shell.WaitForExitAsync();

        Assert.True(shell.ExitCode == 0, error + await output);
        foreach (string expected in script.Groups["answer"].Value.Split('\n', StringSplitOptions.RemoveEmptyEntries))
            Assert.Contains(expected.Trim('…', ' '), await output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_example_client_runs_as_a_program_and_tells_forces_weeks_and_the_way_to_a_working_wire()
    {
        using var folder = new Folder();
        string file = folder.Text("case.json", ServedPractice.Example("upper-mild.json"));
        (_, string token) = await practice.TokenAsync(ApiScope.Compute);
        using Process client = Process.Start(new ProcessStartInfo(
            "dotnet", [Path.Combine(AppContext.BaseDirectory, "Archwright.ExampleClient.dll"), file])
        {
            RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false,
            Environment = { ["ARCHWRIGHT"] = (await practice.AddressAsync()).ToString(), ["TOKEN"] = token },
        })!; // null only when a running process is reused
        Task<string> output = client.StandardOutput.ReadToEndAsync();
        string error = await client.StandardError.ReadToEndAsync();
        await client.WaitForExitAsync();

        Assert.True(client.ExitCode == 0, error + await output);
        foreach (string told in new[] { "tooth 11: labial ", "forecast: 8 weeks", "ladder: " })
            Assert.Contains(told, await output, StringComparison.Ordinal);
    }

    [GeneratedRegex(
        @"^```bash\n(?<body>.*?)^```\n\n```text\n(?<answer>.*?)^```",
        RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Script();
}
