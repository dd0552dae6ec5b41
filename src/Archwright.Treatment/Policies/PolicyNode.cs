using System.Globalization;
using System.Text.Json;

namespace Archwright.Treatment.Policies;

/// <summary>A value of a policy file with its path; what is wrong goes to the problems, and null comes back.</summary>
internal sealed class PolicyNode(JsonElement value, string path, List<PolicyProblem> problems)
{
    private const int LongestText = 2000;

    public string Path => path;

    public void Fault(string message, string remedy) =>
        problems.Add(new PolicyProblem(path.Length > 0 ? path : "(whole file)", message, remedy));

    /// <summary>Refuses keys that are not known, keys given twice, and what is no group.</summary>
    public bool HasKeys(params ReadOnlySpan<string> known)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            Fault("Here a group in { } is wanted.", $"Write one with the keys {string.Join(", ", known.ToArray())}.");
            return false;
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (JsonProperty member in value.EnumerateObject())
        {
            if (!known.Contains(member.Name))
            {
                Member(member.Name, member.Value).Fault(
                    $"'{Short(member.Name)}' is no key of this group.",
                    $"Take it out, or write one of {string.Join(", ", known.ToArray())}.");
            }
            else if (!seen.Add(member.Name))
            {
                Member(member.Name, member.Value).Fault(
                    $"The key '{member.Name}' is given twice.", "Keep one of the two.");
            }
        }

        return true;
    }

    /// <summary>A member that may be left out.</summary>
    public PolicyNode? Find(string key) => value.ValueKind == JsonValueKind.Object
        && value.TryGetProperty(key, out JsonElement found) ? Member(key, found) : null;

    /// <summary>A member that has to be there.</summary>
    public PolicyNode? Need(string key)
    {
        if (Find(key) is { } found)
            return found;

        if (value.ValueKind == JsonValueKind.Object)
            Fault($"The key '{key}' is missing.", "Add it; docs/policy.md describes every key.");
        return null;
    }

    public string? Text(string key) => Need(key)?.AsText();

    public double? Number(string key, double low, double high, string unit) => Need(key)?.AsNumber(low, high, unit);

    public IReadOnlyList<PolicyNode> Items(string key)
    {
        if (Need(key) is not { } node)
            return [];

        if (node.IsList)
            return node.Entries();

        node.Fault("Here a list in [ ] is wanted.", "Write the entries between [ and ].");
        return [];
    }

    public string? AsText()
    {
        if (value.ValueKind == JsonValueKind.String && value.GetString() is { Length: > 0 and <= LongestText } text
            && !string.IsNullOrWhiteSpace(text) && !text.Any(char.IsControl))
        {
            return text;
        }

        Fault("Here a text of one line is wanted.", $"Write 1 to {LongestText} characters in quotation marks.");
        return null;
    }

    public double? AsNumber(double low, double high, string unit)
    {
        if (value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out double number)
            && number >= low && number <= high)
        {
            return number;
        }

        string given = value.ValueKind == JsonValueKind.Number ? Short(value.GetRawText()) : "no number";
        Fault(
            string.Create(
                CultureInfo.InvariantCulture, $"Here stands {given}; it must lie from {low} to {high} {unit}."),
            $"Write a number in {unit}.");
        return null;
    }

    /// <summary>One of some words.</summary>
    public T? Word<T>(string key, params ReadOnlySpan<(string Word, T Value)> choices)
        where T : struct
    {
        if (Need(key) is not { } node || node.AsText() is not { } text)
            return null;

        foreach ((string word, T choice) in choices)
        {
            if (word == text)
                return choice;
        }

        string known = string.Join(", ", choices.ToArray().Select(choice => choice.Word));
        node.Fault($"'{Short(text)}' is not known here.", $"Write one of {known}.");
        return null;
    }

    private bool IsList => value.ValueKind == JsonValueKind.Array;

    private List<PolicyNode> Entries() =>
        [.. value.EnumerateArray().Select((item, i) => new PolicyNode(item, $"{path}[{i}]", problems))];

    private PolicyNode Member(string key, JsonElement member) =>
        new(member, path.Length > 0 ? $"{path}.{Short(key)}" : Short(key), problems);

    private static string Short(string text) => new(
        [.. (text.Length <= 40 ? text : text[..40] + "…").Select(c => char.IsControl(c) ? '·' : c)]);
}
