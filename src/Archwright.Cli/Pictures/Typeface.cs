using Archwright.Web.Printing;
using ScottPlot;
using SkiaSharp;

namespace Archwright.Cli.Pictures;

/// <summary>The typeface of every picture. It travels with the program, so a picture does not depend on the fonts of
/// the machine (without any, text would silently be left out).</summary>
internal static class Typeface
{
    /// <summary>Name of the family.</summary>
    public const string Family = "Inter";

    /// <summary>What an SVG asks for: ours first, then faces of about the same width.</summary>
    public const string FamilyInSvg = "Inter, 'Helvetica Neue', Helvetica, Arial, 'DejaVu Sans', sans-serif";

    private static readonly Lazy<(SKTypeface Regular, SKTypeface Bold)> Faces = new(Load);
    private static readonly Lazy<bool> KnownToCharts = new(Register);

    /// <summary>The regular or the bold face.</summary>
    public static SKTypeface Face(bool bold) => bold ? Faces.Value.Bold : Faces.Value.Regular;

    /// <summary>Width of a line of text.</summary>
    /// <param name="text">One line.</param>
    /// <param name="size">Size of the type [px].</param>
    /// <param name="bold">Whether in the bold face.</param>
    /// <returns>[px]</returns>
    public static double WidthOf(string text, double size, bool bold)
    {
        using var font = new SKFont(Face(bold), (float)size);
        return font.MeasureText(text);
    }

    /// <summary>Makes the charts use this typeface; may be called more than once.</summary>
    public static void UseInCharts() => _ = KnownToCharts.Value;

    private static bool Register()
    {
        Fonts.FontResolvers.Insert(0, new Resolver());
        Fonts.Default = Family;
        return true;
    }

    private static (SKTypeface Regular, SKTypeface Bold) Load()
    {
        return (FaceNamed("Inter-Regular"), FaceNamed("Inter-Bold"));

        SKTypeface FaceNamed(string name)
        {
            using SKData data = SKData.CreateCopy(BundledFaces.Bytes(name));
            return SKTypeface.FromData(data)
                ?? throw new InvalidOperationException($"The typeface {name} cannot be read.");
        }
    }

    private sealed class Resolver : IFontResolver
    {
        public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
            fontName == Family ? Face(weight >= FontWeight.SemiBold) : null;

        public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) =>
            fontName == Family ? Face(bold) : null;
    }
}
