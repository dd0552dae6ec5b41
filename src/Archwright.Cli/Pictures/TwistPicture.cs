using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Bench;
using ScottPlot;
using Angle = Archwright.Dentition.Units.Angle;

namespace Archwright.Cli.Pictures;

/// <summary>The picture of <c>twist</c>: torque against twist, the play shaded.</summary>
internal static class TwistPicture
{
    private const double Height = 760;

    /// <summary>Stops between two readings.</summary>
    private const int Stops = 24;

    /// <summary>Draws it into a file.</summary>
    public static void Write(string path, TwistCase test, double[] torques, ForceUnit unit)
    {
        string title = "Torque against twist: " + TwistReport.Title(test);
        string description = TwistReport.SetUp(test) + ". " + TwistReport.Play(test);
        PictureFile.Write(path, Height, title, description, canvas =>
        {
            canvas.Fill(new Box(0, 0, canvas.Width, canvas.Height), Colours.Paper);
            canvas.Text(new Spot(28, 44), title, new TextStyle(27, Colours.Text, Bold: true));
            canvas.Text(new Spot(28, 72), TwistReport.SetUp(test) + "; the way back dashed",
                new TextStyle(16, Colours.Quiet));
            canvas.Text(new Spot(28, 96), TwistReport.Play(test), new TextStyle(16, Colours.Text));
            using Plot chart = Chart(test, torques, unit);
            canvas.Chart(chart, new Box(28, 112, Sheet.Width - 56, Height - 140));
        });
    }

    private static Plot Chart(TwistCase test, double[] torques, ForceUnit unit)
    {
        Typeface.UseInCharts();
        var chart = new Plot();
        double play = 2 * Angle.ToDegrees(test.Wire.Section.TorquePlay(test.SlotHeight));
        double[] twists = [.. test.TwistsDegrees];
        if (double.IsFinite(play))
        {
            var shade = chart.Add.HorizontalSpan(
                twists.Min() < 0 ? -play : 0, play, ScottPlot.Color.FromHex(Colours.Crown.Hex));
            shade.LegendText = "play of both slots";
            shade.LineStyle.Width = 0;
        }

        double[] fine = Between(twists);
        double[] torquesBetween = TwistTest.Run(
            test.Wire, test.SlotHeight, test.SlotDepth, test.EdgeGap, [.. fine.Select(Angle.FromDegrees)],
            compliance: Angle.FromDegrees(test.ComplianceDegrees));
        double[] shown = [.. torquesBetween.Select(unit.Of)];
        int top = Stops * TwistReport.Top(test);
        Line(chart, fine[..(top + 1)], shown[..(top + 1)], LinePattern.Solid);
        Line(chart, fine[top..], shown[top..], LinePattern.Dashed);
        var readings = chart.Add.ScatterPoints(
            twists, [.. torques.Select(unit.Of)], ScottPlot.Color.FromHex(Colours.Wire.Hex));
        readings.MarkerSize = 10;
        readings.LegendText = "readings";
        chart.Axes.Left.TickGenerator = ChartStyle.FewTicks(8);
        chart.Axes.Bottom.TickGenerator = ChartStyle.FewTicks(10);
        chart.XLabel("twist of one slot against the other [degrees]");
        chart.YLabel($"torque [{unit.MomentSymbol}]");
        ChartStyle.Apply(chart);
        chart.ShowLegend(Alignment.UpperLeft);
        return chart;
    }

    private static void Line(Plot chart, double[] twists, double[] torques, LinePattern pattern)
    {
        var curve = chart.Add.ScatterLine(twists, torques, ScottPlot.Color.FromHex(Colours.Wire.Hex));
        curve.LineWidth = 3;
        curve.LinePattern = pattern;
    }

    // The same path with more stops, so that the line does not cut the corner where the play ends.
    private static double[] Between(double[] twists)
    {
        return
        [
            twists[0],
            .. twists.Skip(1).SelectMany((next, i) => Enumerable.Range(1, Stops)
                .Select(stop => twists[i] + (next - twists[i]) * stop / Stops)),
        ];
    }
}
