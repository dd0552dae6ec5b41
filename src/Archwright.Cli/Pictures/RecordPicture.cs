using Archwright.Validation.Figures;
using ScottPlot;

namespace Archwright.Cli.Pictures;

/// <summary>A picture of the published record: computed lines, published marks.</summary>
internal static class RecordPicture
{
    private const double Height = 760;

    private static readonly Ink[] Inks = [Colours.Wire, Colours.Heavy, Colours.Occlusal, Colours.Mesial, Colours.Force];

    /// <summary>Draws it into a file.</summary>
    public static void Write(string path, RecordFigure figure) =>
        PictureFile.Write(path, Height, figure.Title, figure.Caption, canvas =>
        {
            canvas.Fill(new Box(0, 0, canvas.Width, canvas.Height), Colours.Paper);
            canvas.Text(new Spot(28, 44), figure.Title, new TextStyle(27, Colours.Text, Bold: true));
            using Plot chart = Chart(figure);
            canvas.Chart(chart, new Box(28, 64, Sheet.Width - 56, Height - 92));
        });

    private static Plot Chart(RecordFigure figure)
    {
        Typeface.UseInCharts();
        var chart = new Plot();
        foreach (FigureMark mark in figure.Marks)
            AddBars(chart, mark);
        List<string> wires = [];
        foreach (FigureLine line in figure.Lines)
            AddLine(chart, line, InkOf(line, wires));
        foreach (FigureMark mark in figure.Marks)
            AddPoints(chart, mark);
        chart.Axes.Left.TickGenerator = ChartStyle.FewTicks(8);
        chart.Axes.Bottom.TickGenerator = ChartStyle.FewTicks(10);
        chart.XLabel(figure.Across);
        chart.YLabel(figure.Up);
        ChartStyle.Apply(chart);
        chart.ShowLegend(Alignment.UpperLeft);
        return chart;
    }

    // Two set-ups of one wire, "steel" and "steel, rigid", share their ink.
    private static Ink InkOf(FigureLine line, List<string> wires)
    {
        string wire = line.Name.Split(',')[0];
        if (!wires.Contains(wire) || line.IsDots)
            wires.Add(wire);
        return Inks[wires.LastIndexOf(wire) % Inks.Length];
    }

    private static void AddLine(Plot chart, FigureLine line, Ink ink)
    {
        double[] xs = [.. line.Points.Select(point => point.X)];
        double[] ys = [.. line.Points.Select(point => point.Y)];
        ScottPlot.Color colour = ScottPlot.Color.FromHex(ink.Hex);
        if (xs.Length == 0)
            return;

        var drawn = line.IsDots ? chart.Add.ScatterPoints(xs, ys, colour) : chart.Add.ScatterLine(xs, ys, colour);
        drawn.LineWidth = line.IsDots ? 0 : 3;
        drawn.LinePattern = line.IsDashed && !line.IsDots ? LinePattern.Dashed : LinePattern.Solid;
        drawn.MarkerSize = line.IsDots ? 9 : 0;
        drawn.MarkerShape = line.IsDashed ? MarkerShape.FilledDiamond : MarkerShape.FilledCircle;
        drawn.LegendText = line.Name;
    }

    // A published range stands as an upright bar.
    private static void AddBars(Plot chart, FigureMark mark)
    {
        string legend = mark.Name;
        foreach ((double x, Validation.Record.Interval y) in mark.Values.Where(value => !value.Y.IsPoint))
        {
            var bar = chart.Add.Line(x, y.Low, x, y.High);
            bar.LineWidth = 8;
            bar.Color = ScottPlot.Color.FromHex(Colours.SlotInside.Hex);
            bar.MarkerSize = 0;
            bar.LegendText = legend; // once
            legend = "";
        }
    }

    private static void AddPoints(Plot chart, FigureMark mark)
    {
        (double X, Validation.Record.Interval Y)[] points = [.. mark.Values.Where(value => value.Y.IsPoint)];
        if (points.Length == 0)
            return;

        double[] xs = [.. points.Select(point => point.X)];
        double[] ys = [.. points.Select(point => point.Y.Low)];
        var drawn = chart.Add.ScatterPoints(xs, ys, ScottPlot.Color.FromHex(Colours.Text.Hex));
        drawn.MarkerSize = 11;
        drawn.MarkerShape = MarkerShape.OpenCircle;
        drawn.MarkerLineWidth = 2;
        drawn.LegendText = mark.Name;
    }
}
