using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Bench;
using ScottPlot;

namespace Archwright.Cli.Pictures;

/// <summary>The picture of <c>bend</c>: force against deflection, one curve a wire, loading drawn full and what comes
/// after it dashed.</summary>
internal static class BendPicture
{
    private const double Height = 760;

    private static readonly Ink[] Inks =
        [Colours.Wire, Colours.Heavy, Colours.Force, Colours.Occlusal, Colours.Quiet, Colours.CrownEdge];

    /// <summary>Draws it into a file.</summary>
    public static void Write(
        string path, IReadOnlyList<(BendCase Case, BendResult Result)> bends, ForceUnit unit)
    {
        string title = bends.Count == 1
            ? "Three-point bend: " + BendReport.Title(bends[0].Case)
            : $"Three-point bends of {bends.Count} wires";
        string setUp = BendReport.SetUp(bends[0].Case);
        PictureFile.Write(path, Height, title, setUp, canvas =>
        {
            canvas.Fill(new Box(0, 0, canvas.Width, canvas.Height), Colours.Paper);
            canvas.Text(new Spot(28, 44), title, new TextStyle(27, Colours.Text, Bold: true));
            canvas.Text(new Spot(28, 72), setUp + "; loading full, unloading dashed",
                new TextStyle(16, Colours.Quiet));
            using Plot chart = Chart(bends, unit);
            canvas.Chart(chart, new Box(28, 92, Sheet.Width - 56, Height - 120));
        });
    }

    private static Plot Chart(IReadOnlyList<(BendCase Case, BendResult Result)> bends, ForceUnit unit)
    {
        Typeface.UseInCharts();
        var chart = new Plot();
        for (int i = 0; i < bends.Count; i++)
        {
            (BendCase test, BendResult result) = bends[i];
            BendPoint[] curve = [.. result.Curve];
            int top = Array.FindIndex(curve, point => point.Deflection >= result.Top - 1e-9);
            Line(chart, curve[..(top + 1)], unit, Inks[i], isLoading: true, BendReport.Title(test));
            Line(chart, curve[top..], unit, Inks[i], isLoading: false, "");
        }

        chart.Axes.Left.TickGenerator = ChartStyle.FewTicks(8);
        chart.Axes.Bottom.TickGenerator = ChartStyle.FewTicks(10);
        chart.XLabel("deflection [mm]");
        chart.YLabel($"force of the indenter [{unit.Symbol}]");
        ChartStyle.Apply(chart);
        chart.ShowLegend(Alignment.UpperLeft);
        return chart;
    }

    private static void Line(
        Plot chart, BendPoint[] curve, ForceUnit unit, Ink ink, bool isLoading, string label)
    {
        var line = chart.Add.ScatterLine(
            Array.ConvertAll(curve, point => point.Deflection), Array.ConvertAll(curve, point => unit.Of(point.Force)),
            ScottPlot.Color.FromHex(ink.Hex));
        line.LineWidth = 3;
        line.LinePattern = isLoading ? LinePattern.Solid : LinePattern.Dashed;
        line.LegendText = label;
    }
}
