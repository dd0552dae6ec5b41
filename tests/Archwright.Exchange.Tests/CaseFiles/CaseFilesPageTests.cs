using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using Archwright.Dentition.Ties;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Csv;
using Archwright.Exchange.Json;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.Tests.CaseFiles;

/// <summary>The page <c>docs/case-files.md</c> says what the readers do.</summary>
[Trait("basis", "docs")]
public sealed class CaseFilesPageTests
{
    private static readonly string Page = File.ReadAllText(
        Path.Combine(AppContext.BaseDirectory, "docs", "case-files.md"));

    [Fact]
    public void The_examples_of_the_page_read_without_a_problem()
    {
        string[] examples = Blocks("json");

        Assert.Equal(4, examples.Length);
        foreach (string example in examples)
        {
            if (example.Contains(TwistCaseReader.Format, StringComparison.Ordinal))
                Assert.Empty(Texts.ReadTwist(example).Problems);
            else if (example.Contains(BendCaseReader.Format, StringComparison.Ordinal))
                Assert.Empty(Texts.ReadBend(example).Problems);
            else
                Assert.Empty(Texts.ReadCase(example).Problems);
        }

        string table = Assert.Single(Blocks("csv"));
        Assert.Empty(CeilingsReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(table))).Problems);
    }

    [Fact]
    public void The_page_names_every_key() => Assert.All(
        CaseKeys.OfCase.Concat(CaseKeys.OfTwistCase).Concat(CaseKeys.OfBendCase).SelectMany(set => set.Keys)
            .Distinct(StringComparer.Ordinal),
        key => Assert.True(
            Page.Contains($"`{key}`", StringComparison.Ordinal)
                || Page.Contains($"\"{key}\"", StringComparison.Ordinal), key));

    [Fact]
    public void The_page_has_the_limits_of_every_figure()
    {
        Quantity[] quantities = [.. QuantitiesOfTheList()];

        Assert.NotEmpty(quantities);
        Assert.All(quantities, quantity => Assert.Contains(Row(quantity), Page, StringComparison.Ordinal));
        Assert.Equal(quantities.Length,
            Regex.Count(Page, @"^\| .* \| -?[0-9.]+ to [0-9.]+ \|.*\|$", RegexOptions.Multiline,
                TimeSpan.FromSeconds(1)));
    }

    [Fact]
    public void The_page_has_the_figures_of_every_tie()
    {
        foreach (TieDefault tie in TieDefaults.Table)
        {
            string[] cells = Regex.Match(Page, $@"^\| `{tie.Kind.ToString().ToLowerInvariant()}` \|.*$",
                RegexOptions.Multiline, TimeSpan.FromSeconds(1))
                .Value.Split('|', StringSplitOptions.TrimEntries);

            Assert.Equal(8, cells.Length);
            Assert.Equal(Shown(tie.SeatingForce), cells[3]);
            Assert.Equal(Shown(tie.Stiffness), cells[4]);
            Assert.Equal(Shown(tie.Reach), cells[5]);
            Assert.NotEqual("", cells[6]);
            Assert.NotEqual("", tie.Source);
            Assert.Equal(double.PositiveInfinity, tie.Holds);
        }

        Assert.Equal(Enum.GetValues<TieKind>().Length, TieDefaults.Table.Length);
    }

    private static string Shown(double figure) => figure == 0 ? "" : figure.ToString(CultureInfo.InvariantCulture);

    private static string Row(Quantity q) => string.Create(
        CultureInfo.InvariantCulture, $"| {q.Name} | {q.Low:0.######} to {q.High:0.######} | {q.Unit} |");

    private static IEnumerable<Quantity> QuantitiesOfTheList() => typeof(Quantities)
        .GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic)
        .Where(field => field.FieldType == typeof(Quantity)).Select(field => (Quantity)field.GetValue(null)!);

    private static string[] Blocks(string language) =>
    [
        .. Regex.Matches(Page, $"```{language}\n(.*?)```", RegexOptions.Singleline, TimeSpan.FromSeconds(1))
            .Select(m => m.Groups[1].Value),
    ];
}
