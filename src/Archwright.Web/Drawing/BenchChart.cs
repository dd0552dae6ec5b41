using System.Text;
using Archwright.Practice.Bench;
using Archwright.Web.Words;

namespace Archwright.Web.Drawing;

/// <summary>A curve of a chart of the bench.</summary>
/// <param name="Letter">Which wire: "A".</param>
/// <param name="Tone">Its colour, counted from 0.</param>
/// <param name="There">Path there.</param>
/// <param name="Back">Path back; empty where there is none.</param>
/// <param name="Marks">Path of its marks, one shape a wire, so that nothing hangs on colour.</param>
/// <param name="LetterAt">Where its letter stands.</param>
public sealed record BenchLine(
    string Letter, int Tone, string There, string Back, string Marks, ScenePoint LetterAt);

/// <summary>Curves of several wires over each other, as paths for SVG. Full lines there, broken lines back.</summary>
public sealed record BenchChart
{
    /// <summary>Across [px].</summary>
    public const double Width = 560;

    /// <summary>Down [px].</summary>
    public const double Height = 360;

    /// <summary>Edges of the field in which curves are drawn [px].</summary>
    public const double Left = 58, Right = Width - 34, Top = 26, Bottom = Height - 46;

    // Less than this on any scale is rounding of nought: the scale then goes to 1.
    private const double NextToNothing = 1e-3;

    private const double LetterGap = 17;
    private const double MarkSize = 4.5;
    private const int Marked = 4;

    /// <summary>The curves.</summary>
    public required IReadOnlyList<BenchLine> Lines { get; init; }

    /// <summary>Scale of the answer.</summary>
    public required IReadOnlyList<ScaleLine> Across { get; init; }

    /// <summary>Scale of what is done to the wire.</summary>
    public required IReadOnlyList<ScaleLine> Down { get; init; }

    /// <summary>Draws curves.</summary>
    /// <param name="curves">Letter, colour and curve of each; those that could not be computed are left out.</param>
    /// <param name="shown">From the curve's own unit to the one shown.</param>
    public static BenchChart Draw(
        IReadOnlyList<(string Letter, int Tone, BenchCurve Curve)> curves, Func<double, double>? shown = null)
    {
        shown ??= value => value;
        (string Letter, int Tone, BenchCurve Curve)[] there = [.. curves.Where(one => one.Curve.IsThere)];
        double mostX = there.SelectMany(one => one.Curve.There).Select(point => point.X).Append(1e-6).Max();
        double mostY = there.SelectMany(one => one.Curve.There).Select(point => shown(point.Y)).Append(0).Max();
        mostY = mostY < NextToNothing ? 1 : mostY;
        (double stepX, _) = Scale(mostX);
        (double stepY, double endY) = Scale(mostY);
        ScenePoint At(BenchPoint point) => new(
            Left + point.X / mostX * (Right - Left), Bottom - shown(point.Y) / endY * (Bottom - Top));

        double[] letters = Spread([.. there.Select(one => At(one.Curve.There[^1]).Y)]);
        return new BenchChart
        {
            Lines =
            [
                .. there.Select((one, i) => new BenchLine(
                    one.Letter, one.Tone, Path(one.Curve.There.Select(At)), Path(one.Curve.Back.Select(At)),
                    Marks(one.Tone, one.Curve, At), new ScenePoint(Right + 9, letters[i]))),
            ],
            Across = [.. Steps(stepY, endY).Select(y => new ScaleLine(
                Bottom - y / endY * (Bottom - Top), Figures.Plain(y)))],
            Down = [.. Steps(stepX, mostX).Select(x => new ScaleLine(
                Left + x / mostX * (Right - Left), Figures.Plain(x)))],
        };
    }

    /// <summary>The mark of a wire alone, for the list of wires.</summary>
    /// <param name="tone">Its colour, counted from 0.</param>
    /// <param name="x">Where [px].</param>
    /// <param name="y">Where [px].</param>
    public static string Mark(int tone, double x, double y)
    {
        string s = Figures.Coordinate(MarkSize);
        string d = Figures.Coordinate(2 * MarkSize);
        return tone switch
        {
            0 => $"{Move(x - MarkSize, y)}a{s} {s} 0 1 0 {d} 0a{s} {s} 0 1 0 -{d} 0Z", // a disc
            1 => $"{Move(x - MarkSize, y - MarkSize)}h{d}v{d}h-{d}Z", // a square
            2 => $"{Move(x, y - MarkSize - 1)}l{s} {d}h-{d}Z", // a triangle
            _ => $"{Move(x, y - MarkSize - 1)}l{s} {s}l-{s} {s}l-{s} -{s}Z", // a lozenge
        };
    }

    // A few marks on each way, at places that differ from wire to wire.
    private static string Marks(int tone, BenchCurve curve, Func<BenchPoint, ScenePoint> at)
    {
        var text = new StringBuilder();
        foreach (IReadOnlyList<BenchPoint> way in new[] { curve.There, curve.Back })
        {
            for (int i = 0; i < Marked && way.Count > Marked; i++)
            {
                ScenePoint point = at(way[(int)((i + 0.35 + 0.2 * tone) * (way.Count - 1) / Marked)]);
                text.Append(Mark(tone, point.X, point.Y));
            }
        }

        return text.ToString();
    }

    // Letters beside the ends of their curves, none over another.
    private static double[] Spread(double[] wanted)
    {
        int[] order = [.. Enumerable.Range(0, wanted.Length).OrderBy(i => wanted[i])];
        double[] put = [.. wanted];
        for (int i = 1; i < order.Length; i++)
            put[order[i]] = Math.Max(put[order[i]], put[order[i - 1]] + LetterGap);

        double over = order.Length > 0 ? put[order[^1]] - Bottom : 0;
        for (int i = order.Length - 1; i >= 0 && over > 0; i--)
        {
            double most = i == order.Length - 1 ? Bottom : put[order[i + 1]] - LetterGap;
            put[order[i]] = Math.Min(put[order[i]], most);
        }

        return put;
    }

    // Steps of 1, 2 or 5 of a power of ten, four to eight of them, and the first one at or above the most.
    private static (double Step, double End) Scale(double most)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(most)));
        double share = most / power;
        double step = power * (share <= 1.6 ? 0.2 : share <= 4 ? 0.5 : share <= 8 ? 1 : 2);
        return (step, step * Math.Ceiling(most / step - 1e-9));
    }

    private static IEnumerable<double> Steps(double step, double end)
    {
        for (int i = 0; i * step <= end + 1e-9; i++)
            yield return i * step;
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

    private static string Move(double x, double y) => $"M{Figures.Coordinate(x)} {Figures.Coordinate(y)}";
}
