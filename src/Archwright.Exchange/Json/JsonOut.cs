using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Archwright.Mechanics.Numerics;

namespace Archwright.Exchange.Json;

/// <summary>Writes JSON that a person can read: two spaces of indent, vectors on one line, a line end at the end. A
/// figure that is not finite is never written: it is our mistake, and an exception.</summary>
internal sealed class JsonOut : IDisposable
{
    private static readonly JavaScriptEncoder Plain = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;

    // Gathered first and sent last: a fault half-way must not leave half a document behind.
    private readonly ArrayBufferWriter<byte> _text = new();
    private readonly Stream _stream;
    private readonly Utf8JsonWriter _writer;

    /// <summary>Opens the root object.</summary>
    public JsonOut(Stream stream, string format)
    {
        ArgumentNullException.ThrowIfNull(stream);
        _stream = stream;
        _writer = new Utf8JsonWriter(
            _text, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = Plain });
        _writer.WriteStartObject();
        _writer.WriteString("format", format);
    }

    /// <summary>Closes the root object and sends the text to the stream.</summary>
    public void Finish()
    {
        _writer.WriteEndObject();
        _writer.Flush();
        _stream.Write(_text.WrittenSpan);
        _stream.Write("\n"u8);
    }

    public void Text(string key, string? value) => _writer.WriteString(key, value);

    public void Boolean(string key, bool value) => _writer.WriteBoolean(key, value);

    public void Number(string key, double value)
    {
        _writer.WritePropertyName(key);
        _writer.WriteRawValue(Figure(key, value));
    }

    /// <summary>A figure, or null where there is none.</summary>
    public void Number(string key, double? value)
    {
        if (value is { } figure)
            Number(key, figure);
        else
            _writer.WriteNull(key);
    }

    public void Vector(string key, Vector3 value)
    {
        _writer.WritePropertyName(key);
        _writer.WriteRawValue(Vector3Text(key, value));
    }

    /// <summary>A list, each entry on one line.</summary>
    public void Lines(string key, IEnumerable<string> rawEntries)
    {
        _writer.WriteStartArray(key);
        foreach (string entry in rawEntries)
            _writer.WriteRawValue(entry);
        _writer.WriteEndArray();
    }

    /// <summary>A value that is JSON already.</summary>
    public void Raw(string key, string json)
    {
        _writer.WritePropertyName(key);
        _writer.WriteRawValue(json);
    }

    /// <summary>An object over several lines.</summary>
    public void Group(string key, Action<JsonOut> content)
    {
        _writer.WriteStartObject(key);
        content(this);
        _writer.WriteEndObject();
    }

    /// <summary>A list of objects over several lines.</summary>
    public void Groups<T>(string key, IEnumerable<T> items, Action<JsonOut, T> content)
    {
        _writer.WriteStartArray(key);
        foreach (T item in items)
        {
            _writer.WriteStartObject();
            content(this, item);
            _writer.WriteEndObject();
        }

        _writer.WriteEndArray();
    }

    /// <summary>[x, y, z] on one line.</summary>
    public static string Vector3Text(string what, Vector3 v) =>
        $"[{Figure(what, v.X)}, {Figure(what, v.Y)}, {Figure(what, v.Z)}]";

    /// <summary>An object on one line.</summary>
    public static string OneLine(params ReadOnlySpan<(string Key, string Raw)> members)
    {
        var text = new StringBuilder("{ ");
        foreach ((string key, string raw) in members)
        {
            if (text.Length > 2)
                text.Append(", ");
            text.Append(Quoted(key)).Append(": ").Append(raw);
        }

        return text.Append(" }").ToString();
    }

    /// <summary>A text as JSON writes it.</summary>
    public static string Quoted(string text) => "\"" + Plain.Encode(text) + "\"";

    /// <summary>A figure as JSON writes it: the shortest digits that give the same double again.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not finite.</exception>
    public static string Figure(string what, double value) =>
        double.IsFinite(value)
            ? (value == 0 ? 0 : value).ToString("R", CultureInfo.InvariantCulture)
            : throw new ArgumentOutOfRangeException(what, value, "Only finite figures are written to a file.");

    /// <inheritdoc/>
    public void Dispose() => _writer.Dispose();
}
