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
    public void Every_button_that_the_first_day_names_stands_on_a_screen()
    {
        string[] screens = [.. SourceTree.Files.Where(file => file.EndsWith(".razor", StringComparison.Ordinal))
            .Select(SourceTree.Read)];
        Findings.None(
            "Whoever looks for a button by its name in the guide must find it:",
            Findings.Some("buttons", Label().Matches(SourceTree.Read("docs/guide/first-day.md"))
                    .Select(match => match.Groups["label"].Value).Distinct())
                .Where(label => !screens.Any(screen => screen.Contains(label, StringComparison.Ordinal))));
    }

    [Fact]
    public void Every_file_of_test_data_is_read_by_a_test() =>
        Findings.None(
            "Data that no test names proves nothing:",
            from data in SourceTree.Under("tests/", "").Where(IsData)
            where !Readers(data).Any(reader => Names(reader, data))
            select data);

    [Fact]
    public void Every_page_that_the_code_names_exists() =>
        Findings.None(
            "A comment sends its reader to a page that is not there:",
            from file in SourceTree.Files
            where Path.GetExtension(file) is ".cs" or ".csv" or ".py"
            from page in Found(PageInCode(), SourceTree.Read(file)).Distinct(StringComparer.Ordinal)
            where !SourceTree.Files.Any(path => path.StartsWith(page.TrimEnd('.'), StringComparison.Ordinal))
            select $"{file} names {page}");

    [Fact]
    public void Every_citation_has_its_entry_in_the_references()
    {
        HashSet<string> keys = [.. Bibliography()];

        Findings.None(
            "A source that cannot be looked up is no source; add it to docs/references.bib:",
            from file in SourceTree.Files
            where Path.GetExtension(file) is ".cs" or ".md" or ".csv"
            from key in Found(Citation(), SourceTree.Read(file))
            where !keys.Contains(key)
            select $"{file} cites [@{key}]");
    }

    [Fact]
    public void No_reference_is_listed_twice() =>
        Findings.None(
            "Two entries under one key: a reader would see only one of them.",
            Bibliography().GroupBy(key => key, StringComparer.Ordinal)
                .Where(group => group.Count() > 1).Select(group => group.Key));

    [Fact]
    public void The_glossary_is_in_order_and_defines_each_term_once()
    {
        var terms = Findings.Some("terms", Found(GlossaryTerm(), SourceTree.Read("docs/glossary.md")));

        Assert.Equal(
            terms.Order(StringComparer.OrdinalIgnoreCase).Distinct(StringComparer.OrdinalIgnoreCase), terms);
    }

    [Fact]
    public void Every_decision_is_in_the_list_of_decisions()
    {
        string list = SourceTree.Read("docs/decisions/README.md");

        Findings.None(
            "A decision that is not in docs/decisions/README.md will not be found:",
            SourceTree.Under("docs/decisions/", ".md").Select(file => Path.GetFileName(file))
                .Where(name => name != "README.md" && !list.Contains(name, StringComparison.Ordinal)));
    }

    [Fact]
    public void Every_test_that_the_file_of_risks_names_is_there()
    {
        string[] rows =
        [
            .. Findings.Some("rows of hazards", SourceTree.Lines("docs/risks.md")
                .Where(line => line.StartsWith("| ", StringComparison.Ordinal)).Skip(1)),
        ];

        Findings.None("A control without a test may go unseen:", rows.SelectMany(MissingTests));
        Assert.NotEmpty(MissingTests("| x | y | z | `DocumentTests.No_such_promise` |"));
        Assert.NotEmpty(MissingTests("| x | y | z | |"));
    }

    // A class of tests, a promise of it, or a rule that its cases hold.
    private static IEnumerable<string> MissingTests(string row)
    {
        string cell = row.TrimEnd(' ', '|').Split('|')[^1];
        Match[] named = [.. TestName().Matches(cell).OfType<Match>()];
        if (!row.TrimEnd().EndsWith('|') || named.Length == 0)
            return [$"{row[..Math.Min(60, row.Length)]} names no test"];

        return named.Where(one => !SourceTree.Under("tests/", $"/{one.Groups["class"].Value}.cs").Any(file =>
                one.Groups["promise"] is not { Success: true } promise
                || SourceTree.Read(file).Contains($" {promise.Value}(", StringComparison.Ordinal)))
            .Select(one => one.Value)
            .Concat(RuleName().Matches(cell).OfType<Match>().Select(one => one.Groups[1].Value)
                .Where(rule => !SourceTree.Read("tests/Archwright.Practice.Tests/Rules/RuleCases.cs")
                    .Contains(rule, StringComparison.Ordinal)));
    }

    [GeneratedRegex(@"(?<!\*)\*(?<label>[A-Z][^*\n]+)\*(?!\*)")]
    private static partial Regex Label();

    [GeneratedRegex(@"`(?<class>\w+Tests)(\.(?<promise>\w+))?`")]
    private static partial Regex TestName();

    [GeneratedRegex(@"\(`(\w+)`\)")]
    private static partial Regex RuleName();

    [Fact]
    public void A_planted_dead_link_is_found()
    {
        const string page =
            "[a](nowhere.md) [b](../README.md#no-such-heading) [c](../README.md) ![d](https://x.y/z.png)";

        Assert.Equal(
            ["docs/index.md: nowhere.md", "docs/index.md: ../README.md#no-such-heading"],
            DeadLinks("docs/index.md", page));
        Assert.Equal("what-it-leaves-out-and-why", Slug("What it leaves out, and why"));
    }

    private static IEnumerable<string> DeadLinks(string file, string text) =>
        from target in Found(Link(), FencedCode().Replace(text, ""))
        where !target.Contains("://", StringComparison.Ordinal)
              && !target.StartsWith("mailto:", StringComparison.Ordinal)
              && !LeadsSomewhere(file, target)
        select $"{file}: {target}";

    private static bool LeadsSomewhere(string from, string target)
    {
        string[] parts = target.Split('#', 2);
        string page = Path.Combine(SourceTree.Root, from);
        string path = parts[0].Length == 0 ? page : Path.Combine(Path.GetDirectoryName(page)!, parts[0]);
        return Path.Exists(path)
               && (parts.Length == 1 || Found(Heading(), File.ReadAllText(path)).Select(Slug).Contains(parts[1]));
    }

    private static string Slug(string heading) =>
        NoPartOfSlug().Replace(heading.Trim().ToLowerInvariant(), "").Replace(' ', '-');

    private static bool IsData(string file) =>
        Path.GetExtension(file) is ".json" or ".csv" or ".txt" or ".svg"
        && Path.GetFileName(file) != "packages.lock.json";

    private static IEnumerable<string> Readers(string data)
    {
        string project = string.Join('/', data.Split('/').Take(2)) + "/";
        return SourceTree.Under(project, ".cs").Concat(SourceTree.Under(project, ".csproj"));
    }

    // By its name, or as one of all files of its folder.
    private static bool Names(string reader, string data)
    {
        string text = SourceTree.Read(reader);
        return text.Contains(Path.GetFileName(data), StringComparison.Ordinal)
               || text.Contains($"{Path.GetFileName(Path.GetDirectoryName(data))}/*", StringComparison.Ordinal);
    }

    private static IEnumerable<string> Bibliography() =>
        Findings.Some("references", Found(BibliographyKey(), SourceTree.Read("docs/references.bib")));

    private static IEnumerable<string> Found(Regex pattern, string text) =>
        pattern.Matches(text).Select(match => match.Groups["found"].Value);

    [GeneratedRegex(@"\[[^\]]*\]\((?<found>[^)\s]+)\)", RegexOptions.ExplicitCapture)]
    private static partial Regex Link();

    [GeneratedRegex("^```.*?^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex FencedCode();

    [GeneratedRegex(@"^#+ (?<found>.+)$", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Heading();

    [GeneratedRegex(@"[^\w\- ]")]
    private static partial Regex NoPartOfSlug();

    [GeneratedRegex(@"(?<found>\bdocs/(theory|guide|decisions|schema|images)/[\w./-]+|\bdocs/[\w-]+\.\w+)")]
    private static partial Regex PageInCode();

    [GeneratedRegex(@"^@\w+\{(?<found>[^,\s]+),", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex BibliographyKey();

    [GeneratedRegex(@"\[@(?<found>[\w:-]+)", RegexOptions.ExplicitCapture)]
    private static partial Regex Citation();

    [GeneratedRegex(@"^\*\*(?<found>[^*]+)\*\*", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex GlossaryTerm();
}
