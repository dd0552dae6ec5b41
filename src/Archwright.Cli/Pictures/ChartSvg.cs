using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using ScottPlot;

namespace Archwright.Cli.Pictures;

/// <summary>A chart as a piece of SVG that fits into a larger picture.</summary>
/// <remarks>The drawing library places every letter by itself, which only fits one typeface, ends its lists of numbers
/// with a comma, which the grammar of SVG does not allow, and numbers its clipping paths through the whole run of the
/// program. Here each text is one word with an anchor, and the numbers start anew.</remarks>
internal static partial class ChartSvg
{
    /// <summary>The inside of the chart's SVG element.</summary>
    public static string Inside(Plot chart, int width, int height)
    {
        string xml = chart.GetSvgXml(width, height);
        int start = xml.IndexOf('>', xml.IndexOf("<svg", StringComparison.Ordinal)) + 1;
        int end = xml.LastIndexOf("</svg>", StringComparison.Ordinal);
        return Renumbered(Texts().Replace(xml[start..end], Anchored)).Trim();
    }

    private static string Anchored(Match match)
    {
        string words = WebUtility.HtmlDecode(match.Groups["words"].Value.Trim());
        double size = Number(match.Groups["size"].Value);
        double left = Number(First(match.Groups["x"].Value));
        bool isBold = match.Groups["before"].Value.Contains("bold", StringComparison.Ordinal);
        double wide = Typeface.WidthOf(words, size, isBold);
        (double x, string anchor) = 0 switch
        {
            _ when Math.Abs(left + wide / 2) < Near => (0, " text-anchor=\"middle\""),
            _ when Math.Abs(left + wide) < Near => (0, " text-anchor=\"end\""),
            _ => (left, ""),
        };
        return string.Create(CultureInfo.InvariantCulture,
            $"<text{match.Groups["before"].Value} font-size=\"{size}\"{anchor} x=\"{x:0.##}\" "
            + $"y=\"{Number(First(match.Groups["y"].Value)):0.##}\">{WebUtility.HtmlEncode(words)}</text>");
    }

    /// <summary>Differences below this are roundings of the drawing library [px].</summary>
    private const double Near = 2.5;

    private static string Renumbered(string svg)
    {
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        return Clips().Replace(svg, match =>
        {
            if (!names.TryGetValue(match.Value, out string? name))
                names[match.Value] = name = $"chart-clip-{names.Count + 1}";
            return name;
        });
    }

    private static string First(string list) => list.Split(',')[0];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex("""<text(?<before>[^>]*?) font-size="(?<size>[^"]+)" font-family="[^"]*" """
        + """x="(?<x>[^"]+)" y="(?<y>[^"]+)">(?<words>[^<]*)</text>""")]
    private static partial Regex Texts();

    [GeneratedRegex(@"\bcl_[0-9a-f]+\b")]
    private static partial Regex Clips();
}
