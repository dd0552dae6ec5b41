using System.Buffers.Binary;
using System.Text;
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
        using Stream stream = typeof(Typeface).Assembly.GetManifestResourceStream("inter.bin")
            ?? throw new InvalidOperationException("The typeface is missing from the program.");
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);

        return (FaceNamed("Inter-Regular"), FaceNamed("Inter-Bold"));

        SKTypeface FaceNamed(string name)
        {
            using SKData data = SKData.CreateCopy(TrueTypeFaces.Find(bytes, name));
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

/// <summary>Finds TrueType faces that lie uncompressed inside a larger file.</summary>
internal static class TrueTypeFaces
{
    private const int HeaderLength = 12;
    private const int EntryLength = 16;
    private const int NameTable = 0x6E616D65; // "name"

    /// <summary>The bytes of the face with this PostScript name.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public static ReadOnlySpan<byte> Find(ReadOnlySpan<byte> file, string postScriptName)
    {
        for (int start = 0; start + HeaderLength < file.Length; start++)
        {
            int length = LengthOfFaceAt(file[start..], out ReadOnlySpan<byte> names);
            if (length > 0 && HasPostScriptName(names, postScriptName))
                return file.Slice(start, length);
        }

        throw new InvalidOperationException($"The file holds no typeface {postScriptName}.");
    }

    // A face starts with 00 01 00 00, the number of tables (9 to 30), and one entry a table: tag, checksum, offset,
    // length; tags ascend. It ends where its last table ends. Returns 0 where there is none.
    private static int LengthOfFaceAt(ReadOnlySpan<byte> file, out ReadOnlySpan<byte> names)
    {
        names = [];
        if (BinaryPrimitives.ReadInt32BigEndian(file) != 0x00010000)
            return 0;

        int tables = BinaryPrimitives.ReadInt16BigEndian(file[4..]);
        if (tables is < 9 or > 30 || HeaderLength + tables * EntryLength > file.Length)
            return 0;

        long end = 0;
        uint lastTag = 0;
        for (int i = 0; i < tables; i++)
        {
            ReadOnlySpan<byte> entry = file.Slice(HeaderLength + i * EntryLength, EntryLength);
            uint tag = BinaryPrimitives.ReadUInt32BigEndian(entry);
            long offset = BinaryPrimitives.ReadUInt32BigEndian(entry[8..]);
            long length = BinaryPrimitives.ReadUInt32BigEndian(entry[12..]);
            if (tag <= lastTag || offset + length > file.Length)
                return 0;

            lastTag = tag;
            end = Math.Max(end, offset + length);
            if (tag == NameTable)
                names = file.Slice((int)offset, (int)length);
        }

        return (int)end;
    }

    // The name table: version, number of records, offset of the strings; a record is platform, encoding, language,
    // meaning (6 = PostScript name), length and offset of its string. Platform 3 stores UTF-16, big end first.
    private static bool HasPostScriptName(ReadOnlySpan<byte> names, string name)
    {
        const int Header = 6;
        const int Record = 12;
        if (names.Length < Header)
            return false;

        int count = BinaryPrimitives.ReadUInt16BigEndian(names[2..]);
        int strings = BinaryPrimitives.ReadUInt16BigEndian(names[4..]);
        for (int i = 0; i < count && Header + (i + 1) * Record <= names.Length; i++)
        {
            ReadOnlySpan<byte> record = names.Slice(Header + i * Record, Record);
            int start = strings + BinaryPrimitives.ReadUInt16BigEndian(record[10..]);
            int length = BinaryPrimitives.ReadUInt16BigEndian(record[8..]);
            if (BinaryPrimitives.ReadUInt16BigEndian(record) == 3
                && BinaryPrimitives.ReadUInt16BigEndian(record[6..]) == 6
                && start + length <= names.Length
                && Encoding.BigEndianUnicode.GetString(names.Slice(start, length)) == name)
            {
                return true;
            }
        }

        return false;
    }
}
