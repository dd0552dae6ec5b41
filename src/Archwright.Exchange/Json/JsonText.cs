using System.Text;
using System.Text.Json;
using Archwright.Exchange.Files;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Json;

/// <summary>Parses a JSON text into <see cref="Node"/>s; what is not JSON becomes a problem with line and
/// column.</summary>
internal ref struct JsonText
{
    /// <summary>Deepest nesting that is read; a case needs seven.</summary>
    public const int Deepest = 32;

    /// <summary>Most values that are read; a case of 16 slots with 5000 rest points has 40 000.</summary>
    public const int MostValues = 200_000;

    private readonly ReadOnlySpan<byte> _text;
    private readonly ProblemList _problems;
    private Utf8JsonReader _reader;
    private int _values;

    private JsonText(ReadOnlySpan<byte> text, ProblemList problems)
    {
        _text = text;
        _problems = problems;
        _reader = new Utf8JsonReader(text, new JsonReaderOptions { MaxDepth = 2 * Deepest });
    }

    /// <summary>The root of the text, or null with one problem: behind the first slip nothing can be
    /// understood.</summary>
    public static Node? Parse(ReadOnlySpan<byte> text, ProblemList problems)
    {
        var parser = new JsonText(text, problems);
        try
        {
            parser._reader.Read();
            Node? root = parser.Value(null, null, 0);
            if (root is not null)
                parser._reader.Read();       // anything behind the root throws
            return root;
        }
        catch (JsonException e)
        {
            JsonSlip.Explain(text, PlaceOf(text, e), problems);
            return null;
        }
    }

    private static int PlaceOf(ReadOnlySpan<byte> text, JsonException e)
    {
        int start = 0;
        for (long line = e.LineNumber ?? 0; line > 0; line--)
        {
            int next = text[start..].IndexOf((byte)'\n');
            if (next < 0)
                break;
            start += next + 1;
        }

        return (int)Math.Clamp(start + (e.BytePositionInLine ?? 0), 0, text.Length);
    }

    private Node? Value(Node? parent, string? key, int index)
    {
        if (_reader.CurrentDepth > Deepest)
        {
            return Stop(
                ProblemCodes.JsonTooDeep, $"Brackets are nested more than {Deepest} deep.",
                "Check that it is the right file: a case needs seven levels.");
        }

        if (++_values > MostValues)
        {
            return Stop(
                ProblemCodes.JsonTooMany, $"The file has more than {MostValues} values.",
                "Check that it is the right file; give rest points half a millimetre apart.");
        }

        return _reader.TokenType switch
        {
            JsonTokenType.StartObject => Object(parent, key, index),
            JsonTokenType.StartArray => Array(parent, key, index),
            JsonTokenType.String => TextValue(parent, key, index),
            JsonTokenType.Number => Number(parent, key, index),
            JsonTokenType.Null => Plain(NodeKind.Null, parent, key, index),
            _ => Plain(NodeKind.Boolean, parent, key, index),
        };
    }

    private Node? Object(Node? parent, string? key, int index)
    {
        var node = new Node(NodeKind.Object, parent, key, index) { Start = (int)_reader.TokenStartIndex };
        while (_reader.Read() && _reader.TokenType == JsonTokenType.PropertyName)
        {
            if (!TryText(out string? name))
                return null;

            _reader.Read();
            if (Value(node, name, 0) is not { } value)
                return null;
            node.Members.Add((name!, value));
        }

        node.End = (int)_reader.BytesConsumed;
        return node;
    }

    private Node? Array(Node? parent, string? key, int index)
    {
        var node = new Node(NodeKind.Array, parent, key, index) { Start = (int)_reader.TokenStartIndex };
        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndArray)
        {
            if (Value(node, null, node.Items.Count) is not { } value)
                return null;
            node.Items.Add(value);
        }

        node.End = (int)_reader.BytesConsumed;
        return node;
    }

    private Node? TextValue(Node? parent, string? key, int index) =>
        TryText(out string? text)
            ? new Node(NodeKind.Text, parent, key, index)
            {
                Text = text!, Start = (int)_reader.TokenStartIndex, End = (int)_reader.BytesConsumed,
            }
            : null;

    private readonly Node Number(Node? parent, string? key, int index) => new(NodeKind.Number, parent, key, index)
    {
        Text = Encoding.UTF8.GetString(_reader.ValueSpan),
        Number = _reader.TryGetDouble(out double value) ? value : double.NaN,
        Start = (int)_reader.TokenStartIndex,
        End = (int)_reader.BytesConsumed,
    };

    private readonly Node Plain(NodeKind kind, Node? parent, string? key, int index) => new(kind, parent, key, index)
    {
        Text = Encoding.UTF8.GetString(_reader.ValueSpan),
        Start = (int)_reader.TokenStartIndex,
        End = (int)_reader.BytesConsumed,
    };

    // An escaped half of a surrogate pair (\ud83d alone) passes the grammar of JSON but is no character.
    private readonly bool TryText(out string? text)
    {
        try
        {
            text = _reader.GetString();
            return true;
        }
        catch (InvalidOperationException)
        {
            _problems.Add(
                ProblemCodes.JsonHalfCharacter,
                TextPlace.Of(_text, (int)_reader.TokenStartIndex).ToString(),
                @"This text has an escape (\u…) that is only half a character.",
                "Write the character itself.");
            text = null;
            return false;
        }
    }

    private readonly Node? Stop(ProblemCode code, string message, string remedy)
    {
        _problems.Add(code, TextPlace.Of(_text, (int)_reader.TokenStartIndex).ToString(), message, remedy);
        return null;
    }
}
