using System.Buffers;
using System.Text;
using System.Text.Unicode;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Files;

/// <summary>Gets the bytes of a user's text file: UTF-8, with or without a byte-order mark.</summary>
internal static class InputFile
{
    /// <summary>Largest file that is read [bytes]. A full arch with a rest curve of 500 points takes 40 kB.</summary>
    public const int MostBytes = 5_000_000;

    private static ReadOnlySpan<byte> Utf8Mark => [0xEF, 0xBB, 0xBF];

    /// <summary>The file's text without its mark, or null with a problem.</summary>
    public static byte[]? Load(string path, ProblemList problems)
    {
        ArgumentNullException.ThrowIfNull(path);
        try
        {
            if (Directory.Exists(path))
            {
                problems.Add(
                    ProblemCodes.FileIsFolder, Problem.WholeFile, $"“{Say.Printable(path)}” is the name of a folder, not of a file.",
                    "Name the file inside it.");
                return null;
            }

            using FileStream stream = File.OpenRead(path);
            return Load(stream, problems);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            problems.Add(
                ProblemCodes.FileMissing, Problem.WholeFile, $"There is no file {Say.Printable(path)}.",
                "Check the name and the folder; the name is taken from the folder you are in.");
        }
        catch (Exception e) when (IsAboutFiles(e))
        {
            Unreadable(path, e, problems);
        }

        return null;
    }

    /// <summary>The stream's text without its mark, or null with a problem.</summary>
    public static byte[]? Load(Stream stream, ProblemList problems)
    {
        ArgumentNullException.ThrowIfNull(stream);
        try
        {
            byte[]? bytes = AtMost(stream, MostBytes, problems);
            return bytes is null ? null : Text(bytes, problems);
        }
        catch (Exception e) when (IsAboutFiles(e))
        {
            Unreadable("the file", e, problems);
            return null;
        }
    }

    private static bool IsAboutFiles(Exception e) =>
        e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException
            or System.Security.SecurityException;

    private static void Unreadable(string path, Exception e, ProblemList problems) => problems.Add(
        ProblemCodes.FileUnreadable,
        Problem.WholeFile,
        e is UnauthorizedAccessException
            ? $"You have no right to read {Say.Printable(path)}."
            : $"Reading {Say.Printable(path)} failed.",
        "Check the name, the rights of the file, and whether another program holds it.");

    private static byte[]? AtMost(Stream stream, int most, ProblemList problems)
    {
        using var copy = new MemoryStream();
        byte[] buffer = new byte[81920];
        while (true)
        {
            int got = stream.Read(buffer, 0, buffer.Length);
            if (got == 0)
                return copy.ToArray();

            copy.Write(buffer, 0, got);
            if (copy.Length > most)
            {
                problems.Add(
                    ProblemCodes.FileTooLarge, Problem.WholeFile,
                    $"The file is larger than {most / 1_000_000} MB.",
                    "Check that it is the right file: a case of a full arch takes a few kilobytes.");
                return null;
            }
        }
    }

    private static byte[]? Text(byte[] bytes, ProblemList problems)
    {
        ReadOnlySpan<byte> text = bytes;
        if (text.StartsWith(Utf8Mark))
            text = text[Utf8Mark.Length..];

        if (text.Trim(" \t\r\n"u8).IsEmpty)
        {
            problems.Add(
                ProblemCodes.FileEmpty, Problem.WholeFile, "There is nothing in the file.",
                "Check that it is the right file and that it was saved.");
            return null;
        }

        if (IsUtf16(text))
        {
            NotUtf8(Problem.WholeFile, "The text is saved as UTF-16.", problems);
            return null;
        }

        if (text.Contains((byte)0))
        {
            problems.Add(
                ProblemCodes.FileNotText, Problem.WholeFile, "The file is no text: it has zero bytes in it.",
                "Check that it is the right file.");
            return null;
        }

        if (!Utf8.IsValid(text))
        {
            TextPlace place = TextPlace.Of(text, ValidLength(text));
            NotUtf8(place.ToString(), "From here on the text is not in UTF-8.", problems);
            return null;
        }

        return text.ToArray();
    }

    private static bool IsUtf16(ReadOnlySpan<byte> text) =>
        text.StartsWith<byte>([0xFF, 0xFE]) || text.StartsWith<byte>([0xFE, 0xFF]);

    private static void NotUtf8(string place, string message, ProblemList problems) => problems.Add(
        ProblemCodes.FileNotUtf8, place, message, "Save the file as UTF-8 text (an option of the editor's “Save as”).");

    // Length of the longest prefix in UTF-8.
    private static int ValidLength(ReadOnlySpan<byte> text)
    {
        int at = 0;
        while (at < text.Length && Rune.DecodeFromUtf8(text[at..], out _, out int length) == OperationStatus.Done)
            at += length;
        return at;
    }
}
