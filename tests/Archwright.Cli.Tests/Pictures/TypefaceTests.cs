using Archwright.Cli.Pictures;
using Archwright.Web.Printing;

namespace Archwright.Cli.Tests.Pictures;

[Trait("basis", "ours")]
public sealed class TypefaceTests
{
    [Fact]
    public void Both_faces_travel_with_the_program()
    {
        Assert.Equal(Typeface.Family, Typeface.Face(bold: false).FamilyName);
        Assert.Equal(Typeface.Family, Typeface.Face(bold: true).FamilyName);
        Assert.True(Typeface.Face(bold: true).FontWeight > Typeface.Face(bold: false).FontWeight);
    }

    [Fact]
    public void Every_letter_we_write_is_in_the_typeface()
    {
        foreach (char letter in "ABCXYZabcxyz0123456789.,:;+−–·×°%!?()’/ µ≤²⁴")
        {
            if (letter != ' ')
                Assert.True(Typeface.Face(bold: false).ContainsGlyph(letter), $"The typeface lacks {letter}.");
        }
    }

    [Fact]
    public void A_longer_line_is_wider_and_bold_is_wider_than_regular()
    {
        double word = Typeface.WidthOf("canine", 14, bold: false);

        Assert.True(Typeface.WidthOf("canine canine", 14, bold: false) > 2 * word);
        Assert.True(Typeface.WidthOf("canine", 14, bold: true) > word);
        Assert.Equal(2 * word, Typeface.WidthOf("canine", 28, bold: false), tolerance: 0.05 * word);
    }

    [Fact]
    public void A_face_that_is_not_there_is_not_found() =>
        Assert.Throws<InvalidOperationException>(() => BundledFaces.Bytes("Outer-Regular"));
}
