namespace Archwright.Architecture.Tests;

/// <summary>The project's own files, as a reader of it sees them: without what the build makes.</summary>
internal static class SourceTree
{
    private static readonly string[] Made =
        ["artifacts", "bin", "obj", "TestResults", "BenchmarkDotNet.Artifacts", "node_modules", "__pycache__"];

    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Every file, its path from the top with forward slashes, in a fixed order.</summary>
    public static IReadOnlyList<string> Files { get; } =
        [.. Walk(Root).Select(Relative).Order(StringComparer.Ordinal)];

    /// <summary>The files below a folder whose name ends in <paramref name="ending"/>.</summary>
    public static IEnumerable<string> Under(string folder, string ending) => Files.Where(file =>
        file.StartsWith(folder, StringComparison.Ordinal) && file.EndsWith(ending, StringComparison.Ordinal));

    /// <summary>Text of one file, given its path from the top.</summary>
    public static string Read(string file) => File.ReadAllText(Path.Combine(Root, file));

    /// <summary>Lines of one file, given its path from the top.</summary>
    public static string[] Lines(string file) => File.ReadAllLines(Path.Combine(Root, file));

    private static IEnumerable<string> Walk(string folder) =>
        Directory.EnumerateFiles(folder).Concat(
            Directory.EnumerateDirectories(folder).Where(IsOurs).SelectMany(Walk));

    private static bool IsOurs(string folder)
    {
        string name = Path.GetFileName(folder);
        return name == ".ci" || !(name.StartsWith('.') || Made.Contains(name, StringComparer.Ordinal));
    }

    private static string Relative(string path) => Path.GetRelativePath(Root, path).Replace('\\', '/');

    private static string FindRoot()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Archwright.slnx")))
                return at.FullName;
        }

        throw new InvalidOperationException($"No Archwright.slnx in or above {AppContext.BaseDirectory}.");
    }
}
