using Archwright.Practice.Leaflets;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Archwright.Web.Printing;

/// <summary>A sheet of paper.</summary>
public enum Paper
{
    /// <summary>210 × 297 mm.</summary>
    A4,

    /// <summary>8½ × 11 in.</summary>
    Letter,
}

/// <summary>Prints a released leaflet on one page.</summary>
public static class LeafletPdf
{
    /// <summary>Least size of the type [pt]: smaller print is not read.</summary>
    public const double LeastType = 9;

    private const double MostType = 12;

    // The letters of the Arabic face are smaller at the same size.
    private const double MostArabicType = 14.5;
    private const double TypeStep = 0.25;
    private const double Margin = 42;
    private const double Gutter = 22;

    private static readonly XColor Ink = XColor.FromArgb(0x1b, 0x27, 0x30);
    private static readonly XColor Main = XColor.FromArgb(0x12, 0x46, 0x4f);
    private static readonly XColor Warn = XColor.FromArgb(0x7a, 0x43, 0x00);

    /// <summary>Makes the page.</summary>
    /// <param name="leaflet">What it says.</param>
    /// <param name="paper">On which sheet.</param>
    /// <param name="name">Whose it is, so that it is not handed to somebody else; empty to leave the name out.</param>
    /// <returns>The file.</returns>
    /// <exception cref="InvalidOperationException">The text is too long for a page in type that can be
    /// read.</exception>
    public static byte[] Make(Leaflet leaflet, Paper paper, string name = "")
    {
        PrintFonts.Use();
        using var document = new PdfDocument();
        document.Info.Title = leaflet.Title;
        document.Language = leaflet.Language;
        PdfPage page = document.AddPage();
        (page.Width, page.Height) = paper == Paper.A4
            ? (XUnit.FromMillimeter(210), XUnit.FromMillimeter(297))
            : (XUnit.FromInch(8.5), XUnit.FromInch(11));
        using (XGraphics canvas = XGraphics.FromPdfPage(page))
            Fill(canvas, page, leaflet, name);
        using var file = new MemoryStream();
        document.Save(file);
        return leaflet.IsRightToLeft ? PlainLetters.In(file.ToArray()) : file.ToArray();
    }

    // The largest type in which everything finds its place in two columns.
    private static void Fill(XGraphics canvas, PdfPage page, Leaflet leaflet, string name)
    {
        var text = new PageText(canvas, leaflet.IsRightToLeft);
        double width = page.Width.Point - 2 * Margin;
        double top = Head(canvas, text, leaflet, name, width);
        XFont small = text.Font(8.5);
        IReadOnlyList<string> foot = text.Break(leaflet.Foot, small, width);
        double bottom = page.Height.Point - Margin - foot.Count * PageText.Leading * small.Size - 6;
        double most = leaflet.IsRightToLeft ? MostArabicType : MostType;
        for (double size = most; size >= LeastType; size -= TypeStep)
        {
            List<Block> blocks = Blocks(text, leaflet, size, (width - Gutter) / 2);
            if (Split(blocks, bottom - top) is not { } split)
                continue;

            Column(text, blocks.Take(split), Left(leaflet, 0, width), (width - Gutter) / 2, top);
            Column(text, blocks.Skip(split), Left(leaflet, 1, width), (width - Gutter) / 2, top);
            text.Draw(foot, small, new XSolidBrush(Ink), Margin, width, bottom + 6);
            return;
        }

        throw new InvalidOperationException(
            "The leaflet is too long for one page. Shorten the texts of the practice, or your own words.");
    }

    private static double Head(XGraphics canvas, PageText text, Leaflet leaflet, string name, double width)
    {
        XFont title = text.Font(20, bold: true);
        double top = text.Draw(
            text.Break(leaflet.Title, title, width), title, new XSolidBrush(Main), Margin, width, Margin - 6);
        XFont font = text.Font(10.5);
        string day = LeafletTexts.In(leaflet.Language).Day(leaflet.Day);
        string line = name.Length > 0 ? $"{name} · {day}" : day;
        top = text.Draw(text.Break(line, font, width), font, new XSolidBrush(Ink), Margin, width, top);
        if (leaflet.ReviewNote.Length > 0)
        {
            XFont note = text.Font(9, bold: true);
            top = text.Draw(
                text.Break(leaflet.ReviewNote, note, width), note, new XSolidBrush(Warn), Margin, width, top + 2);
        }

        canvas.DrawLine(new XPen(Main, 1.2), Margin, top + 5, Margin + width, top + 5);
        return top + 14;
    }

    private static List<Block> Blocks(PageText text, Leaflet leaflet, double size, double width)
    {
        XFont plain = text.Font(size);
        XFont bold = text.Font(size + 1, bold: true);
        return
        [
            .. leaflet.Sections.Select(section => new Block(
                text.Break(section.Heading, bold, width), bold,
                [.. section.Lines.Select(line => text.Break(line, plain, width))], plain)),
        ];
    }

    // How many questions stand in the first column: the fewest with which both columns hold.
    private static int? Split(List<Block> blocks, double height)
    {
        for (int first = 1; first < blocks.Count; first++)
        {
            if (blocks.Take(first).Sum(block => block.Height) <= height
                && blocks.Skip(first).Sum(block => block.Height) <= height)
            {
                return first;
            }
        }

        return null;
    }

    private static double Left(Leaflet leaflet, int column, double width) =>
        column == (leaflet.IsRightToLeft ? 1 : 0) ? Margin : Margin + (width + Gutter) / 2;

    private static void Column(PageText text, IEnumerable<Block> blocks, double left, double width, double top)
    {
        foreach (Block block in blocks)
        {
            double at = text.Draw(block.Heading, block.Bold, new XSolidBrush(Main), left, width, top);
            foreach (IReadOnlyList<string> line in block.Lines)
                at = text.Draw(line, block.Plain, new XSolidBrush(Ink), left, width, at) + Block.Between;
            top += block.Height;
        }
    }

    private sealed record Block(
        IReadOnlyList<string> Heading, XFont Bold, IReadOnlyList<IReadOnlyList<string>> Lines, XFont Plain)
    {
        public const double Between = 2.5;
        private const double After = 7;

        public double Height => PageText.Leading
            * (Heading.Count * Bold.Size + Lines.Sum(line => line.Count) * Plain.Size) + Lines.Count * Between + After;
    }
}
