using System.Text.RegularExpressions;
using Archwright.Dentition.Catalogue;
using Archwright.Practice.Answers;
using Archwright.Practice.Bench;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Values;

namespace Archwright.Practice.Tests.Answers;

/// <summary>Answers to what patients ask. Rests on what such a page must and must never say, and on the bend of the
/// mechanics.</summary>
[Trait("basis", "law")]
public sealed partial class AnswerSheetTests
{
    // As for leaflets.
    private const double MostGrade = 7;

    private static readonly Lazy<IReadOnlyList<AnswerWire>> Bent = new(Bend);

    public static TheoryData<string> Codes => [.. LeafletTexts.Codes];

    [Fact]
    public void In_english_the_whole_and_every_answer_read_at_grade_seven_or_below()
    {
        AnswerSheet sheet = Sheet("en");

        Assert.InRange(ReadingGrade.Of(sheet.AllLines()), 0, MostGrade);
        Assert.All(
            sheet.Sections, section => Assert.InRange(ReadingGrade.Of(section.Lines), -4, MostGrade));
        Assert.InRange(ReadingGrade.Of(sheet.PictureWords), -4, MostGrade);
    }

    [Theory, MemberData(nameof(Codes))]
    public void Every_question_is_answered_and_no_place_is_left_open_and_no_dose_named(string code)
    {
        AnswerSheet sheet = Sheet(code);
        string text = string.Join('\n', sheet.AllLines());

        Assert.Equal(6, sheet.Sections.Count);
        Assert.All(sheet.Sections, section => Assert.All(section.Lines, Assert.NotEmpty));
        Assert.DoesNotContain('{', text);
        Assert.DoesNotMatch(Dose(), text);
        Assert.Contains(LeafletTexts.In(code)["feel.relief"], text, StringComparison.Ordinal);
        Assert.Contains("Fernhollow", sheet.Foot, StringComparison.Ordinal);
        Assert.Equal(code == "en", sheet.ReviewNote.Length == 0);
    }

    [Fact]
    public void A_planted_dose_is_found() => Assert.Matches(Dose(), "Take 2 tablets of 400 mg.");

    [Fact]
    public void The_picture_is_told_with_the_figures_of_the_bend()
    {
        AnswerSheet sheet = Sheet("en");
        double grams = AnswerSheet.Grams(Bent.Value[0].Bend.At(1, back: true)!.Value);

        Assert.Equal(4, sheet.PictureWords.Count);
        Assert.Contains(
            $"still pushes as hard as {grams.ToString("0", System.Globalization.CultureInfo.InvariantCulture)} grams",
            sheet.PictureWords[1], StringComparison.Ordinal);
        Assert.Equal("A is the wire you have now.", sheet.PictureWords[2]);
        Assert.Contains("does not push any more", sheet.PictureWords[3], StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_picture_the_answers_stand_and_one_that_failed_is_told()
    {
        Assert.Empty(AnswerSheet.Write(LeafletTexts.In("en"), "F", []).PictureWords);
        AnswerWire failed = Bent.Value[0] with { Bend = BenchCurve.Not("No equilibrium.") };

        Assert.Equal(
            ["This picture could not be made today."],
            AnswerSheet.Write(LeafletTexts.In("en"), "F", [failed, Bent.Value[1]]).PictureWords);
    }

    [Theory]
    [InlineData("niti-018", "ss-018")]
    [InlineData("bti-017x025", "ss-017x025")]
    [InlineData("ss-019x025", "niti-019x025")]
    public void A_wire_is_compared_with_steel_of_its_size_and_steel_with_a_springy_one(string wire, string other)
    {
        (CatalogueWire first, CatalogueWire like) = AnswerWires.For(wire)!.Value; // the catalogue has them

        Assert.Equal((wire, other), (first.Id, like.Id));
        Assert.Null(AnswerWires.For("our own wire"));
    }

    [Fact]
    public void Every_wire_of_the_catalogue_has_one_to_be_compared_with() => Assert.All(
        WireCatalogue.Default.Wires,
        wire => Assert.Equal(wire.Section.IsRound, AnswerWires.For(wire.Id)!.Value.Other.Section.IsRound));

    private static AnswerSheet Sheet(string code) =>
        AnswerSheet.Write(LeafletTexts.In(code), "Fernhollow", Bent.Value);

    private static IReadOnlyList<AnswerWire> Bend()
    {
        (CatalogueWire first, CatalogueWire other) = AnswerWires.General;
        BenchCurve one = BenchTests.Bend(first, 36, out double? setOne);
        BenchCurve two = BenchTests.Bend(other, 36, out double? setTwo);
        return [new AnswerWire("A", first, true, one, setOne), new AnswerWire("B", other, false, two, setTwo)];
    }

    [GeneratedRegex(@"\d\s*(mg|ml|µg|tablet|comprimido|قرص|ملغ)", RegexOptions.IgnoreCase)]
    private static partial Regex Dose();
}
