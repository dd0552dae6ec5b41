using Archwright.Practice.Leaflets;
using Archwright.Practice.Tests.Leaflets;
using Archwright.Practice.Visits;
using Archwright.Web.Printing;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Archwright.Web.Tests.Printing;

/// <summary>The printed leaflet, read back by another library. Rests on the leaflet itself.</summary>
[Trait("basis", "independent")]
public sealed class LeafletPdfTests
{
    private const double PointsOfMm = 72 / 25.4;

    public static TheoryData<string> Codes => [.. LeafletTexts.Codes];

    [Theory, MemberData(nameof(Codes))]
    public void Every_word_stands_on_one_page_in_reading_size(string code)
    {
        foreach (Paper paper in Enum.GetValues<Paper>())
        {
            Leaflet leaflet = Longest(code);
            using PdfDocument document = PdfDocument.Open(LeafletPdf.Make(leaflet, paper, "Mira Østby-Kahn"));

            Page page = document.GetPage(1);
            Assert.Equal(1, document.NumberOfPages);
            HashSet<string> found = [.. page.GetWords().Select(word => leaflet.IsRightToLeft ? Read(word) : word.Text)];
            Assert.All(
                leaflet.AllLines().SelectMany(line => line.Split(' ')).Where(word => word.Any(char.IsLetterOrDigit)
                    && (!leaflet.IsRightToLeft || word.All(char.IsLetter))),
                word => Assert.True(found.Contains(word), $"'{word}' is not on the page."));
            Assert.All(page.Letters, letter => Assert.True(letter.PointSize >= 8.4));
            Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Left, 0, page.Width));
            Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Bottom, 0, page.Height));
        }
    }

    /// <summary>What is read back from the print, sign by sign from the right, is each word as it was written, in plain
    /// letters and not in their joined shapes; and every sign is of the face that travels with the program.</summary>
    [Fact]
    public void Arabic_can_be_taken_out_of_the_print_as_it_was_written()
    {
        Leaflet leaflet = Longest("ar");
        using PdfDocument document = PdfDocument.Open(LeafletPdf.Make(leaflet, Paper.A4));
        Page page = document.GetPage(1);

        HashSet<string> found = [.. page.GetWords().Select(Read)];

        string[] written =
        [
            .. leaflet.AllLines().SelectMany(line => line.Split(' ')).Where(word => word.All(char.IsLetter)).Distinct(),
        ];
        Assert.InRange(written.Length, 50, 1000);
        Assert.All(
            written,
            word => Assert.True(found.Contains(word), $"'{word}' is not in the print."));
        Assert.Contains(written, word => word.Contains("لا", StringComparison.Ordinal)); // two letters, one sign
        Assert.DoesNotContain(page.Letters, letter => letter.Value.Any(sign => sign is >= '\uFE70' and <= '\uFEFC'));
        Assert.All(page.Letters, letter => Assert.Contains("Amiri", letter.FontName, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Inter-Regular")]
    [InlineData("Inter-Bold")]
    [InlineData("Amiri-Regular")]
    [InlineData("Amiri-Bold")]
    public void Every_face_travels_with_the_program(string name) =>
        Assert.True(BundledFaces.Bytes(name).Length > 100_000);

    [Theory]
    [InlineData(Paper.A4, 210, 297)]
    [InlineData(Paper.Letter, 215.9, 279.4)]
    public void The_sheet_has_its_size(Paper paper, double width, double height)
    {
        using PdfDocument document = PdfDocument.Open(LeafletPdf.Make(Longest("en"), paper));

        Assert.Equal(width * PointsOfMm, document.GetPage(1).Width, 0.01);
        Assert.Equal(height * PointsOfMm, document.GetPage(1).Height, 0.01);
    }

    [Fact]
    public void The_name_stands_on_it_only_where_it_is_asked_for()
    {
        using PdfDocument with = PdfDocument.Open(LeafletPdf.Make(Longest("en"), Paper.A4, "Mira Østby-Kahn"));
        using PdfDocument without = PdfDocument.Open(LeafletPdf.Make(Longest("en"), Paper.A4));

        Assert.Contains("Østby-Kahn", with.GetPage(1).GetWords().Select(word => word.Text));
        Assert.DoesNotContain("Østby-Kahn", without.GetPage(1).GetWords().Select(word => word.Text));
    }

    [Fact]
    public void A_text_that_fits_no_page_is_refused_and_never_cut()
    {
        Visit visit = LeafletSamples.Visit(new VisitContent { Upper = LeafletSamples.Arch(2) });
        string long_ = string.Join(' ', Enumerable.Repeat("Well done.", 800));
        Leaflet leaflet = LeafletWriter.Write(visit, LeafletTexts.In("en"), "Fernhollow", long_)!;

        Assert.Throws<InvalidOperationException>(() => LeafletPdf.Make(leaflet, Paper.A4));
    }

    /// <summary>Pages to look at, where <c>ARCHWRIGHT_PICTURES</c> names a folder.</summary>
    [Theory, MemberData(nameof(Codes))]
    public void Every_language_is_printed_for_people_to_look_at(string code)
    {
        string? folder = Environment.GetEnvironmentVariable("ARCHWRIGHT_PICTURES");
        Assert.SkipWhen(string.IsNullOrEmpty(folder), "Pages are made where ARCHWRIGHT_PICTURES names a folder.");

        File.WriteAllBytes(
            Path.Combine(folder!, $"leaflet-{code}.pdf"), // the folder is named: see above
            LeafletPdf.Make(Longest(code), Paper.A4, "Mira Østby-Kahn"));
    }

    // The signs of an Arabic word from the right: where reading begins.
    private static string Read(Word word) => string.Concat(
        word.Letters.OrderByDescending(letter => letter.BoundingBox.Left).Select(letter => letter.Value));

    // The longest of all leaflets that the samples give.
    private static Leaflet Longest(string code) => LeafletSamples.Visits()
        .Select(visit => LeafletWriter.Write(visit, LeafletTexts.In(code), "Fernhollow")!) // every sample is decided
        .MaxBy(leaflet => leaflet.AllLines().Sum(line => line.Length))!;
}
