using System.Globalization;
using System.Security;
using System.Text;
using ScottPlot;

namespace Archwright.Cli.Pictures;

/// <summary>Draws as SVG: text stays text, parts carry their names.</summary>
internal sealed class SvgCanvas : Canvas
{
    private readonly StringBuilder _body = new();
    private readonly string _title;
    private readonly string _description;
    private string _indent = "  ";

    public SvgCanvas(double width, double height, string title, string description)
        : base(width, height)
    {
        _title = title;
        _description = description;
    }

    public override IDisposable Part(string id, string title)
    {
        Add($"<g id=\"{Escaped(id)}\">");
        _indent += "  ";
        Add($"<title>{Escaped(title)}</title>");
        return new End(this);
    }

    public override void Line(ReadOnlySpan<Spot> spots, Pen pen) =>
        Add($"<polyline points=\"{Points(spots)}\" fill=\"none\"{Stroke(pen)}/>");

    public override void Shape(ReadOnlySpan<Spot> corners, Ink? fill, Pen? edge, double opacity = 1)
    {
        string paint = fill is { } ink ? ink.Hex : "none";
        string veil = opacity < 1 ? $" opacity=\"{Number(opacity)}\"" : "";
        Add($"<polygon points=\"{Points(corners)}\" fill=\"{paint}\"{Stroke(edge)}{veil}/>");
    }

    public override void Disc(Spot middle, double radius, Ink? fill, Pen? edge)
    {
        string paint = fill is { } ink ? ink.Hex : "none";
        Add($"<circle cx=\"{Number(middle.X)}\" cy=\"{Number(middle.Y)}\" r=\"{Number(radius)}\" fill=\"{paint}\""
            + $"{Stroke(edge)}/>");
    }

    public override void Text(Spot spot, string text, TextStyle style)
    {
        string weight = style.Bold ? " font-weight=\"700\"" : "";
        string anchor = style.Anchor switch
        {
            Anchor.Middle => " text-anchor=\"middle\"",
            Anchor.End => " text-anchor=\"end\"",
            _ => "",
        };
        string halo = style.Halo
            ? $" stroke=\"{Colours.Paper.Hex}\" stroke-width=\"3\" stroke-linejoin=\"round\" paint-order=\"stroke\""
            : "";
        Add($"<text x=\"{Number(spot.X)}\" y=\"{Number(spot.Y)}\" font-size=\"{Number(style.Size)}\""
            + $" fill=\"{style.Ink.Hex}\"{weight}{anchor}{halo}>{Escaped(text)}</text>");
    }

    public override void Chart(Plot chart, Box box)
    {
        Add($"<svg x=\"{Number(box.Left)}\" y=\"{Number(box.Top)}\" width=\"{(int)box.Width}\""
            + $" height=\"{(int)box.Height}\">");
        _body.Append(ChartSvg.Inside(chart, (int)box.Width, (int)box.Height)).Append('\n');
        Add("</svg>");
    }

    public override void Save(Stream stream)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        writer.WriteLine($"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{Number(Width)}\" "
            + $"height=\"{Number(Height)}\" viewBox=\"0 0 {Number(Width)} {Number(Height)}\" role=\"img\" "
            + $"aria-labelledby=\"picture-title picture-description\" font-family=\"{Typeface.FamilyInSvg}\">");
        writer.WriteLine($"  <title id=\"picture-title\">{Escaped(_title)}</title>");
        writer.WriteLine($"  <desc id=\"picture-description\">{Escaped(_description)}</desc>");
        writer.Write(_body);
        writer.WriteLine("</svg>");
    }

    private static string Stroke(Pen? pen)
    {
        if (pen is null)
            return "";

        string dash = pen.Dash > 0 ? $" stroke-dasharray=\"{Number(pen.Dash)}\"" : "";
        return $" stroke=\"{pen.Ink.Hex}\" stroke-width=\"{Number(pen.Width)}\" stroke-linejoin=\"round\""
            + $" stroke-linecap=\"round\"{dash}";
    }

    private static string Points(ReadOnlySpan<Spot> spots)
    {
        var text = new StringBuilder();
        foreach (Spot spot in spots)
        {
            if (text.Length > 0)
                text.Append(' ');
            text.Append(Number(spot.X)).Append(',').Append(Number(spot.Y));
        }

        return text.ToString();
    }

    private static string Number(double value) =>
        Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    private static string Escaped(string text) => SecurityElement.Escape(text);

    private void Add(string element) => _body.Append(_indent).Append(element).Append('\n');

    private sealed class End(SvgCanvas canvas) : IDisposable
    {
        public void Dispose()
        {
            canvas._indent = canvas._indent[2..];
            canvas.Add("</g>");
        }
    }
}
