using System.Text;

namespace Archwright.Exchange.Files;

/// <summary>A place in a text, as an editor counts it: both from 1, columns in characters.</summary>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1.</param>
internal readonly record struct TextPlace(int Line, int Column)
{
    /// <summary>The place of a byte in UTF-8 text.</summary>
    /// <param name="text">The whole text.</param>
    /// <param name="at">Index of the byte; may be the text's length.</param>
    public static TextPlace Of(ReadOnlySpan<byte> text, int at)
    {
        ReadOnlySpan<byte> before = text[..at];
        int line = before.Count((byte)'\n') + 1;
        int start = before.LastIndexOf((byte)'\n') + 1;
        return new TextPlace(line, Encoding.UTF8.GetCharCount(before[start..]) + 1);
    }

    /// <inheritdoc/>
    public override string ToString() => $"line {Line}, column {Column}";
}
