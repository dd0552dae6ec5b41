using System.Globalization;
using Archwright.Dentition.Comparison;
using Archwright.Practice.Settings;

namespace Archwright.Web.Words;

/// <summary>Numbers as screens show them, with their units, in one place.</summary>
public static class Figures
{
    // 1 gram-force is 9.80665 mN by definition (standard acceleration of gravity).
    private const double NewtonsOfGramForce = 0.00980665;

    /// <summary>A force in the unit of the practice: "85 cN".</summary>
    /// <param name="newtons">[N]</param>
    /// <param name="unit">How the practice shows forces.</param>
    public static string Force(double newtons, ShownForce unit) => $"{BareForce(newtons, unit)} {Unit(unit)}";

    /// <summary>A force in the unit of the practice without its name, for tables that name it once: "85".</summary>
    public static string BareForce(double newtons, ShownForce unit) =>
        Text(InUnit(newtons, unit), unit == ShownForce.Newton ? "0.00" : "0");

    /// <summary>A force as a bare number in the unit of the practice, for the scale of a picture.</summary>
    public static double InUnit(double newtons, ShownForce unit) => unit switch
    {
        ShownForce.Centinewton => 100 * newtons,
        ShownForce.Newton => newtons,
        ShownForce.GramForce => newtons / NewtonsOfGramForce,
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "No such unit."),
    };

    /// <summary>A unit of force: "cN".</summary>
    public static string Unit(ShownForce unit) => unit switch
    {
        ShownForce.Centinewton => "cN",
        ShownForce.Newton => "N",
        ShownForce.GramForce => "gf",
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "No such unit."),
    };

    /// <summary>A force with its sign: "+85 cN".</summary>
    public static string SignedForce(double newtons, ShownForce unit) => Signed(newtons, Force(newtons, unit));

    /// <summary>A moment with its sign: "−3.1 N·mm".</summary>
    public static string SignedMoment(double newtonMillimetres) =>
        Signed(newtonMillimetres, Text(newtonMillimetres, "0.0") + " N·mm");

    /// <summary>A moment: "3.1 N·mm".</summary>
    public static string Moment(double newtonMillimetres) => BareMoment(newtonMillimetres) + " N·mm";

    /// <summary>A moment without its unit: "3.1".</summary>
    public static string BareMoment(double newtonMillimetres) => Text(newtonMillimetres, "0.0");

    /// <summary>A small length: "0.93 mm".</summary>
    public static string Hundredths(double millimetres) => Text(millimetres, "0.00") + " mm";

    /// <summary>How sentences say forces and teeth in the practice's words.</summary>
    public static SentenceStyle Style(PracticeSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return new SentenceStyle(
            newtons => Force(newtons, settings.Force), moment => Text(moment, "0.0") + " N·mm", settings.Notation);
    }

    /// <summary>A length: "1.2 mm".</summary>
    public static string Mm(double millimetres) => Text(millimetres, "0.0") + " mm";

    /// <summary>Weeks: "1 week", "6 weeks".</summary>
    public static string Weeks(int weeks) =>
        weeks == 1 ? "1 week" : weeks.ToString(CultureInfo.InvariantCulture) + " weeks";

    /// <summary>A day: "2 Mar 2026".</summary>
    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>When something was done, from the first to the last of it, local: "on 2 Mar 2026, 09:30".</summary>
    /// <param name="clock">Knows the local time.</param>
    /// <param name="first">The first of it.</param>
    /// <param name="last">The last of it.</param>
    public static string Span(TimeProvider clock, DateTimeOffset first, DateTimeOffset last)
    {
        ArgumentNullException.ThrowIfNull(clock);
        string from = Minute(clock, first);
        string to = Minute(clock, last);
        return from == to ? $"on {from}" : $"from {from} to {to}";
    }

    private static string Minute(TimeProvider clock, DateTimeOffset at) => TimeZoneInfo
        .ConvertTime(at, clock.LocalTimeZone).ToString("d MMM yyyy, HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A day of the week: "Monday 2 March".</summary>
    public static string LongDay(DateOnly day) => day.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A time of day: "09:30".</summary>
    public static string Time(TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A coordinate of a picture.</summary>
    internal static string Coordinate(double value) => Math.Round(value, 2).ToString(CultureInfo.InvariantCulture);

    /// <summary>A coordinate of a small picture.</summary>
    internal static string Fine(double value) => Math.Round(value, 4).ToString(CultureInfo.InvariantCulture);

    /// <summary>A plain number for a field.</summary>
    public static string Plain(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Text(double value, string format)
    {
        string text = value.ToString(format, CultureInfo.InvariantCulture);
        return text.TrimStart('-').Trim('0', '.').Length == 0 ? text.TrimStart('-') : text.Replace('-', '−');
    }

    private static string Signed(double value, string text) => value > 0 && text[0] != '0' ? "+" + text : text;
}
