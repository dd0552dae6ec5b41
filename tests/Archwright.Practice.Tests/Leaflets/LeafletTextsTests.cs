using Archwright.Practice.Leaflets;

namespace Archwright.Practice.Tests.Leaflets;

/// <summary>The texts of all languages. Rests on the English ones, which are complete by the writer's tests.</summary>
[Trait("basis", "law")]
public sealed class LeafletTextsTests
{
    public static TheoryData<string> Others => [.. LeafletTexts.Codes.Where(code => code != "en")];

    [Theory, MemberData(nameof(Others))]
    public void Every_language_has_every_text_with_the_same_places(string code)
    {
        LeafletTexts english = LeafletTexts.In("en");
        LeafletTexts other = LeafletTexts.In(code);

        foreach (string key in LeafletTexts.EditableKeys)
        {
            Assert.NotEmpty(other[key]);
            Assert.Equal(OwnTextCheck.Places(english[key]), OwnTextCheck.Places(other[key]));
        }
    }

    [Theory, MemberData(nameof(Others))]
    public void Every_language_but_english_says_that_a_speaker_has_yet_to_review_it(string code) =>
        Assert.NotEmpty(LeafletTexts.In(code).ReviewNote);

    [Fact]
    public void English_is_ours_and_needs_no_such_note() => Assert.Empty(LeafletTexts.In("en").ReviewNote);

    [Fact]
    public void Arabic_alone_runs_from_right_to_left() =>
        Assert.Equal(["ar"], LeafletTexts.Codes.Where(code => LeafletTexts.In(code).IsRightToLeft));

    [Theory]
    [InlineData("Polish", "pl")]
    [InlineData("arabic", "ar")]
    [InlineData("Turkish", null)]
    public void A_patient_s_language_is_found_by_its_english_name(string name, string? code) =>
        Assert.Equal(code, LeafletTexts.CodeOf(name));

    [Fact]
    public void A_language_without_texts_is_refused() =>
        Assert.Throws<ArgumentException>(() => LeafletTexts.In("xx"));
}
