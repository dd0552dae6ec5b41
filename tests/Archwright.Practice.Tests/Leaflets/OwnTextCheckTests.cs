using Archwright.Practice.Leaflets;

namespace Archwright.Practice.Tests.Leaflets;

/// <summary>What a practice may put in place of our words. Rests on what the program fills in and what a page
/// bears.</summary>
[Trait("basis", "law")]
public sealed class OwnTextCheckTests
{
    public static TheoryData<string> Codes => [.. LeafletTexts.Codes];

    [Theory, MemberData(nameof(Codes))]
    public void Every_text_of_ours_could_be_kept_as_it_is_and_none_looks_like_a_dose(string code)
    {
        foreach (string key in LeafletTexts.EditableKeys)
        {
            OwnTextCheck check = OwnTextCheck.Of(code, key, LeafletTexts.In(code).Ours(key));

            Assert.Empty(check.Faults);
            Assert.DoesNotContain(check.Cautions, caution => caution.Contains("dose", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("foot", "Come back soon.")] // both places gone
    [InlineData("foot", "{practice}, {date}, {date}.")] // one twice
    [InlineData("foot", "{practice}, {day}.")] // one that is not filled in
    [InlineData("eat.text", "Soup {.")]
    [InlineData("eat.text", "Soup {wire}.")]
    [InlineData("eat.text", "")]
    [InlineData("eat.text", "  ")]
    [InlineData("eat.text", "Soup.\nAnd rice.")]
    [InlineData("eat.text", "<b>Soup</b>")]
    [InlineData("language", "Ours")]
    [InlineData("no.such", "x")]
    public void What_cannot_be_filled_in_or_printed_is_refused(string key, string text) =>
        Assert.False(OwnTextCheck.Of("en", key, text).IsGood);

    [Fact]
    public void What_is_too_long_is_refused() => Assert.False(
        OwnTextCheck.Of("en", "eat.text", new string('a', OwnTextCheck.MostSigns + 1)).IsGood);

    [Theory]
    [InlineData("en", "Take 2 tablets in the evening.")]
    [InlineData("de", "Nimm 400 mg davon.")]
    [InlineData("es", "Toma 1 comprimido.")]
    [InlineData("pl", "Weź 2 kapsułki.")]
    [InlineData("ar", "خذ 2 قرص.")]
    public void A_dose_is_a_caution_to_the_editor(string code, string text)
    {
        OwnTextCheck check = OwnTextCheck.Of(code, "feel.relief", text);

        Assert.True(check.IsGood);
        Assert.Contains(check.Cautions, caution => caution.Contains("dose", StringComparison.Ordinal));
    }

    [Fact]
    public void Words_that_read_hard_are_a_caution() => Assert.Contains(
        OwnTextCheck.Of(
            "en", "eat.text", "Avoid mechanically unfavourable alimentary consistencies during initial mobilisation.")
            .Cautions,
        caution => caution.Contains("reads at grade", StringComparison.Ordinal));
}
