using System.Text.RegularExpressions;

namespace Archwright.Architecture.Tests;

/// <summary>Documents lead where they say they do. Rests on the files themselves.</summary>
[Trait("basis", "docs")]
public sealed partial class DocumentTests
{
    private static readonly string[] Documents =
        [.. SourceTree.Files.Where(file => file.EndsWith(".md", StringComparison.Ordinal))];

    [Fact]
    public void Every_link_inside_the_project_leads_somewhere() =>
        Findings.None(
            "A reader who follows a dead link stops trusting the page:",
            Findings.Some("documents", Documents).SelectMany(file => DeadLinks(file, SourceTree.Read(file))));

    [Fact]
    public void Every_picture_is_shown_on_some_page() =>
        Findings.None(
            "A picture that no page shows is left over, or a page forgot it:",
            SourceTree.Files.Where(file => file.StartsWith("docs/images/", StringComparison.Ordinal))
                .Where(picture => !Documents.Any(page => SourceTree.Read(page).Contains(
                    Path.GetFileName(picture), StringComparison.Ordinal))));

    [Fact]
    public void Every_file_of_test_data_is_read_by_a_test() =>
        Findings.None(
            "Data that no test names proves nothing:",
            SourceTree.Under("tests/", "").Where(IsData).Where(data => !Readers(data).Any(reader =>
                SourceTree.Read(reader).Contains(Path.GetFileName(data), StringComparison.Ordinal)
                || SourceTree.Read(reader).Contains($"{Path.GetFileName(Path.GetDirectoryName(data))}/*", StringComparison.Ordinal))));

    [Fact]
    public void Every_citation_has_its_entry_in_the_references()
    {
        HashSet<string> keys = [.. BibliographyKey().Matches(SourceTree.Read("docs/references.bib")).Select(m => m.Groups["key"].Value)];
        Assert.NotEmpty(keys);

        Findings.None(
            "A source that cannot be looked up is no source; add it to docs/references.bib:",
            from file in SourceTree.Files
            where Path.GetExtension(file) is ".cs" or ".md" or ".csv"
            from Match match in Citation().Matches(SourceTree.Read(file))
            where !keys.Contains(match.Groups["key"].Value)
            select $"{file} cites [@{match.Groups["key"].Value}]");
    }

    [Fact]
    public void No_reference_is_listed_twice() =>
        Findings.None(
            "Two entries under one key: a reader would see only one of them.",
            BibliographyKey().Matches(SourceTree.Read("docs/references.bib"))
                .GroupBy(match => match.Groups["key"].Value, StringComparer.Ordinal)
                .Where(group => group.Count() > 1).Select(group => group.Key));

    [Fact]
    public void The_glossary_is_in_order_and_defines_each_term_once()
    {
        string[] terms = [.. GlossaryTerm().Matches(SourceTree.Read("docs/glossary.md")).Select(m => m.Groups["term"].Value)];

        Assert.NotEmpty(terms);
        Assert.Equal(terms.Order(StringComparer.OrdinalIgnoreCase).Distinct(StringComparer.OrdinalIgnoreCase), terms);
    }

    [Fact]
    public void Every_decision_is_in_the_list_of_decisions() =>
        Findings.None(
            "A decision that is not in docs/decisions/README.md will not be found:",
            SourceTree.Under("docs/decisions/", ".md").Select(file => Path.GetFileName(file))
                .Where(name => name != "README.md" && !SourceTree.Read("docs/decisions/README.md").Contains(name, StringComparison.Ordinal)));

    [Fact]
    public void A_planted_dead_link_is_found()
    {
        Assert.Equal(
            ["docs/index.md: nowhere.md", "docs/index.md: ../README.md#no-such-heading"],
            DeadLinks("docs/index.md", "[a](nowhere.md) [b](../README.md#no-such-heading) [c](../README.md) ![d](https://x.y/z.png)"));
        Assert.Equal("what-it-leaves-out-and-why", Slug("What it leaves out, and why"));
    }

    private static IEnumerable<string> DeadLinks(string file, string text) =>
        from Match match in Link().Matches(FencedCode().Replace(text, ""))
        let target = match.Groups["target"].Value
        where !target.Contains("://", StringComparison.Ordinal) && !target.StartsWith("mailto:", StringComparison.Ordinal)
        where !LeadsSomewhere(file, target)
        select $"{file}: {target}";

    private static bool LeadsSomewhere(string from, string target)
    {
        string[] parts = target.Split('#', 2);
        string folder = Path.Combine(SourceTree.Root, Path.GetDirectoryName(from)!);
        string path = parts[0].Length == 0 ? Path.Combine(SourceTree.Root, from) : Path.GetFullPath(Path.Combine(folder, parts[0]));
        if (!Path.Exists(path))
            return false;

        return parts.Length == 1
               || Heading().Matches(File.ReadAllText(path)).Any(match => Slug(match.Groups["text"].Value) == parts[1]);
    }

    private static string Slug(string heading) =>
        NoPartOfSlug().Replace(heading.Trim().ToLowerInvariant(), "").Replace(' ', '-');

    private static bool IsData(string file) =>
        Path.GetExtension(file) is ".json" or ".csv" or ".txt" or ".svg" && Path.GetFileName(file) != "packages.lock.json";

    private static IEnumerable<string> Readers(string data)
    {
        string project = string.Join('/', data.Split('/').Take(2)) + "/";
        return SourceTree.Files.Where(file => file.StartsWith(project, StringComparison.Ordinal)
                                              && Path.GetExtension(file) is ".cs" or ".csproj");
    }

    [GeneratedRegex(@"\[[^\]]*\]\((?<target>[^)\s]+)\)", RegexOptions.ExplicitCapture)]
    private static partial Regex Link();

    [GeneratedRegex("^```.*?^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex FencedCode();

    [GeneratedRegex(@"^#+ (?<text>.+)$", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Heading();

    [GeneratedRegex(@"[^\w\- ]")]
    private static partial Regex NoPartOfSlug();

    [GeneratedRegex(@"^@\w+\{(?<key>[^,\s]+),", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex BibliographyKey();

    [GeneratedRegex(@"\[@(?<key>[\w:-]+)", RegexOptions.ExplicitCapture)]
    private static partial Regex Citation();

    [GeneratedRegex(@"^\*\*(?<term>[^*]+)\*\*", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex GlossaryTerm();
}
