using System.Globalization;
using Archwright.Cli.Units;
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

    /// <summary>A force on engagement; after a "&lt;" where it is too high.</summary>
    public static string Force(ComparedWire wire, ForceUnit unit) =>
        !wire.Engaged ? "–" : (wire.IsUpperBound ? "<" : "") + unit.Figure(wire.LargestForce);

    /// <summary>The largest force when working; a question mark where it was not found.</summary>
    public static string Working(ComparedWire wire, ForceUnit unit) => wire switch
    {
        { Engaged: false } => "–",
        { Working: { } working } => (wire.IsUpperBound ? "<" : "") + unit.Figure(working.LargestForce),
        _ => "?",
    };

    /// <summary>Permanent set; a question mark where it is not known.</summary>
    public static string Set(ComparedWire wire) => wire switch
    {
        { Engaged: false } => "–",
        { Set: null } => "?",
        { Set: < 0.005 } => "none",
        { Set: { } set } => set.ToString("0.00", CultureInfo.InvariantCulture),
    };

    /// <summary>Share transformed [%]; a dash for alloys that do not transform.</summary>
    public static string Transformed(ComparedWire wire) => !wire.Engaged || !wire.Wire.InitialModulusOnly
        ? "–"
        : wire.IsUpperBound ? "?" : (100 * wire.TransformedShare).ToString("0", CultureInfo.InvariantCulture);

    /// <summary>How the force lasts, in a line.</summary>
    public static string Lasting(ComparedWire wire, ToothWords words, ForceUnit unit)
    {
        IEnumerable<string> readings = wire.Lasting.Select(one =>
            $"{(100 * one.OffsetLeft).ToString("0", CultureInfo.InvariantCulture)} % {unit.Figure(one.Force)}");
        return $"As the teeth come in, force on {words.Number(wire.LargestForceSlot)} [{unit.Symbol}] at the offset "
            + $"that remains: {string.Join(", ", readings)}.";
    }

    /// <summary>Largest strain in percent of the elastic limit; a star where the limit is the start of a
    /// plateau.</summary>
    public static string Strain(ComparedWire wire) => wire.Engaged
        ? (100 * wire.MaxStrain / wire.StrainLimit).ToString("0", CultureInfo.InvariantCulture)
            + (wire.Wire.InitialModulusOnly ? "*" : " ")
        : "– ";

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
}
