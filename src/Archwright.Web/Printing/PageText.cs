using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Archwright.Web.Printing;

/// <summary>Text on a printed page: broken into lines and drawn from the side where reading begins.</summary>
/// <param name="canvas">The page.</param>
/// <param name="rightToLeft">Whether reading begins on the right.</param>
internal sealed class PageText(XGraphics canvas, bool rightToLeft)
{
    /// <summary>Lines from one base to the next, as a share of the size of the type.</summary>
    public const double Leading = 1.32;

    // Of an Arabic face the library's choice of used signs loses the hamza above and below letters, which are parts of
    // parts; it is embedded whole.
    private static readonly XPdfFontOptions Whole =
        new(PdfFontEncoding.Unicode, PdfFontEmbedding.EmbedCompleteFontFile);

    private static readonly XPdfFontOptions UsedSigns =
        new(PdfFontEncoding.Unicode, PdfFontEmbedding.TryComputeSubset);

    /// <summary>A face of the language's family.</summary>
    public XFont Font(double size, bool bold = false) => new(
        rightToLeft ? PrintFonts.Arabic : PrintFonts.Latin,
        size,
        bold ? XFontStyleEx.Bold : XFontStyleEx.Regular,
        rightToLeft ? Whole : UsedSigns);

    /// <summary>The lines of a text as they are drawn.</summary>
    public IReadOnlyList<string> Break(string text, XFont font, double width)
    {
        var lines = new List<string>();
        var line = new List<string>();
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Count > 0 && canvas.MeasureString(Drawn([.. line, word]), font).Width > width)
            {
                lines.Add(Drawn(line));
                line.Clear();
            }

            line.Add(word);
        }

        if (line.Count > 0)
            lines.Add(Drawn(line));
        return lines;
    }

    /// <summary>Draws lines.</summary>
    /// <param name="lines">As broken.</param>
    /// <param name="font">The face.</param>
    /// <param name="brush">The colour.</param>
    /// <param name="left">Left edge [pt].</param>
    /// <param name="width">Across [pt].</param>
    /// <param name="top">Upper edge of the first line [pt].</param>
    /// <returns>Lower edge of the last line [pt].</returns>
    public double Draw(
        IReadOnlyList<string> lines, XFont font, XBrush brush, double left, double width, double top)
    {
        foreach (string line in lines)
        {
            double x = rightToLeft ? left + width - canvas.MeasureString(line, font).Width : left;
            canvas.DrawString(line, font, brush, x, top + font.Size);
            top += Leading * font.Size;
        }

        return top;
    }

    private string Drawn(IReadOnlyList<string> words) =>
        rightToLeft ? ArabicLine.Visual(words) : string.Join(' ', words);
}
