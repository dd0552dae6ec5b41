using System.Globalization;

namespace Archwright.Validation.Record;

/// <summary>A range of figures, both ends included; a single figure where both are alike.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct Interval(double Low, double High)
{
    /// <summary>Half-way.</summary>
    public double Middle => (Low + High) / 2;

    /// <summary>True for a single figure.</summary>
    public bool IsPoint => Low == High;

    /// <summary>Whether a figure lies inside; one that is not finite never does.</summary>
    public bool Holds(double value) => value >= Low && value <= High;

    /// <summary>Reads <c>1.2</c> or <c>1.1..1.6</c>.</summary>
    /// <returns>Null when it is neither, or upside down.</returns>
    public static Interval? Parse(string text)
    {
        string[] ends = text.Split("..");
        if (ends.Length is < 1 or > 2 || Number(ends[0]) is not { } low || Number(ends[^1]) is not { } high)
            return null;

        return low <= high ? new Interval(low, high) : null;
    }

    /// <summary>Reads what a check accepts: a range as <see cref="Parse"/>, or a deviation from the published figure
    /// either way, <c>±0.1</c> or <c>±5 %</c>; from both ends of a published range.</summary>
    /// <returns>Null when it is none of them.</returns>
    public static Interval? ParseAccept(string text, Interval published)
    {
        if (text.Length == 0 || text[0] != '±')
            return Parse(text);

        bool isShare = text.EndsWith('%');
        if (Number(text[1..].TrimEnd('%').Trim()) is not { } deviation || deviation < 0)
            return null;

        double below = isShare ? Math.Abs(published.Low) * deviation / 100 : deviation;
        double above = isShare ? Math.Abs(published.High) * deviation / 100 : deviation;
        return new Interval(published.Low - below, published.High + above);
    }

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
        && double.IsFinite(value)
            ? value
            : null;
}
