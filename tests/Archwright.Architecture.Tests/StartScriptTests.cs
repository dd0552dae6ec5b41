using System.Diagnostics;

namespace Archwright.Architecture.Tests;

/// <summary>What <c>./start</c> does with what it is told, and <c>start.ps1</c> alike: run in a folder of their own,
/// with a program that writes down how it was called in place of the real one. Rests on what they promise.</summary>
[Trait("basis", "law")]
public sealed class StartScriptTests : IDisposable
{
    private readonly string top = Directory.CreateTempSubdirectory("archwright-start-").FullName;
    private readonly string elsewhere = Directory.CreateTempSubdirectory("archwright-from-").FullName;

    public StartScriptTests()
    {
        foreach (string script in new[]
                 {
                     "start", "start.ps1", "scripts/need-dotnet.sh", "scripts/need-dotnet.ps1",
                 })
        {
            string copy = Path.Combine(top, script);
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(Path.Combine(SourceTree.Root, script), copy);
        }

        // The build does nothing; the program says where it is and what it was given, and fails where it is asked to.
        Write("bin/dotnet", "case $1 in *.dll) shift; exec " + Program + " \"$@\" ;; --version) echo 10 ;; esac");
        Write(
            "artifacts/bin/Archwright.Cli/release/archwright",
            "echo \"$PWD: $*\"; case \" $* \" in *\" --fail \"*) exit 7 ;; esac");
    }

    private string Program => Path.Combine(top, "artifacts/bin/Archwright.Cli/release/archwright");

    public static TheoryData<string> Scripts { get; } = ["start", "start.ps1"];

    [Theory, MemberData(nameof(Scripts))]
    public void Options_go_on_to_the_app_which_runs_where_the_caller_stands(string script)
    {
        (int code, string told, _) = Run(script, "--port", "6000", "--data", "a folder");

        Assert.Equal(0, code);
        Assert.Contains($"{elsewhere}: serve --demo --port 6000 --data a folder\n", told, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Scripts))]
    public void A_case_is_compared_with_the_options_after_it(string script)
    {
        File.WriteAllText(Path.Combine(elsewhere, "case.json"), "{}");

        (int code, string told, _) = Run(script, "case.json", "--top", "5");

        Assert.Equal(0, code);
        Assert.Contains(
            $"{elsewhere}: compare case.json --plot {Path.Combine(top, "archwright-compare.svg")} --top 5\n", told,
            StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Scripts))]
    public void A_case_that_is_not_there_is_told_before_anything_is_built(string script)
    {
        (int code, string told, string faults) = Run(script, "nowhere.json");

        Assert.Equal(2, code);
        Assert.StartsWith("There is no case file nowhere.json.", faults, StringComparison.Ordinal);
        Assert.Contains("--port", faults, StringComparison.Ordinal);
        Assert.DoesNotContain("Building", told, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Scripts))]
    public void Help_says_what_it_takes_and_builds_nothing(string script)
    {
        (int code, string told, _) = Run(script, "--help");

        Assert.Equal(0, code);
        Assert.Contains("--port", told, StringComparison.Ordinal);
        Assert.DoesNotContain("Building", told, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Scripts))]
    public void What_the_program_refuses_is_refused(string script)
    {
        (int code, _, _) = Run(script, "--fail");

        Assert.Equal(7, code);
    }

    public void Dispose()
    {
        Directory.Delete(top, recursive: true);
        Directory.Delete(elsewhere, recursive: true);
    }

    private (int Code, string Told, string Faults) Run(string script, params string[] arguments)
    {
        string shell = script.EndsWith(".ps1", StringComparison.Ordinal) ? "pwsh" : "bash";
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The program in place of the real one is a script of bash.");
        Assert.SkipUnless(
            Environment.GetEnvironmentVariable("PATH")!.Split(':').Any(at => File.Exists(Path.Combine(at, shell))),
            $"No {shell} on this machine.");
        var start = new ProcessStartInfo(shell)
        {
            WorkingDirectory = elsewhere, UseShellExecute = false, RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["PATH"] = $"{Path.Combine(top, "bin")}:{start.Environment["PATH"]}";
        start.Environment.Remove("DISPLAY");
        start.Environment.Remove("WAYLAND_DISPLAY");
        foreach (string one in (string[])[Path.Combine(top, script), .. arguments])
            start.ArgumentList.Add(one);
        using Process process = Process.Start(start)!; // a shell of this machine: see above
        Task<string> faults = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        string told = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, told, faults.GetAwaiter().GetResult());
    }

    private void Write(string name, string text)
    {
        string path = Path.Combine(top, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, "#!/usr/bin/env bash\n" + text + "\n");
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }
}
