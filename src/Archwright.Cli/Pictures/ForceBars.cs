using Archwright.Cli.Units;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace Archwright.Cli.Pictures;

/// <summary>The forces on every tooth as bars: labial, occlusal and mesial part side by side.</summary>
internal static class ForceBars
{
    private const double BarWidth = 0.25;

    /// <summary>Draws the chart.</summary>
    public static void Draw(Canvas canvas, ArchPicture picture, Box box)
    {
        using IDisposable part = canvas.Part("forces-per-tooth", "Force on every tooth");
        using Plot chart = Chart(picture);
        canvas.Text(new Spot(box.Left, box.Top + 18), "Force on every tooth",
            new TextStyle(17, Colours.Text, Bold: true));
        Key(canvas, box);
        canvas.Chart(chart, box.Inset(0, 30, 0, 0));
    }

    private static Plot Chart(ArchPicture picture)
    {
        Typeface.UseInCharts();
        var chart = new Plot();
        ForceUnit unit = picture.Unit;
        AddBars(chart, picture, -1, tooth => unit.Of(tooth.Labial), Colours.Labial);
        AddBars(chart, picture, 0, tooth => unit.Of(tooth.Occlusal), Colours.Occlusal);
        AddBars(chart, picture, 1, tooth => unit.Of(tooth.Mesial), Colours.Mesial);
        chart.Add.HorizontalLine(0, 1.2f, ScottPlot.Color.FromHex(Colours.Text.Hex));
        Axes(chart, picture);
        ChartStyle.Apply(chart);
        return chart;
    }

    private static void Key(Canvas canvas, Box box)
    {
        const double Spare = 1.15; // another typeface may be wider
        var style = new TextStyle(14, Colours.Text);
        (string Words, Ink Ink)[] entries =
        [
            ("labial (+ toward lip or cheek)", Colours.Labial), ("occlusal (+ extrudes)", Colours.Occlusal),
            ("mesial (+ toward the midline)", Colours.Mesial),
        ];
        double x = box.Right - entries.Sum(entry => Wide(entry.Words));
        foreach ((string words, Ink ink) in entries)
        {
            canvas.Fill(new Box(x, box.Top + 7, 16, 12), ink);
            canvas.Text(new Spot(x + 22, box.Top + 18), words, style);
            x += Wide(words);
        }

        double Wide(string words) => 22 + Spare * Typeface.WidthOf(words, style.Size, style.Bold) + 14;
    }

    private static void AddBars(
        Plot chart, ArchPicture picture, int place, Func<PictureTooth, double> figure, Ink ink)
    {
        var bars = picture.Teeth.Select((tooth, i) => new Bar
        {
            Position = i + place * BarWidth,
            Value = figure(tooth),
            Size = BarWidth * 0.9,
            FillColor = ScottPlot.Color.FromHex(ink.Hex),
            LineWidth = 0,
            Label = Worth(tooth, figure(tooth)) ? picture.Unit.Figure(figure(tooth) / picture.Unit.Of(1)) : "",
        });
        var plotted = chart.Add.Bars(bars.ToArray());
        plotted.ValueLabelStyle.FontSize = 12;
        plotted.ValueLabelStyle.FontName = Typeface.Family;
        plotted.ValueLabelStyle.ForeColor = ScottPlot.Color.FromHex(Colours.Text.Hex);

        // One figure a tooth, at its longest bar: more would run into each other.
        bool Worth(PictureTooth tooth, double value) =>
            Math.Abs(value) >= 0.06 * picture.Unit.Of(picture.Teeth.Max(Largest))
            && Math.Abs(value) >= picture.Unit.Of(Largest(tooth)) * (1 - 1e-9);
    }

    private static void Axes(Plot chart, ArchPicture picture)
    {
        Tick[] ticks =
        [
            .. picture.Teeth.Select((tooth, i) =>
                new Tick(i, tooth.Label + "\n" + picture.Unit.Figure(tooth.Force.Length)
                    + (tooth.IsAboveCeiling ? " !" : ""))),
        ];
        chart.Axes.Bottom.TickGenerator = new NumericManual(ticks);
        chart.Axes.Bottom.MajorTickStyle.Length = 0;
        double[] figures = [.. picture.Teeth.SelectMany(t => new[] { t.Labial, t.Occlusal, t.Mesial })];
        double low = picture.Unit.Of(Math.Min(0, figures.Min()));
        double high = picture.Unit.Of(Math.Max(0, figures.Max()));
        double room = Math.Max(high - low, picture.Unit.Of(0.01));
        double below = (low < 0 ? 0.14 : 0.03) * room; // room for the figures at the bars
        double above = (high > 0 ? 0.14 : 0.03) * room;
        chart.Axes.SetLimits(-0.6, picture.Teeth.Length - 0.4, low - below, high + above);
        chart.Axes.Left.TickGenerator = ChartStyle.FewTicks(6);
        chart.YLabel($"force on the tooth [{picture.Unit.Symbol}]");
        chart.XLabel($"tooth, and below it the size of the whole force [{picture.Unit.Symbol}]"
            + (picture.Teeth.Any(tooth => tooth.IsAboveCeiling) ? "; ! above the ceiling" : ""));
        chart.Grid.XAxisStyle.IsVisible = false;
    }

    private static double Largest(PictureTooth tooth) =>
        Math.Max(Math.Abs(tooth.Labial), Math.Max(Math.Abs(tooth.Occlusal), Math.Abs(tooth.Mesial)));
}
