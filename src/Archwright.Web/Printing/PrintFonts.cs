using PdfSharp.Fonts;

namespace Archwright.Web.Printing;

/// <summary>The faces of printed pages, which travel with the program, so that a page looks alike on every machine:
/// Inter, and Amiri for Arabic.</summary>
public sealed class PrintFonts : IFontResolver
{
    /// <summary>Family for Latin, Greek and Cyrillic.</summary>
    public const string Latin = "Inter";

    /// <summary>Family for Arabic; it has Latin letters for names between.</summary>
    public const string Arabic = "Amiri";

    private static readonly Lazy<PrintFonts> One = new(Register);

    private PrintFonts()
    {
    }

    /// <summary>Makes these faces the ones that pages are printed with; may be called more than once.</summary>
    public static void Use() => _ = One.Value;

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
        familyName is Latin or Arabic
            ? new FontResolverInfo($"{familyName}-{(bold ? "Bold" : "Regular")}")
            : null;

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName) => BundledFaces.Bytes(faceName);

    private static PrintFonts Register()
    {
        var made = new PrintFonts();
        GlobalFontSettings.FontResolver = made;
        return made;
    }
}
