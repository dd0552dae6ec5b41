using System.Text;
using Archwright.Practice.Advice;
using Archwright.Web.Words;

namespace Archwright.Web.Drawing;

/// <summary>A line of a chart's scale.</summary>
/// <param name="At">Where [px].</param>
/// <param name="Words">What stands there.</param>
public sealed record ScaleLine(double At, string Words);

/// <summary>Irregularity over the weeks: what was seen, and the range that is expected from the last visit on, as paths
/// for SVG.</summary>
public sealed record CourseChart
{
    /// <summary>Across [px].</summary>
    public const double Width = 560;

    /// <summary>Down [px].</summary>
    public const double Height = 260;

    private const double Left = 44;
    private const double Right = 16;
    private const double Top = 14;
    private const double Bottom = 34;

    /// <summary>Line through what was seen.</summary>
    public required string Seen { get; init; }

    /// <summary>Points that were seen.</summary>
    public required IReadOnlyList<ScenePoint> Dots { get; init; }

    /// <summary>The range that is expected; empty when none is known.</summary>
    public required string Band { get; init; }

    /// <summary>Its middle.</summary>
    public required string Median { get; init; }

    /// <summary>Scale of millimetres.</summary>
    public required IReadOnlyList<ScaleLine> Across { get; init; }

    /// <summary>Scale of weeks.</summary>
    public required IReadOnlyList<ScaleLine> Down { get; init; }

    /// <summary>Draws a course.</summary>
    /// <param name="seen">Week since bonding, and irregularity [mm].</param>
    /// <param name="expected">What is expected; null when not computed.</param>
    /// <param name="from">Week since bonding at which it begins.</param>
    public static CourseChart Draw(
        IReadOnlyList<(double Week, double Mm)> seen, Outlook? expected, double from)
    {
        (double Week, double P10, double P50, double P90)[] band =
        [
            .. (expected?.Weeks ?? []).Where(week => week.Irregularity is not null).Select(week => (
                from + week.Week, week.Irregularity!.Value.P10, week.Irregularity.Value.P50,
                week.Irregularity.Value.P90)),
        ];
        double weeks = Math.Max(8, seen.Select(one => one.Week).Concat(band.Select(one => one.Week)).Max());
        double most = Math.Max(2, Math.Ceiling(seen.Select(one => one.Mm).Concat(band.Select(one => one.P90)).Max()));
        double X(double week) => Left + week / weeks * (Width - Left - Right);
        double Y(double mm) => Height - Bottom - mm / most * (Height - Top - Bottom);

        return new CourseChart
        {
            Dots = [.. seen.Select(one => new ScenePoint(X(one.Week), Y(one.Mm)))],
            Seen = Path(seen.Select(one => new ScenePoint(X(one.Week), Y(one.Mm)))),
            Band = Path(band.Select(one => new ScenePoint(X(one.Week), Y(one.P90)))
                .Concat(band.Reverse().Select(one => new ScenePoint(X(one.Week), Y(one.P10))))),
            Median = Path(band.Select(one => new ScenePoint(X(one.Week), Y(one.P50)))),
            Across = [.. Steps(most).Select(mm => new ScaleLine(Y(mm), Figures.Plain(mm)))],
            Down = [.. Steps(weeks).Select(week => new ScaleLine(X(week), Figures.Plain(week)))],
        };
    }

    private static IEnumerable<double> Steps(double most)
    {
        double step = most switch { <= 4 => 1, <= 10 => 2, <= 26 => 4, <= 60 => 10, _ => 20 };
        for (double at = 0; at <= most + 1e-9; at += step)
            yield return at;
    }

    private static string Path(IEnumerable<ScenePoint> points)
    {
        var text = new StringBuilder();
        foreach (ScenePoint point in points)
        {
            text.Append(text.Length == 0 ? 'M' : 'L')
                .Append(Figures.Coordinate(point.X)).Append(' ').Append(Figures.Coordinate(point.Y));
        }

        return text.ToString();
    }
}
