using Archwright.Practice.Rules;

namespace Archwright.Practice.Visits;

/// <summary>What may be kept as a photograph. A file is judged by what it begins with, not by its name.</summary>
public static class Photograph
{
    /// <summary>Largest file [bytes].</summary>
    public const int LargestBytes = 15 * 1024 * 1024;

    /// <summary>Bytes from the beginning of a file that tell its kind.</summary>
    public const int HeadBytes = 12;

    /// <summary>Views that a practice photographs; common practice, no source.</summary>
    public static IReadOnlyList<string> Views { get; } =
        ["upper occlusal", "lower occlusal", "front", "right side", "left side", "face", "other"];

    /// <summary>Kind of a picture by its first bytes; null when it is none that is kept.</summary>
    /// <param name="head">The first <see cref="HeadBytes"/> bytes, or fewer when the file is shorter.</param>
    /// <remarks>JPEG: ISO/IEC 10918-1, marker SOI and the next one; PNG: ISO/IEC 15948, 5.2; WebP: RFC 9649,
    /// section 2.4.</remarks>
    public static PhotographKind? KindOf(ReadOnlySpan<byte> head) =>
        head.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) ? PhotographKind.Jpeg
        : head.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]) ? PhotographKind.Png
        : head.Length >= HeadBytes && head.StartsWith("RIFF"u8) && head[8..].StartsWith("WEBP"u8) ? PhotographKind.Webp
        : null;

    /// <summary>Stops what is no picture or too large.</summary>
    /// <param name="head">The first bytes.</param>
    /// <param name="bytes">Size of the file.</param>
    /// <returns>Its kind.</returns>
    /// <exception cref="RuleBrokenException">Neither JPEG, PNG nor WebP, empty, or larger than allowed.</exception>
    public static PhotographKind Check(ReadOnlySpan<byte> head, long bytes)
    {
        PracticeRules.APhotographIsAPicture.Keep(
            bytes is > 0 and <= LargestBytes,
            $"The file has {bytes / 1048576.0:0.0} MB: photographs of up to {LargestBytes / 1048576} MB are kept.");
        PhotographKind? kind = KindOf(head);
        PracticeRules.APhotographIsAPicture.Keep(
            kind is not null, "The file is no JPEG, PNG or WebP picture, whatever its name says.");
        return kind!.Value; // checked in the line before
    }
}

/// <summary>How a picture is written.</summary>
public enum PhotographKind
{
    /// <summary>JPEG.</summary>
    Jpeg,

    /// <summary>PNG.</summary>
    Png,

    /// <summary>WebP.</summary>
    Webp,
}
