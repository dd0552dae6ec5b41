using Archwright.Dentition.Catalogue;
using Archwright.Practice.Bench;
using Archwright.Practice.Settings;
using Archwright.Practice.Values;
using Archwright.Web.Bench;
using Archwright.Web.Drawing;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Extensions.Primitives;

namespace Archwright.Web.Tests.Bench;

/// <summary>What the bench is asked, what it remembers, and how it draws. Rests on itself: an address says what was
/// asked, a curve stands where its figures are.</summary>
[Trait("basis", "law")]
public sealed class BenchQuestionTests
{
    [Fact]
    public void An_address_leads_back_to_the_question_it_was_made_of()
    {
        var asked = new BenchQuestion
        {
            Wires = Listing<string>.Of(["haniti-016", "bti-017x025", "ss-019x025"]), Temperature = 5, Slot = "018",
            Tie = 2.94, IsWet = false,
        };

        (BenchQuestion read, IReadOnlyList<string> problems) = Read(asked.Address);

        Assert.Equal(asked, read);
        Assert.Empty(problems);
        Assert.Equal(BenchQuestion.Usual, Read("/bench").Question);
    }

    [Theory]
    [InlineData("?wires=nothing", "no wire 'nothing'")]
    [InlineData("?wires=ss-016,ss-016", "2 wires are compared at least")]
    [InlineData("?wires=ss-016,ss-018,ss-014,ss-012,ss-020", "4 wires are compared at most")]
    [InlineData("?temperature=NaN", "The temperature 'NaN' is not between 0 and 60 °C. 36 °C is taken.")]
    [InlineData("?temperature=36.5", "'36.5' is not between")]
    [InlineData("?tie=NaN", "The tie 'NaN'")]
    [InlineData("?tie=1e300", "is not between 0 and 5 N")]
    [InlineData("?tie=-1", "is not between 0 and 5 N")]
    [InlineData("?slot=020", "'020' is neither 022 nor 018")]
    [InlineData("?state=%3Cscript%3Ealert(1)%3C%2Fscript%3E%20and%20more", "'<script>alert(1)</script…'")]
    public void What_is_wrong_in_an_address_is_told_and_the_usual_taken(string query, string told)
    {
        (BenchQuestion read, IReadOnlyList<string> problems) = Read("/bench" + query);

        Assert.Contains(problems, problem => problem.Contains(told, StringComparison.Ordinal));
        Assert.InRange(read.Wires.Count, BenchQuestion.FewestWires, BenchQuestion.MostWires);
        Assert.Equal(read.Wires.Count, read.Found.Count);
        Assert.Equal(read, Read(read.Address).Question);
    }

    [Fact]
    public async Task The_same_wire_at_the_same_temperature_is_computed_once()
    {
        using var lab = new BenchLab();
        CatalogueWire wire = Wire("ms-0175");

        BenchSheet first = await lab.SheetAsync(wire, 36, "022", TestContext.Current.CancellationToken);
        BenchSheet again = await lab.SheetAsync(wire, 36, "022", TestContext.Current.CancellationToken);
        await lab.SheetAsync(wire, 37, "022", TestContext.Current.CancellationToken);

        Assert.Same(first, again);
        Assert.Equal(2, lab.Computed);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(
            () => lab.SheetAsync(wire, 38, "022", new CancellationToken(canceled: true)));
        Assert.Null(lab.Known(wire, 38, "022"));
    }

    [Fact]
    public void Curves_stand_where_their_figures_are_and_letters_beside_each_other()
    {
        BenchCurve low = Line(1), same = Line(1), high = Line(2);

        BenchChart chart = BenchChart.Draw(
            [("A", 0, low), ("B", 1, same), ("C", 2, high), ("D", 3, BenchCurve.Not("."))]);

        Assert.Equal(["A", "B", "C"], chart.Lines.Select(line => line.Letter));
        Assert.StartsWith("M58 314L526 170", chart.Lines[0].There, StringComparison.Ordinal);
        Assert.StartsWith("M58 314L526 26", chart.Lines[2].There, StringComparison.Ordinal);
        double[] at = [.. chart.Lines.Select(line => line.LetterAt.Y).Order()];
        Assert.All(at.Zip(at.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 16.9));
        Assert.Equal(4, Enumerable.Range(0, 4).Select(tone => BenchChart.Mark(tone, 0, 0)).Distinct().Count());
    }

    [Fact]
    public void Where_nothing_answers_the_scale_goes_to_one() => Assert.Equal(
        ["0", "0.2", "0.4", "0.6", "0.8", "1"],
        BenchChart.Draw([("A", 0, Line(1e-9))]).Across.Select(line => line.Words));

    [Fact]
    public async Task Sentences_are_made_from_the_figures()
    {
        using var lab = new BenchLab();
        BenchQuestion question = BenchQuestion.Usual;
        List<BenchedWire> wires = [];
        foreach (CatalogueWire wire in question.Found)
        {
            wires.Add(new BenchedWire(wires.Count == 0 ? "A" : "B", wires.Count, await lab.SheetAsync(
                wire, question.Temperature, question.Slot, TestContext.Current.CancellationToken)));
        }

        var maker = new BenchPanels(question, ShownForce.Newton);
        IReadOnlyList<BenchPanel> panels = maker.Of(wires);

        Assert.Equal(["bend", "twist", "slide", "stiffness"], panels.Select(panel => panel.Id));
        Assert.Contains("B no longer pushes 1 mm before the end; A still does", maker.InShort(wires)[0],
            StringComparison.Ordinal);
        Assert.Contains("Let go, it is straight again.", panels[0].Words[0], StringComparison.Ordinal);
        Assert.Contains("it stays bent by", panels[0].Words[1], StringComparison.Ordinal);
        Assert.Contains("A is round", panels[1].Words[0], StringComparison.Ordinal);
        Assert.Contains("In line B slides best", panels[2].Words[^1], StringComparison.Ordinal);
        Assert.Contains("Tipped by 6° A does", panels[2].Words[^1], StringComparison.Ordinal);
        Assert.All(
            panels,
            panel => Assert.All(panel.Table.Rows, row => Assert.Equal(panel.Table.Heads.Count, row.Count)));
    }

    private static BenchCurve Line(double end) => new(
        Listing<BenchPoint>.Of([new BenchPoint(0, 0), new BenchPoint(10, end)]), Listing<BenchPoint>.Empty);

    private static (BenchQuestion Question, IReadOnlyList<string> Problems) Read(string address)
    {
        int query = address.IndexOf('?', StringComparison.Ordinal);
        Dictionary<string, StringValues> asked = QueryHelpers.ParseQuery(query < 0 ? "" : address[query..]);
        return BenchQuestion.Read(Value("wires"), Value("temperature"), Value("slot"), Value("tie"), Value("state"));

        string? Value(string name) => asked.TryGetValue(name, out StringValues value) ? value.ToString() : null;
    }

    private static CatalogueWire Wire(string id) =>
        WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? wire : throw new ArgumentException(id);
}
