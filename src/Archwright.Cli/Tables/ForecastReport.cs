using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Cli.Units;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Units;
using Archwright.Exchange.CaseFiles;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Uncertainty;
using Spectre.Console;

namespace Archwright.Cli.Tables;

/// <summary>The answer of <c>forecast</c> for people: a table by week, and how each tooth goes.</summary>
internal static class ForecastReport
{
    /// <summary>Writes it.</summary>
    public static void Write(Terminal terminal, ForecastAnswer answer, ForceUnit unit, ToothNotation notation)
    {
        CaseFile file = answer.Case;
        var words = new ToothWords(file, notation);
        Layout.Heading(terminal, file.Title.Length > 0 ? file.Title : "Case without a title");
        Layout.Paragraph(terminal, CaseWords.WireAndSlots(file));
        Layout.Paragraph(terminal, Rate(answer));
        if (answer.Forecast.Stop is { } stop)
            Layout.Paragraph(terminal, Stopped(stop, words), style: Layout.Warning);

        Layout.Gap(terminal);
        Layout.Write(terminal, ByWeek(answer, words, unit));
        Layout.Gap(terminal);
        Layout.Write(terminal, ByTooth(answer, words, unit));
        Layout.Gap(terminal);
        Layout.Paragraph(terminal, Spent(answer));
        foreach (string caution in ForecastCautions(answer))
            Layout.Paragraph(terminal, caution);
    }

    /// <summary>Whether the wire still works, in a sentence.</summary>
    internal static string Spent(ForecastAnswer answer)
    {
        Percentiles weeks = answer.SpentInWeeks;
        if (answer.Drawn is null)
        {
            return double.IsFinite(weeks.P50)
                ? $"The wire is spent after {Plain(weeks.P50, "0.#")} weeks: no tooth moves a tenth of a millimetre a "
                    + "week any more."
                : "The wire still works at the end of this time.";
        }

        return $"The wire is spent after {Weeks(weeks.P10)} in 10, {Weeks(weeks.P50)} in 50 and {Weeks(weeks.P90)} in "
            + "90 of 100 draws.";
    }

    /// <summary>What the reader must know before acting on it.</summary>
    internal static IEnumerable<string> ForecastCautions(ForecastAnswer answer)
    {
        if (answer.Law == LawTaken.FirstForWantOfWhole)
            yield return Cautions.NoWholeLaw;
        if (answer.Law != LawTaken.Whole && CaseWords.Alloy(answer.Case)?.InitialModulusOnly == true)
            yield return Cautions.InitialModulus;
        foreach (string sentence in ArchReport.Absent(answer.Case))
            yield return sentence;
        yield return Cautions.Forecast(answer.Case);
        yield return Cautions.Decision;
    }

    private static string Rate(ForecastAnswer answer)
    {
        double spread = answer.Request.Rate.LogSpread;
        string low = Plain(answer.Request.Rate.At(-1.28), "0.0");
        string high = Plain(answer.Request.Rate.At(1.28), "0.0");
        string rate = $"Rate of movement {Plain(answer.Request.Rate.Median, "0.00")} of the mean person's "
            + $"({low} to {high} in 80 of 100)";
        string from = answer.IsLearnt ? ", learnt from where the teeth were found." : ", as of people in general.";
        return spread > 0 ? rate + from : rate + ".";
    }

    private static string Stopped(ForecastStop stop, ToothWords words)
    {
        string at = stop.Tooth is { } tooth ? $" at {words.Name(words.Case.Teeth.IndexOf(tooth))}" : "";
        string when = stop.Day > 0 ? $"The forecast ends after {Plain(stop.Day / 7, "0.0")} weeks" : "No forecast";
        return $"{when}{at}: {words.Named(stop.Reason)}";
    }

    private static Table ByWeek(ForecastAnswer answer, ToothWords words, ForceUnit unit)
    {
        bool ranges = answer.Drawn is not null;
        Table table = Layout.Table(
            ("week", true), (ranges ? "irregularity\nmm (10 to 90 of 100)" : "irregularity\nmm", true),
            (ranges ? "activation left\n% (10 to 90 of 100)" : "activation left\n%", true),
            ($"largest force\n{unit.Symbol}", true), ("at", false), ("fastest", false), ("", false));
        for (int week = 0; week <= answer.Weeks; week++)
        {
            ForecastDay day = answer.At(week);
            int heaviest = MostOf(day, tooth => tooth.Clinical.Force);
            int fastest = MostOf(day, tooth => tooth.Movement.Speed);
            table.AddRow(
                new Text(Layout.Whole(week)),
                new Text(answer.Irregularity(week) is { } mm ? Range(mm, ranges, 1, "0.0") : "not known"),
                new Text(Range(answer.ActivationLeft(week), ranges, 100, "0")),
                new Text(unit.Figure(day.Teeth[heaviest].Clinical.Force)),
                new Text(words.Number(heaviest)),
                new Text(words.Number(fastest)),
                new Text(MovementWords.Of(day.Teeth[fastest].Movement.Kind)));
        }

        return table;
    }

    private static Table ByTooth(ForecastAnswer answer, ToothWords words, ForceUnit unit)
    {
        Table table = Layout.Table(
            (words.Heading, false), ("labial\nmm", true), ("occlusal\nmm", true), ("mesial\nmm", true),
            ("rotation\ndegrees", true), ("tip\ndegrees", true), ("torque\ndegrees", true),
            ($"force now\n{unit.Symbol}", true), ("M/F\nmm", true), ("now", false));
        for (int i = 0; i < answer.Request.Teeth.Length; i++)
        {
            ClinicalOffset from = answer.Offset(0, i);
            ClinicalOffset to = answer.Offset(answer.Weeks, i);
            ToothDay now = answer.At(0).Teeth[i];
            table.AddRow(
                new Text(words.Number(i)), Moved(to.Labial - from.Labial), Moved(to.Occlusal - from.Occlusal),
                Moved(to.Mesial - from.Mesial), Turned(to.Rotation - from.Rotation), Turned(to.Tip - from.Tip),
                Turned(to.Torque - from.Torque), new Text(unit.Figure(now.Clinical.Force)),
                new Text(now.Movement.MomentToForce is double ratio ? Signed(ratio, "0") : ""),
                new Text(MovementWords.Of(now.Movement.Kind)));
        }

        return table;
    }

    private static int MostOf(ForecastDay day, Func<ToothDay, double> figure) =>
        Enumerable.Range(0, day.Teeth.Length).MaxBy(i => figure(day.Teeth[i]));

    private static string Range(Percentiles range, bool ranges, double scale, string format) => ranges
        ? $"{Plain(scale * range.P50, format)} ({Plain(scale * range.P10, format)} to "
            + $"{Plain(scale * range.P90, format)})"
        : Plain(scale * range.P50, format);

    private static string Weeks(double weeks) =>
        double.IsFinite(weeks) ? $"{Plain(weeks, "0.#")} weeks" : "more than the time asked";

    private static Text Moved(double millimetres) => new(Signed(millimetres, "0.0"));

    private static Text Turned(double radians) => new(Signed(Angle.ToDegrees(radians), "0"));

    private static string Signed(double value, string format)
    {
        string text = value.ToString($"+{format};−{format};0", CultureInfo.InvariantCulture);
        return text.Trim('+', '−', '0', '.').Length == 0 ? "0" : text;
    }

    private static string Plain(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
