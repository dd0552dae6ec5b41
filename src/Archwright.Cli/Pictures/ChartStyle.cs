using ScottPlot;
using ScottPlot.TickGenerators;

namespace Archwright.Cli.Pictures;

/// <summary>The look of every chart.</summary>
internal static class ChartStyle
{
    /// <summary>Sets fonts, colours and lines.</summary>
    public static void Apply(Plot chart)
    {
        Typeface.UseInCharts();
        chart.Font.Set(Typeface.Family);
        chart.FigureBackground.Color = ScottPlot.Color.FromHex(Colours.Paper.Hex);
        chart.DataBackground.Color = ScottPlot.Color.FromHex(Colours.Paper.Hex);
        chart.Axes.Color(ScottPlot.Color.FromHex(Colours.Text.Hex));
        chart.Grid.MajorLineColor = ScottPlot.Color.FromHex(Colours.Hair.Hex);
        chart.Axes.Right.FrameLineStyle.IsVisible = false;
        chart.Axes.Top.FrameLineStyle.IsVisible = false;
        foreach (IAxis axis in new IAxis[] { chart.Axes.Bottom, chart.Axes.Left })
        {
            axis.TickLabelStyle.FontSize = 14;
            axis.Label.FontSize = 14;
            axis.Label.Bold = false;
        }

        chart.Legend.FontSize = 14;
        chart.Legend.FontName = Typeface.Family;
        chart.Legend.OutlineStyle.IsVisible = false;
        chart.Legend.ShadowColor = Colors.Transparent;
        chart.Legend.BackgroundColor = ScottPlot.Color.FromHex(Colours.Paper.Hex);
    }

    /// <summary>About so many ticks, with plain figures and none between.</summary>
    public static NumericAutomatic FewTicks(int count) => new()
    {
        LabelFormatter = Marks.Plain, TargetTickCount = count, MinorTickGenerator = new NoMinorTicks(),
    };

    private sealed class NoMinorTicks : IMinorTickGenerator
    {
        public IEnumerable<double> GetMinorTicks(double[] majorTicks, CoordinateRange range) => [];
    }
}
