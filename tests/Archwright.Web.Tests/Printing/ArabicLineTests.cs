using Archwright.Web.Printing;

namespace Archwright.Web.Tests.Printing;

/// <summary>Joined Arabic letters. Rests on the chart of Arabic Presentation Forms-B of the Unicode Standard (as it
/// stands in the data of the Unicode library of another language, read there).</summary>
[Trait("basis", "published")]
public sealed class ArabicLineTests
{
    [Theory]
    [InlineData("ب", "\uFE8F")] // beh alone
    [InlineData("بب", "\uFE91\uFE90")] // first, last
    [InlineData("ببب", "\uFE91\uFE92\uFE90")] // first, middle, last
    [InlineData("سلك", "\uFEB3\uFEE0\uFEDA")] // wire
    [InlineData("دار", "\uFEA9\uFE8D\uFEAD")] // nothing joins after dal and alef
    [InlineData("لا", "\uFEFB")] // one sign for lam and alef
    [InlineData("بلا", "\uFE91\uFEFC")]
    [InlineData("الأسنان", "\uFE8D\uFEF7\uFEB3\uFEE8\uFE8E\uFEE5")]
    [InlineData("ماء", "\uFEE3\uFE8E\uFE80")] // hamza joins to nothing
    [InlineData("يوم", "\uFEF3\uFEEE\uFEE1")]
    public void Letters_take_the_shape_of_their_place_and_shapes_are_read_as_their_letters(string word, string shaped)
    {
        Assert.Equal(shaped, ArabicLine.Shape(word));
        Assert.Equal(word, string.Concat(shaped.Select(ArabicLine.Letters)));
    }

    [Fact]
    public void A_line_runs_from_right_to_left_and_numbers_do_not()
    {
        Assert.Equal("0.56 × 0.41 \uFE90\uFE91", ArabicLine.Visual(["بب", "0.41", "×", "0.56"]));
        Assert.Equal(".13/4/2026 \uFE90\uFE91", ArabicLine.Visual(["بب", "13/4/2026."]));
        Assert.Equal("\uFEAD ,Fernhollow Practice :\uFE90\uFE91",
            ArabicLine.Visual(["بب:", "Fernhollow", "Practice,", "ر"]));
    }

    [Fact]
    public void Brackets_turn_round() => Assert.Equal("(\uFEAD)", ArabicLine.Visual(["(ر)"]));
}
