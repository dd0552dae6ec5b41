using System.Globalization;

namespace Archwright.Exchange.Json;

/// <summary>What a value of a JSON text is.</summary>
internal enum NodeKind
{
    Object,
    Array,
    Text,
    Number,
    Boolean,
    Null,
}

/// <summary>One value of a JSON text, with its place in it.</summary>
/// <remarks>A tree of our own and not the base library's: that one throws on half characters, keeps no path, and does
/// not tell a key that is given twice.</remarks>
internal sealed class Node(NodeKind kind, Node? parent, string? key, int index)
{
    private const int LongestKeyShown = 40;

    public NodeKind Kind { get; } = kind;

    /// <summary>Of a text: its characters. Of a number: its digits as written. Otherwise empty.</summary>
    public string Text { get; init; } = "";

    /// <summary>Value of a number; infinite where it is beyond double precision.</summary>
    public double Number { get; init; }

    /// <summary>Members of an object, in order, keys given twice included.</summary>
    public List<(string Key, Node Value)> Members { get; } = [];

    /// <summary>Entries of an array.</summary>
    public List<Node> Items { get; } = [];

    /// <summary>Start of the value in the text [bytes].</summary>
    public int Start { get; init; }

    /// <summary>First byte after the value.</summary>
    public int End { get; set; }

    /// <summary>Place inside the file: <c>slots[3].height_mm</c>; empty for the root.</summary>
    public string Path
    {
        get
        {
            if (parent is null)
                return "";

            string above = parent.Path;
            if (key is null)
                return above + "[" + index.ToString(CultureInfo.InvariantCulture) + "]";

            string shown = Shown(key);
            return above.Length == 0 || shown[0] == '[' ? above + shown : above + "." + shown;
        }
    }

    /// <summary>Path of a member of this object, whether it is there or not.</summary>
    public string PathOf(string member)
    {
        string above = Path;
        return above.Length == 0 ? member : above + "." + member;
    }

    /// <summary>What it is, in words: “a text”, “a list”.</summary>
    public string Describe() => Kind switch
    {
        NodeKind.Object => "a group in { }",
        NodeKind.Array => "a list in [ ]",
        NodeKind.Text => "the text " + Problems.Say.Quote(Text),
        NodeKind.Number => "the number " + ShownNumber,
        NodeKind.Boolean => Text,
        _ => "null",
    };

    /// <summary>A number as the user wrote it, cut where it is long.</summary>
    public string ShownNumber => Text.Length <= 24 ? Text : Text[..24] + "…";

    private static string Shown(string key)
    {
        bool plain = key.Length is > 0 and <= LongestKeyShown
            && key.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-');
        if (plain)
            return key;

        string cut = key.Length <= LongestKeyShown ? key : key[..LongestKeyShown] + "…";
        return "[\"" + Problems.Say.Printable(cut) + "\"]";
    }
}
