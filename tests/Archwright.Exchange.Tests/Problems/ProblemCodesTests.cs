using System.Collections.Immutable;
using System.Reflection;
using System.Text.RegularExpressions;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Tests.Problems;

/// <summary>The list of codes is complete, unique, documented, and every code is provoked once.</summary>
[Trait("basis", "docs")]
public sealed class ProblemCodesTests
{
    private static string Page => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "problems.md"));

    public static TheoryData<string> Codes => [.. ProblemCodes.All.Select(code => code.Code)];

    [Fact]
    public void Every_code_is_in_the_list_once_and_in_the_form_agreed()
    {
        ProblemCode[] declared =
        [
            .. typeof(ProblemCodes).GetFields(BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public)
                .Where(f => f.FieldType == typeof(ProblemCode)).Select(f => (ProblemCode)f.GetValue(null)!),
        ];

        Assert.NotEmpty(declared);
        Assert.Equal(declared.Length, ProblemCodes.All.Length);
        Assert.Equal(declared.ToHashSet(), ProblemCodes.All.ToHashSet());
        Assert.Equal(declared.Length, declared.Select(c => c.Code).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(declared.Length, declared.Select(c => c.Title).Distinct(StringComparer.Ordinal).Count());
        Assert.All(declared, code =>
            Assert.Matches(new Regex("^AW-[A-Z]+-[0-9]{3}$", RegexOptions.None, TimeSpan.FromSeconds(1)), code.Code));
    }

    [Fact]
    public void Every_code_has_a_file_that_provokes_it() => Assert.Equal(
        ProblemCodes.All.Select(c => c.Code).ToHashSet(), Provocations.All.Select(p => p.Code).ToHashSet());

    [Theory, MemberData(nameof(Codes))]
    public void A_file_that_provokes_a_code_gives_it_with_path_and_remedy(string code)
    {
        Provocation provocation = Provocations.Of(code);

        ImmutableArray<Problem> problems = provocation.Read();

        Assert.Contains(problems, p => p.Code == code);
        if (provocation.Alone)
            Assert.All(problems, p => Assert.Equal(code, p.Code));
        Assert.All(problems, AssertComplete);
    }

    [Theory, MemberData(nameof(Codes))]
    public void The_page_shows_a_problem_as_the_reader_says_it(string code)
    {
        Problem problem = Provocations.Of(code).Read().First(p => p.Code == code);
        string title = ProblemCodes.All.Single(c => c.Code == code).Title;

        string expected = $"### {code} · {title}\n\n```\n{Shown(problem)}\n```\n";

        Assert.Contains(expected, Page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_has_no_code_that_is_not_in_the_list()
    {
        var headings = Regex.Matches(Page, "^### (AW-[A-Z]+-[0-9]{3})", RegexOptions.Multiline,
            TimeSpan.FromSeconds(1));

        Assert.Equal(ProblemCodes.All.Select(c => c.Code), headings.Select(h => h.Groups[1].Value));
    }

    internal static string Shown(Problem problem) =>
        $"{problem.Code}  {problem.Path}\n  {problem.Message}\n  {problem.Remedy}";

    internal static void AssertComplete(Problem problem)
    {
        Assert.False(string.IsNullOrWhiteSpace(problem.Path), problem.ToString());
        Assert.False(string.IsNullOrWhiteSpace(problem.Message), problem.ToString());
        Assert.False(string.IsNullOrWhiteSpace(problem.Remedy), problem.ToString());
        Assert.Contains(ProblemCodes.All, code => code.Code == problem.Code);
        Assert.DoesNotContain(problem.Message + problem.Remedy + problem.Path, c =>
            char.IsControl(c) || char.IsSurrogate(c));
        Assert.True(problem.Message.Length < 600 && problem.Remedy.Length < 600 && problem.Path.Length < 300,
            problem.ToString());
        Assert.True(char.IsUpper(problem.Message[0]) || problem.Message[0] == '“', problem.Message);
        Assert.True(problem.Message[^1] is '.' or '?' && problem.Remedy[^1] == '.', problem.ToString());
    }
}
