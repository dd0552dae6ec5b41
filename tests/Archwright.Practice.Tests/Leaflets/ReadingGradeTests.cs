using Archwright.Practice.Leaflets;

namespace Archwright.Practice.Tests.Leaflets;

/// <summary>The formula of Kincaid and others (1975) and its count of syllables. Rests on sums by hand and on how the
/// words are spoken.</summary>
[Trait("basis", "independent")]
public sealed class ReadingGradeTests
{
    [Theory]
    [InlineData("wire", 1)]
    [InlineData("braces", 2)]
    [InlineData("moved", 1)]
    [InlineData("needed", 2)]
    [InlineData("little", 2)]
    [InlineData("the", 1)]
    [InlineData("pharmacist", 3)]
    [InlineData("emergency", 4)]
    [InlineData("teeth", 1)]
    [InlineData("sides", 1)]
    [InlineData("14", 1)]
    public void Syllables_are_counted_as_spoken(string word, int syllables) =>
        Assert.Equal(syllables, ReadingGrade.Syllables(word));

    // Two sentences, ten words, twelve syllables ("needed" and "little" have two, all others one):
    // 0.39 · 10/2 + 11.8 · 12/10 − 15.59 = 0.52.
    [Fact]
    public void The_grade_is_that_of_the_published_formula() => Assert.Equal(
        0.39 * 10 / 2 + 11.8 * 12 / 10 - 15.59,
        ReadingGrade.Of(["You got a needed wire. It has little work left."]), 1e-12);

    [Fact]
    public void Long_words_in_long_sentences_read_hard() => Assert.True(ReadingGrade.Of(
        ["The superelasticity of archwires facilitates continuous biomechanical mobilisation of irregular dentition."])
        > 15);

    [Fact]
    public void A_text_without_a_word_is_refused() =>
        Assert.Throws<ArgumentException>(() => ReadingGrade.Of([" "]));
}
