using System.Text.RegularExpressions;

namespace Archwright.Architecture.Tests;

/// <summary>A type is found where its name says. Rests on the house's own rule.</summary>
[Trait("basis", "law")]
public sealed partial class NamespaceTests
{
    [Fact]
    public void A_file_stands_in_the_folder_that_its_namespace_names() =>
        Findings.None(
            "A namespace is the path of its folder: who reads a name then knows where the file is.",
            Findings.Some("source files", SourceTree.Under("src/", ".cs"))
                .SelectMany(file => Misplaced(file, SourceTree.Read(file))));

    [Fact]
    public void A_planted_stray_namespace_is_found()
    {
        const string file = "src/Archwright.Dentition/Teeth/Crown.cs";

        Assert.Empty(Misplaced(file, "namespace Archwright.Dentition.Teeth;\n"));
        Assert.Single(Misplaced(file, "namespace Archwright.Dentition;\n"));
    }

    private static IEnumerable<string> Misplaced(string file, string text)
    {
        string expected = string.Join('.', file.Split('/').Skip(1).SkipLast(1));
        return from Match match in Namespace().Matches(text)
               let found = match.Groups["name"].Value
               where found != expected
               select $"{file} says {found}, its folder says {expected}";
    }

    [GeneratedRegex(@"^namespace (?<name>[\w.]+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Namespace();
}
