using Archwright.Practice.Leaflets;
using Archwright.Practice.Tests;
using Archwright.Web.Texts;

namespace Archwright.Web.Tests.Texts;

/// <summary>The texts that a practice may change. Rests on the texts themselves.</summary>
[Trait("basis", "law")]
public sealed class TextListTests
{
    public static TheoryData<string> Codes => [.. LeafletTexts.Codes];

    [Fact]
    public void Every_text_stands_in_one_part() => Assert.Equal(
        LeafletTexts.EditableKeys.Order(StringComparer.Ordinal),
        TextList.Parts.SelectMany(part => part.Keys).Order(StringComparer.Ordinal));

    [Theory, MemberData(nameof(Codes))]
    public void Filled_in_no_text_has_an_open_place(string code)
    {
        LeafletTexts texts = LeafletTexts.In(code);

        Assert.All(LeafletTexts.EditableKeys, key => Assert.DoesNotContain(
            '{', TextList.Filled(texts, texts[key], "Fernhollow", Samples.Today)));
    }

    [Fact]
    public void Texts_of_the_page_that_stand_over_others_are_headings() => Assert.Equal(
        ["page.weeks", "page.wires", "page.diary", "page.noted"], TextList.Parts[2].Keys.Where(TextList.IsHeading));
}
