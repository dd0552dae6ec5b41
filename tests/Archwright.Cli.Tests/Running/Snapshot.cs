using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace Archwright.Cli.Tests.Running;

/// <summary>Compares what the screen shows with a small text file next to the tests. After a change that is meant, run
/// the tests once with ARCHWRIGHT_SNAPSHOTS=write and read the difference before it is committed.</summary>
internal static partial class Snapshot
{
    /// <summary>Compares a text with the snapshot of this name.</summary>
    public static void Matches(string name, string text, [CallerFilePath] string caller = "")
    {
        string actual = Normal(text);
        if (Environment.GetEnvironmentVariable("ARCHWRIGHT_SNAPSHOTS") == "write")
        {
            string folder = Path.Combine(Path.GetDirectoryName(caller) ?? ".", "..", "Snapshots");
            File.WriteAllText(Path.Combine(folder, name + ".txt"), actual);
            return;
        }

        using Stream? stream = typeof(Snapshot).Assembly.GetManifestResourceStream($"snapshots/{name}.txt");
        Assert.True(stream is not null, $"There is no snapshot {name}.txt; make it with ARCHWRIGHT_SNAPSHOTS=write.");
        using var reader = new StreamReader(stream);
        Assert.Equal(Normal(reader.ReadToEnd()), actual);
    }

    // Line ends of the machine, folders and times differ from run to run and mean nothing.
    private static string Normal(string text)
    {
        string lines = text.Replace("\r\n", "\n", StringComparison.Ordinal);
        lines = lines.Replace(Path.GetTempPath(), "<tmp>/", StringComparison.Ordinal);
        lines = Folders().Replace(lines, "<folder>/");
        lines = Times().Replace(lines, "<time> ms");
        return Residuals().Replace(lines, "Equilibrium to <residual> N");
    }

    [GeneratedRegex(@"<tmp>/archwright-[a-z0-9.]+/")]
    private static partial Regex Folders();

    [GeneratedRegex(@"\d+(\.\d+)? ms")]
    private static partial Regex Times();

    [GeneratedRegex(@"Equilibrium to [0-9e.+-]+ N")]
    private static partial Regex Residuals();
}
