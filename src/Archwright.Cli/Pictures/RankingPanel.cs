using System.Collections.Immutable;
using Archwright.Cli.Units;

namespace Archwright.Cli.Pictures;

/// <summary>One line of the ranking.</summary>
/// <param name="Wire">Id of the wire.</param>
/// <param name="Verdict">In two or three words.</param>
/// <param name="IsGood">Within limits.</param>
/// <param name="Force">Largest force [N]; NaN when the wire is not in.</param>
/// <param name="Tooth">The tooth that bears it.</param>
/// <param name="Note">What else there is to say, short.</param>
/// <param name="Working">Largest force when working [N]; NaN where it is not known.</param>
internal sealed record RankedLine(
    string Wire, string Verdict, bool IsGood, double Force, string Tooth, string Note, double Working = double.NaN);

/// <summary>The wires in rank order: largest force as a bar, verdict in words.</summary>
internal sealed class RankingPanel(
    ImmutableArray<RankedLine> lines, string rest, ForceUnit unit, LastingChart? lasting = null)
{
    private const double LineHeight = 25;
    private const double HeadingHeight = 62;

    /// <summary>Height of the panel [px].</summary>
    public double Height => HeadingHeight + lines.Length * LineHeight + (rest.Length > 0 ? 34 : 14)
        + (lasting is null ? 0 : LastingChart.Height);

    /// <summary>Draws it.</summary>
    public void Draw(Canvas canvas, Box box)
    {
        using IDisposable part = canvas.Part("ranking", "Wires in rank order");
        canvas.Fill(box, Colours.Panel, new Pen(Colours.Hair, 1));
        canvas.Text(new Spot(box.Left + 16, box.Top + 28), "Wires on this arch, the best first",
            new TextStyle(17, Colours.Text, Bold: true));
        double bars = box.Left + 360;
        double length = box.Width - 360 - 500;
        var small = new TextStyle(13, Colours.Quiet);
        string working = lines.Any(line => !double.IsNaN(line.Working)) ? "; dark: when working" : "";
        canvas.Text(
            new Spot(bars, box.Top + 52), $"largest force on a tooth, on engagement [{unit.Symbol}]{working}", small);
        canvas.Text(new Spot(box.Right - 300, box.Top + 52), "teeth above a ceiling", small);

        double most = lines.Where(line => !double.IsNaN(line.Force)).Select(line => line.Force).DefaultIfEmpty(1).Max();
        for (int i = 0; i < lines.Length; i++)
            DrawLine(canvas, lines[i], i, box, bars, length / Math.Max(most, 1e-9));

        double bottom = box.Bottom - (lasting is null ? 0 : LastingChart.Height);
        if (rest.Length > 0)
            canvas.Text(new Spot(box.Left + 16, bottom - 12), rest, small with { Size = 14 });
        lasting?.Draw(canvas, box with { Top = bottom, Height = LastingChart.Height });
    }

    private void DrawLine(Canvas canvas, RankedLine line, int i, Box box, double bars, double perNewton)
    {
        double y = box.Top + HeadingHeight + (i + 0.72) * LineHeight;
        var style = new TextStyle(15, Colours.Text);
        canvas.Text(new Spot(box.Left + 40, y), (i + 1).ToString(), style with { Anchor = Anchor.End });
        canvas.Text(new Spot(box.Left + 54, y), line.Wire, style with { Bold = true });
        canvas.Text(new Spot(box.Left + 214, y), line.Verdict,
            style with { Ink = line.IsGood ? Colours.Text : Colours.Heavy });
        if (double.IsNaN(line.Force))
        {
            canvas.Text(new Spot(bars, y), line.Note, style with { Ink = Colours.Quiet });
            return;
        }

        double length = Math.Max(1, line.Force * perNewton);
        canvas.Fill(new Box(bars, y - 13, length, 16), line.IsGood ? Colours.Force : Colours.Heavy);
        if (!double.IsNaN(line.Working))
            canvas.Fill(new Box(bars, y - 8, Math.Max(1, line.Working * perNewton), 6), Colours.Text);
        canvas.Text(new Spot(bars + Math.Max(length, Reach(line, perNewton)) + 8, y), Figures(line), style);
        canvas.Text(new Spot(box.Right - 300, y), line.Note, style with { Ink = Colours.Quiet });
    }

    private static double Reach(RankedLine line, double perNewton) =>
        double.IsNaN(line.Working) ? 0 : line.Working * perNewton;

    private string Figures(RankedLine line) => $"{unit.Figure(line.Force)} on {line.Tooth}"
        + (double.IsNaN(line.Working) ? "" : $", working {unit.Figure(line.Working)}");
}
