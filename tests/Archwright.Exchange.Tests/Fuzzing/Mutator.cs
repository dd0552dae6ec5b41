using System.Text;
using System.Text.RegularExpressions;

namespace Archwright.Exchange.Tests.Fuzzing;

/// <summary>Spoils texts: the slips of people and of machines.</summary>
internal sealed partial class Mutator(int seed)
{
    private static readonly string[] Figures =
    [
        "0", "-0", "-1", "1e308", "-1e308", "1e999", "1e-320", "NaN", "Infinity", "900", "0.022", "559", "2147483648",
        "9007199254740993", "0.1e1", "01", ".5", "1.", "+1", "\"0.5588\"", "null", "true", "[]", "{}", "\"\"", "\"\\ud800\"", "0,5",
    ];

    private static readonly string[] Keys =
    [
        "tooth", "height_mm", "depth_mm", "width_mm", "rest", "actual", "offset", "hold", "tie", "kind", "law", "shape",
        "catalogue", "alloy", "section", "format", "slots", "then", "contact", "points_mm", "colour", "höhe_mm", "",
    ];

    private static readonly string[] Words =
    [
        "upper", "lower", "bench", "13", "21", "48", "99", "closed", "steel", "partial", "none", "clamped", "point", "edges", "walls",
        "round", "rectangular", "straight", "points", "free", "cinched", "linear-elastic", "superelastic", "ss-016", "niti-014", "ss", "x",
    ];

    // A seed of its own for every run, so that one failure can be repeated alone.
    private readonly Random _random = new(seed);

    /// <summary>The text with one to four things spoilt; in two of five texts numbers alone, a little, so that many of them
    /// still pass for a case.</summary>
    public byte[] Spoil(string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        if (_random.Next(5) < 2)
        {
            for (int i = _random.Next(1, 4); i > 0; i--)
                bytes = Nudged(bytes);
            return bytes;
        }

        for (int i = _random.Next(1, 5); i > 0; i--)
            bytes = Once(bytes);
        return bytes;
    }

    private byte[] Once(byte[] bytes) => _random.Next(12) switch
    {
        0 => Flipped(bytes),
        1 => Without(bytes, Math.Min(bytes.Length, 1 + _random.Next(3))),
        2 => Without(bytes, Math.Min(bytes.Length, _random.Next(200))),
        3 => Doubled(bytes),
        4 => Swapped(bytes),
        5 or 6 or 7 => Replaced(bytes, NumberPattern(), Figures),
        8 => Replaced(bytes, KeyPattern(), [.. Keys.Select(key => $"\"{key}\":")]),
        9 => Replaced(bytes, WordPattern(), [.. Words.Select(word => $"\"{word}\"")]),
        10 => Nudged(bytes),
        _ => bytes[.._random.Next(bytes.Length + 1)],
    };

    private byte[] Flipped(byte[] bytes)
    {
        byte[] copy = [.. bytes];
        if (copy.Length > 0)
            copy[_random.Next(copy.Length)] ^= (byte)(1 << _random.Next(8));
        return copy;
    }

    private byte[] Without(byte[] bytes, int count)
    {
        int start = _random.Next(bytes.Length - count + 1);
        return [.. bytes[..start], .. bytes[(start + count)..]];
    }

    private byte[] Doubled(byte[] bytes)
    {
        int start = _random.Next(bytes.Length + 1);
        int end = Math.Min(bytes.Length, start + _random.Next(300));
        int at = _random.Next(bytes.Length + 1);
        return [.. bytes[..at], .. bytes[start..end], .. bytes[at..]];
    }

    private byte[] Swapped(byte[] bytes)
    {
        int[] cuts = [.. Enumerable.Range(0, 4).Select(_ => _random.Next(bytes.Length + 1)).Order()];
        return [.. bytes[..cuts[0]], .. bytes[cuts[2]..cuts[3]], .. bytes[cuts[1]..cuts[2]], .. bytes[cuts[0]..cuts[1]], .. bytes[cuts[3]..]];
    }

    private byte[] Replaced(byte[] bytes, Regex pattern, string[] by)
    {
        string text = Encoding.UTF8.GetString(bytes);
        MatchCollection matches = pattern.Matches(text);
        if (matches.Count == 0)
            return bytes;

        Match match = matches[_random.Next(matches.Count)];
        return Encoding.UTF8.GetBytes(text[..match.Index] + by[_random.Next(by.Length)] + text[(match.Index + match.Length)..]);
    }

    // A number a little, or ten times, or with its sign, off: the slips that may still pass for a case.
    private byte[] Nudged(byte[] bytes)
    {
        string text = Encoding.UTF8.GetString(bytes);
        MatchCollection matches = NumberPattern().Matches(text);
        if (matches.Count == 0)
            return bytes;

        Match match = matches[_random.Next(matches.Count)];
        double value = double.TryParse(match.Value, System.Globalization.CultureInfo.InvariantCulture, out double v) ? v : 0;
        double nudged = _random.Next(4) switch
        {
            0 => -value,
            1 => value * 10,
            2 => value + _random.NextDouble() * 10 - 5,
            _ => value * (0.5 + _random.NextDouble()),
        };
        string figure = double.IsFinite(nudged) ? nudged.ToString("R", System.Globalization.CultureInfo.InvariantCulture) : "0";
        return Encoding.UTF8.GetBytes(text[..match.Index] + figure + text[(match.Index + match.Length)..]);
    }

    [GeneratedRegex(@"(?<=[\[:,\s])-?[0-9]+(\.[0-9]+)?([eE][+-]?[0-9]+)?", RegexOptions.None, 1000)]
    private static partial Regex NumberPattern();

    [GeneratedRegex("\"[a-zA-Z_0-9]+\"\\s*:", RegexOptions.None, 1000)]
    private static partial Regex KeyPattern();

    [GeneratedRegex("(?<=:\\s?)\"[^\"]*\"", RegexOptions.None, 1000)]
    private static partial Regex WordPattern();
}
