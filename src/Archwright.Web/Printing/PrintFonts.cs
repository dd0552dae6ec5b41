using PdfSharp.Fonts;

namespace Archwright.Web.Printing;

/// <summary>The faces of printed pages: Inter, which travels with the program, and for Arabic a face of the
/// system.</summary>
/// <remarks>No open Arabic face can be had as a package of this platform, and none is kept in the source. DejaVu Sans
/// comes with every Debian; the system faces of Windows and macOS hold the joined letters too. Where there is none, an
/// Arabic page is not printed here: the reader is told to print it from the browser, which has faces of its own.
/// </remarks>
public sealed class PrintFonts : IFontResolver
{
    /// <summary>Family for Latin, Greek and Cyrillic.</summary>
    public const string Latin = "Inter";

    /// <summary>Family for Arabic.</summary>
    public const string Arabic = "Arabic";

    private static readonly Lazy<PrintFonts> One = new(Register);

    // A regular face and its bold one; the first pair that is there counts.
    private static readonly (string Regular, string Bold)[] ArabicFiles =
    [
        ("/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf", "/usr/share/fonts/truetype/dejavu/DejaVuSans-Bold.ttf"),
        ("/usr/share/fonts/dejavu-sans-fonts/DejaVuSans.ttf", "/usr/share/fonts/dejavu-sans-fonts/DejaVuSans-Bold.ttf"),
        ("/usr/share/fonts/TTF/DejaVuSans.ttf", "/usr/share/fonts/TTF/DejaVuSans-Bold.ttf"),
        ("/Library/Fonts/Arial Unicode.ttf", "/Library/Fonts/Arial Unicode.ttf"),
        ("/System/Library/Fonts/Supplemental/Arial.ttf", "/System/Library/Fonts/Supplemental/Arial Bold.ttf"),
        (Windows("arial.ttf"), Windows("arialbd.ttf")),
    ];

    private PrintFonts()
    {
    }

    /// <summary>True when an Arabic page can be printed on this machine.</summary>
    public static bool HasArabic => ArabicFiles.Any(IsThere);

    /// <summary>Makes these faces the ones that pages are printed with; may be called more than once.</summary>
    public static void Use() => _ = One.Value;

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) => familyName switch
    {
        Latin => new FontResolverInfo(bold ? "Inter-Bold" : "Inter-Regular"),
        Arabic when HasArabic => new FontResolverInfo(bold ? "Arabic-Bold" : "Arabic-Regular"),
        _ => null,
    };

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName) => faceName switch
    {
        "Arabic-Regular" => File.ReadAllBytes(ArabicFiles.First(IsThere).Regular),
        "Arabic-Bold" => File.ReadAllBytes(ArabicFiles.First(IsThere).Bold),
        _ => BundledFaces.Bytes(faceName),
    };

    private static bool IsThere((string Regular, string Bold) files) =>
        File.Exists(files.Regular) && File.Exists(files.Bold);

    private static string Windows(string file) =>
        Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.Fonts), file);

    private static PrintFonts Register()
    {
        var made = new PrintFonts();
        GlobalFontSettings.FontResolver = made;
        return made;
    }
}
