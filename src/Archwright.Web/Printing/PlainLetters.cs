using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using PdfSharp.Pdf;
using PdfSharp.Pdf.IO;

namespace Archwright.Web.Printing;

/// <summary>Lets text that is taken out of an Arabic print, searched or read aloud, be plain letters. The printing
/// library notes of each sign the joined shape that it was given; here the letters that the shape stands for take its
/// place in the maps that the file carries for this purpose (ISO 32000-1, section 9.10.3).</summary>
/// <remarks>The order stays that in which signs are drawn, as in any file of lines from right to left: a reader turns
/// them by the rules for two directions.</remarks>
internal static partial class PlainLetters
{
    private const string Map = "/ToUnicode";

    /// <summary>The file with plain letters in its maps.</summary>
    public static byte[] In(byte[] file)
    {
        using var before = new MemoryStream(file);
        using PdfDocument document = PdfReader.Open(before, PdfDocumentOpenMode.Modify);
        foreach (PdfDictionary font in document.Internals.GetAllObjects().OfType<PdfDictionary>())
        {
            if (font.Elements.GetDictionary(Map) is { Stream: { } stream } map)
            {
                string plain = Entry().Replace(Encoding.ASCII.GetString(stream.UnfilteredValue), Mended);
                map.Elements.Remove("/Filter");
                stream.Value = Encoding.ASCII.GetBytes(plain);
            }
        }

        using var after = new MemoryStream();
        document.Save(after);
        return after.ToArray();
    }

    private static string Mended(Match entry)
    {
        char shape = (char)int.Parse(entry.Groups["text"].Value, NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        string letters = string.Concat(ArabicLine.Letters(shape).Select(
            letter => ((int)letter).ToString("X4", CultureInfo.InvariantCulture)));
        return $"{entry.Groups["sign"].Value}<{letters}>";
    }

    // One sign and its text; a range of one, as the library writes them.
    [GeneratedRegex(@"(?<sign><([0-9A-Fa-f]{4})>\s*<\1>\s*)<(?<text>[0-9A-Fa-f]{4})>")]
    private static partial Regex Entry();
}
