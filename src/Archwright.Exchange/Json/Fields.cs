using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Json;

/// <summary>An object whose keys have been checked, and typed access to its values. Whatever is wrong with a value goes
/// to the problems, and the value comes back as null.</summary>
internal sealed class Fields
{
    private readonly Dictionary<string, Node> _values = new(StringComparer.Ordinal);
    private readonly ProblemList _problems;

    private Fields(Node node, string whose, ProblemList problems)
    {
        Node = node;
        Whose = whose;
        _problems = problems;
    }

    /// <summary>The object itself.</summary>
    public Node Node { get; }

    /// <summary>Whose figures these are, as in "the height <i>of the slot at tooth 13</i>".</summary>
    public string Whose { get; set; }

    /// <summary>Checks that it is an object, and its keys: unknown ones, ones given twice.</summary>
    /// <param name="node">What should be an object.</param>
    /// <param name="keys">Keys that it may have.</param>
    /// <param name="whose">Whose figures these are.</param>
    /// <param name="problems">Where problems go.</param>
    /// <param name="relatives">Kinds of object that could stand in the same place: one of their keys is not unknown,
    /// but out of place.</param>
    /// <returns>Null when it is no object.</returns>
    public static Fields? Of(
        Node node, KeySet keys, string whose, ProblemList problems, params ReadOnlySpan<KeySet> relatives)
    {
        if (node.Kind != NodeKind.Object)
        {
            problems.Add(
                ProblemCodes.ValueKind, node.Path, $"Here stands {node.Describe()} where {keys.What} is wanted.",
                $"Write a group in {{ }} with the keys {Say.List(keys.Keys)}.");
            return null;
        }

        var fields = new Fields(node, whose, problems);
        foreach ((string key, Node value) in node.Members)
        {
            if (!keys.Keys.Contains(key))
                fields.Refuse(key, value, keys, relatives);
            else if (!fields._values.TryAdd(key, value))
                fields.Twice(key, value);
        }

        return fields;
    }

    /// <summary>The value of a key, or null when it is not given.</summary>
    public Node? Find(string key) => _values.GetValueOrDefault(key);

    /// <summary>True when the key is given.</summary>
    public bool Has(string key) => _values.ContainsKey(key);

    /// <summary>The value of a key that has to be given; null and a problem when it is not.</summary>
    public Node? Need(string key)
    {
        if (_values.TryGetValue(key, out Node? value))
            return value;

        _problems.Add(
            ProblemCodes.KeyMissing, Node.PathOf(key), $"The key {Say.Quote(key)} {Whose} is missing.",
            $"Add it; see “{key}” in docs/case-files.md.");
        return null;
    }

    /// <summary>A figure that has to be given.</summary>
    public double? Number(string key, Quantity quantity) =>
        Need(key) is { } node ? NodeReading.Number(node, quantity, Whose, _problems) : null;

    /// <summary>A figure that may be left out.</summary>
    public double? Number(string key, Quantity quantity, double fallback) =>
        Find(key) is { } node ? NodeReading.Number(node, quantity, Whose, _problems) : fallback;

    /// <summary>A word that has to be given.</summary>
    public string? Word(string key, params ReadOnlySpan<string> words) =>
        Need(key) is { } node ? NodeReading.Word(node, key, Whose, _problems, words) : null;

    /// <summary>A word that may be left out.</summary>
    public string? WordOr(string key, string fallback, params ReadOnlySpan<string> words) =>
        Find(key) is { } node ? NodeReading.Word(node, key, Whose, _problems, words) : fallback;

    private void Twice(string key, Node value) => _problems.Add(
        ProblemCodes.KeyTwice, value.Path, $"The key {Say.Quote(key)} {Whose} is given twice.",
        "Keep one of the two.");

    private void Refuse(string key, Node value, KeySet keys, ReadOnlySpan<KeySet> relatives)
    {
        foreach (KeySet relative in relatives)
        {
            if (relative.Keys.Contains(key))
            {
                _problems.Add(
                    ProblemCodes.KeyOutOfPlace, value.Path,
                    $"The key {Say.Quote(key)} does not go with {keys.What}; it belongs to {relative.What}.",
                    $"Take it out; {keys.What} has the keys {Say.List(keys.Keys)}.");
                return;
            }
        }

        _problems.Add(
            ProblemCodes.KeyUnknown, value.Path,
            $"{Say.Quote(key)} is no key of {keys.What}.{Nearest.Hint(key, keys.Keys)}",
            $"Take it out, or write one of {Say.List(keys.Keys)}.");
    }
}
