using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace Archwright.Cli.Running;

/// <summary>Options that take numbers, checked against limits, with a decimal point whatever the country.</summary>
internal static class NumberOption
{
    /// <summary>A number inside limits.</summary>
    public static Option<double> Real(string name, string description, string unit, double low, double high) =>
        new(name)
        {
            Description = description, HelpName = unit, CustomParser = result => Parsed(result, name, unit, low, high),
        };

    /// <summary>A number inside limits, with a usual value.</summary>
    public static UsualOption<double> Real(
        string name, string description, string unit, double low, double high, double usual) =>
        new(name, usual)
        {
            Description = $"{description} Usual: {Plain(usual)}.",
            HelpName = unit,
            CustomParser = result => Parsed(result, name, unit, low, high),
        };

    /// <summary>A whole number inside limits, with a usual value.</summary>
    public static UsualOption<int> Whole(string name, string description, int low, int high, int usual) =>
        new(name, usual)
        {
            Description = description,
            HelpName = "N",
            CustomParser = result =>
            {
                string typed = result.Tokens[0].Value;
                if (int.TryParse(typed, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value)
                    && value >= low && value <= high)
                {
                    return value;
                }

                result.AddError($"{name} is a whole number from {low} to {high}, not '{typed}'.");
                return low;
            },
        };

    /// <summary>Numbers separated by commas.</summary>
    public static UsualOption<double[]> List(
        string name, string description, string helpName, string unit, double low, double high, double[] usual,
        int? count = null) =>
        new(name, usual)
        {
            Description = description,
            HelpName = helpName,
            CustomParser = result => ParsedList(result, name, unit, low, high, count),
        };

    private static double[] ParsedList(
        ArgumentResult result, string name, string unit, double low, double high, int? count)
    {
        string typed = result.Tokens[0].Value;
        var values = new List<double>();
        foreach (string part in typed.Split(','))
        {
            if (!TryRead(part, out double value) || value < low || value > high)
            {
                result.AddError($"{name}: '{part}' is not a number from {Plain(low)} to {Plain(high)} {unit}. "
                    + "Numbers have a decimal point and are separated by commas without spaces.");
                return [];
            }

            values.Add(value);
        }

        if (count is { } wanted && values.Count != wanted)
            result.AddError($"{name} takes {wanted} numbers separated by commas, not {values.Count}.");
        return [.. values];
    }

    private static double Parsed(ArgumentResult result, string name, string unit, double low, double high)
    {
        string typed = result.Tokens[0].Value;
        if (TryRead(typed, out double value) && value >= low && value <= high)
            return value;

        result.AddError($"{name} is a number from {Plain(low)} to {Plain(high)} {unit}, not '{typed}'.");
        return low;
    }

    /// <summary>Reads a plain decimal number; no thousands, no NaN, no infinity.</summary>
    public static bool TryRead(string text, out double value) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture, out value)
        && double.IsFinite(value);

    private static string Plain(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
