using System.Text;
using Archwright.Exchange.Files;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Json;

/// <summary>Says in plain words what is wrong with a text that is not JSON, from the characters around the
/// slip.</summary>
internal static class JsonSlip
{
    /// <summary>Adds the one problem.</summary>
    /// <param name="text">The whole text.</param>
    /// <param name="at">Byte at which it ceased to be JSON.</param>
    /// <param name="problems">Where the problem goes.</param>
    public static void Explain(ReadOnlySpan<byte> text, int at, ProblemList problems)
    {
        (ProblemCode code, int place, string message, string remedy) = Find(text, at);
        problems.Add(code, TextPlace.Of(text, place).ToString(), message, remedy);
    }

    private static (ProblemCode Code, int At, string Message, string Remedy) Find(ReadOnlySpan<byte> text, int at)
    {
        if (text[at..].Trim(" \t\r\n"u8).IsEmpty)
        {
            return (ProblemCodes.JsonEndsEarly, at, "The file ends before everything that was opened is closed.",
                "Look for a missing }, ] or quotation mark; perhaps the file was cut off.");
        }

        int before = LastNonBlank(text, at);
        byte here = text[at];
        byte previous = before < 0 ? (byte)0 : text[before];

        if (here is (byte)'/' or (byte)'#')
            return (ProblemCodes.JsonComment, at, "JSON has no comments.", "Take the comment out.");

        if (here is (byte)'}' or (byte)']' && previous == ',')
        {
            return (ProblemCodes.JsonTrailingComma, before, "After this comma nothing follows.", "Take the comma out.");
        }

        if (previous == ',' && char.IsAsciiDigit((char)here) && before > 0 && char.IsAsciiDigit((char)text[before - 1]))
        {
            return (ProblemCodes.JsonBadNumber, before, "A number is written with a comma.",
                "Write decimal fractions with a point: 0.5.");
        }

        string word = WordAround(text, at);
        if (LooksLikeNumber(word))
        {
            return (ProblemCodes.JsonBadNumber, at, $"{Say.Quote(word)} is not a number as JSON writes it.",
                "Write plain figures with digits on both sides of the point and no plus sign or leading zero: 0.5, -2, "
                + "1e-3. There is no NaN and no infinity.");
        }

        return (ProblemCodes.JsonBroken, at, Generic(here, previous), GenericRemedy(here));
    }

    private static string Generic(byte here, byte previous) => (char)here switch
    {
        '\'' => "Keys and texts stand in double quotation marks, not in single ones.",
        < ' ' => "A text runs over the end of its line, or has a control character in it.",
        '"' when previous == '"' => "A colon or a comma is missing before this.",
        '"' when previous is (byte)'}' or (byte)']' || char.IsAsciiLetterOrDigit((char)previous) =>
            "A comma is missing before this.",
        _ => "This character does not belong here.",
    };

    private static string GenericRemedy(byte here) => (char)here switch
    {
        '\'' => "Write \" in place of '.",
        < ' ' => "Close the quotation marks on the same line.",
        _ => "Check commas, colons, brackets and quotation marks around this place: keys in double quotation marks, a "
            + "colon after each, commas between entries, true, false and null in small letters.",
    };

    private static bool LooksLikeNumber(string word) =>
        word.Length > 0
        && (word.TrimStart('+', '-').ToUpperInvariant() is "NAN" or "INFINITY" or "INF"
            || (word.Any(char.IsAsciiDigit)
                && word.All(c => char.IsAsciiDigit(c) || c is '+' or '-' or '.' or 'e' or 'E')));

    private static int LastNonBlank(ReadOnlySpan<byte> text, int at)
    {
        int before = at - 1;
        while (before >= 0 && text[before] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
            before--;
        return before;
    }

    // The run of letters, digits, signs and points around a place.
    private static string WordAround(ReadOnlySpan<byte> text, int at)
    {
        int start = at;
        while (start > 0 && at - start < 40 && IsWord(text[start - 1]))
            start--;
        int end = at;
        while (end < text.Length && end - at < 40 && IsWord(text[end]))
            end++;
        return Encoding.ASCII.GetString(text[start..end]);
    }

    private static bool IsWord(byte b) =>
        char.IsAsciiLetterOrDigit((char)b) || b is (byte)'+' or (byte)'-' or (byte)'.';
}
