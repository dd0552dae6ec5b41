using System.Globalization;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Units;

namespace Archwright.Cli.Tables;

/// <summary>Verdicts and figures of compared wires in few words, for tables and pictures.</summary>
internal static class CompareWords
{
    /// <summary>A verdict in two or three words.</summary>
    public static string Of(WireVerdict verdict) => verdict switch
    {
        WireVerdict.WithinLimits => "within limits",
        WireVerdict.AboveCeiling => "above a ceiling",
        WireVerdict.BendsForGood => "would stay bent",
        _ => "cannot go in",
    };

    /// <summary>A number of wires with a verdict, in words that go on a sentence.</summary>
    public static string Count(WireVerdict verdict, int count) => verdict switch
    {
        WireVerdict.WithinLimits => $"{count} within limits",
        WireVerdict.AboveCeiling => $"{count} above a ceiling",
        WireVerdict.BendsForGood => $"{count} that would stay bent",
        _ => $"{count} that cannot go in",
    };

    /// <summary>Torque play in degrees; a dash for round wires and where none applies.</summary>
    public static string Play(ComparedWire wire)
    {
        if (wire.Wire.Section.IsRound || wire.Verdict == WireVerdict.NotEngaged)
            return "–";

        return double.IsInfinity(wire.TorquePlay)
            ? "free"
            : Angle.ToDegrees(wire.TorquePlay).ToString("0.0", CultureInfo.InvariantCulture) + "°";
    }

    /// <summary>Largest strain against its limit; a star where the limit is the start of a plateau.</summary>
    public static string Strain(ComparedWire wire)
    {
        string limit = Percent(wire.StrainLimit) + (wire.Wire.InitialModulusOnly ? "*" : " ");
        return wire.Engaged ? $"{Percent(wire.MaxStrain)}/{limit}" : $"–/{limit}";
    }

    /// <summary>The teeth above a ceiling, the worst first, two or three by name.</summary>
    public static string TeethAbove(ComparedWire wire, ToothWords words)
    {
        int[] slots =
        [
            .. wire.TeethAboveCeiling
                .GroupBy(one => one.Slot)
                .OrderByDescending(group => group.Max(one => one.Ratio))
                .Select(group => group.Key),
        ];
        if (slots.Length == 0)
            return wire.Engaged ? "none" : "–";

        int most = words.Notation == ToothNotation.Palmer ? 2 : 3; // three letters each in place of two digits
        string named = string.Join(" ", slots.Take(most).Select(words.Number));
        return slots.Length > most ? $"{named} +{slots.Length - most}" : named;
    }

    private static string Percent(double strain) => (100 * strain).ToString("0.00", CultureInfo.InvariantCulture);
}
