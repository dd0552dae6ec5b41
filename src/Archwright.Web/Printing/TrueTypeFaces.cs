using System.Buffers.Binary;
using System.Text;

namespace Archwright.Web.Printing;

/// <summary>Finds TrueType faces that lie uncompressed inside a larger file.</summary>
public static class TrueTypeFaces
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
