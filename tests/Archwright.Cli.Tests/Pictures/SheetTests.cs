using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Archwright.Cli.Pictures;
using Archwright.Cli.Tests.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using CsCheck;
using SkiaSharp;

namespace Archwright.Cli.Tests.Pictures;

public sealed class SheetTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact, Trait("basis", "ours")]
    public void A_picture_is_well_formed_and_its_text_stays_text()
    {
        XElement root = SvgOf(SamplePicture.HighCanine());

        string[] texts = [.. root.Descendants(Svg + "text").Select(text => text.Value)];
        Assert.Contains("Upper right canine 2 mm high", texts);
        Assert.Contains("Upper arch from below", texts);
        Assert.Contains("From the front", texts);
        Assert.Contains("10 mm", texts);
        Assert.Contains("100 cN", texts);
        Assert.Contains(texts, text => text.StartsWith("tooth, and below it", StringComparison.Ordinal));
        foreach (string tooth in new[] { "17", "13", "11", "21", "27" })
            Assert.True(texts.Count(text => text == tooth) >= 3, $"Tooth {tooth} is not in all three panels.");
    }

    [Fact, Trait("basis", "ours")]
    public void A_picture_has_a_title_and_a_description_for_screen_readers()
    {
        XElement root = SvgOf(SamplePicture.HighCanine());

        Assert.Equal("img", root.Attribute("role")?.Value);
        Assert.Equal("Upper right canine 2 mm high", root.Element(Svg + "title")?.Value);
        Assert.NotEmpty(Assert.IsType<XElement>(root.Element(Svg + "desc")).Value);
        string[] parts =
            [.. root.Elements(Svg + "g").Select(part => Assert.IsType<XAttribute>(part.Attribute("id")).Value)];
        Assert.Equal(["occlusal-view", "frontal-view", "facts", "forces-per-tooth", "notes"], parts);
    }

    /// <summary>To scale: the scale bar says how long 10 mm are; the slots of the two second molars are as far apart as
    /// their centres.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData("occlusal-view")]
    [InlineData("frontal-view")]
    public void Views_are_to_scale(string view)
    {
        ArchPicture picture = SamplePicture.HighCanine();
        XElement root = SvgOf(picture);
        double[] bar = Numbers(Part(root, "facts").Elements(Svg + "polyline").First());
        double perMillimetre = (bar[2] - bar[0]) / 10;

        double[][] slots = [.. Part(root, view).Elements(Svg + "polygon")
            .Where(polygon => polygon.Attribute("fill")?.Value == Colours.SlotInside.Hex)
            .Select(Numbers)];

        Assert.Equal(14, slots.Length);
        double[] middles = [.. slots.Select(slot => (slot[0] + slot[4]) / 2)];
        double wide = picture.Teeth[0].Rest.Centre.X - picture.Teeth[13].Rest.Centre.X;
        Assert.Equal(wide * perMillimetre, middles.Max() - middles.Min(), tolerance: 0.05);
    }

    /// <summary>The patient's right is at the reader's left; a pull toward the bite points down on upper teeth and up
    /// on lower ones, as one stands before a patient.</summary>
    [Theory, Trait("basis", "law")]
    [InlineData("Upper", 1)]
    [InlineData("Lower", -1)]
    public void Extrusion_points_toward_the_bite_and_right_is_left(string side, int down)
    {
        ArchPicture picture = SamplePicture.HighCanine(Enum.Parse<PictureSide>(side));
        (Mechanics.Numerics.Vector3 right, Mechanics.Numerics.Vector3 up) = Projection.Frontal(picture);
        var view = new Projection(default, 10, right, up);

        PictureTooth canine = picture.Teeth[4];
        Assert.True(canine.Occlusal > 0);
        Assert.Equal(down, Math.Sign(view.Way(canine.Force).Y));
        Assert.True(view.At(picture.Teeth[0].Rest.Centre).X < view.At(picture.Teeth[13].Rest.Centre).X);
    }

    [Theory, Trait("basis", "law")]
    [InlineData("Upper", -1)]
    [InlineData("Lower", 1)]
    public void Incisors_are_at_the_top_of_an_upper_arch_and_at_the_bottom_of_a_lower_one(string side, int down)
    {
        ArchPicture picture = SamplePicture.HighCanine(Enum.Parse<PictureSide>(side));
        (Mechanics.Numerics.Vector3 right, Mechanics.Numerics.Vector3 up) = Projection.Occlusal(picture);
        var view = new Projection(default, 10, right, up);

        double incisor = view.At(picture.Teeth[6].Rest.Centre).Y;
        double molar = view.At(picture.Teeth[0].Rest.Centre).Y;
        Assert.Equal(down, Math.Sign(incisor - molar));
        Assert.True(view.At(picture.Teeth[0].Rest.Centre).X < view.At(picture.Teeth[13].Rest.Centre).X);
    }

    /// <summary>Silent failure of a machine without fonts: the picture comes out, without a letter.</summary>
    [Fact, Trait("basis", "ours")]
    public void Letters_are_really_drawn_as_pixels()
    {
        using SKBitmap bitmap = SKBitmap.Decode([.. SamplePicture.Drawn(SamplePicture.HighCanine(), ".png")]);

        Assert.Equal(Sheet.Width * PngCanvas.Scale, bitmap.Width);
        int dark = 0;
        for (int x = 28 * PngCanvas.Scale; x < 400 * PngCanvas.Scale; x++)
        {
            for (int y = 18 * PngCanvas.Scale; y < 46 * PngCanvas.Scale; y++)
                dark += bitmap.GetPixel(x, y).Red < 100 ? 1 : 0;
        }

        Assert.True(dark > 3000, $"The heading has {dark} dark pixels.");
    }

    [Theory, Trait("basis", "law")]
    [InlineData(".svg")]
    [InlineData(".png")]
    public void The_same_picture_twice_is_the_same_to_the_last_byte(string ending) => Assert.Equal(
        SamplePicture.Drawn(SamplePicture.HighCanine(), ending).ToArray(),
        SamplePicture.Drawn(SamplePicture.HighCanine(), ending).ToArray());

    [Fact, Trait("basis", "ours")]
    public void A_picture_holds_no_address_but_those_of_its_format()
    {
        string svg = Encoding.UTF8.GetString([.. SamplePicture.Drawn(SamplePicture.HighCanine(), ".svg")]);

        string rest = svg.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal);
        Assert.DoesNotContain("http", rest, StringComparison.Ordinal);
    }

    [Fact, Trait("basis", "ours")]
    public void A_wire_that_is_not_in_gets_a_picture_without_forces()
    {
        ArchPicture picture = CasePicture.Of(
            SampleCase.Lost(), ForceUnit.Centinewton, ToothNotation.Iso, ForceCeilings.Default);

        string[] texts = [.. SvgOf(picture).Descendants(Svg + "text").Select(text => text.Value)];

        Assert.Contains("None is known: the wire is not in its slots.", texts);
        Assert.Contains(texts, text => text.Contains("cannot be engaged", StringComparison.Ordinal));
    }

    [Fact, Trait("basis", "ours")]
    public void A_heavy_tooth_is_marked_by_a_sign_and_not_by_colour_alone()
    {
        string[] texts = [.. SvgOf(SamplePicture.HighCanine()).Descendants(Svg + "text").Select(text => text.Value)];

        Assert.Contains(texts, text => text.EndsWith(" !", StringComparison.Ordinal));
        Assert.Contains("! above the ceiling of the practice", texts);
    }

    [Fact, Trait("basis", "law")]
    public void Spread_numbers_keep_their_order_their_distance_and_their_limits() => Gen.Double[0, 1000].Array[1, 14]
        .Sample(at =>
        {
            double[] spread = [.. at.Order()];
            FrontalPanel.Spread(spread, 27, 0, 1000);
            return spread[0] >= -1e-9 && spread[^1] <= 1000 + 1e-9
                && Enumerable.Range(1, spread.Length - 1).All(i => spread[i] - spread[i - 1] >= 27 - 1e-9);
        },
        seed: "0N0XIzNsQ0O2");

    [Theory, Trait("basis", "ours")]
    [InlineData(0.99, 0.5)]
    [InlineData(1, 1)]
    [InlineData(4.99, 2)]
    [InlineData(730, 500)]
    [InlineData(0.02, 0.02)]
    public void A_scale_bar_is_a_round_figure(double figure, double round) =>
        Assert.Equal(round, ForceScale.RoundDown(figure), tolerance: 1e-12);

    [Fact, Trait("basis", "ours")]
    public void A_passive_arch_has_no_arrows_and_no_scale_of_force()
    {
        ArchPicture sample = SamplePicture.HighCanine();
        ArchPicture passive = sample with
        {
            Teeth =
            [
                .. sample.Teeth.Select(tooth =>
                    tooth with { Force = default, Labial = 0, Occlusal = 0, Mesial = 0 }),
            ],
        };

        string[] texts = [.. SvgOf(passive).Descendants(Svg + "text").Select(text => text.Value)];

        Assert.Contains("10 mm", texts);
        Assert.DoesNotContain("100 cN", texts);
        Assert.DoesNotContain(texts, text => text.Contains("NaN", StringComparison.Ordinal));
    }

    private static XElement SvgOf(ArchPicture picture) => XDocument
        .Parse(Encoding.UTF8.GetString([.. SamplePicture.Drawn(picture, ".svg")])).Root
        ?? throw new InvalidOperationException("There is no picture.");

    private static XElement Part(XElement root, string id) =>
        root.Elements(Svg + "g").Single(part => part.Attribute("id")?.Value == id);

    private static double[] Numbers(XElement shape) =>
    [
        .. Assert.IsType<XAttribute>(shape.Attribute("points")).Value.Split(' ', ',')
            .Select(number => double.Parse(number, CultureInfo.InvariantCulture)),
    ];
}
