using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Forecasts;
using ScottPlot;

namespace Archwright.Cli.Pictures;

/// <summary>The picture of <c>forecast</c>: irregularity with its band, and force on every tooth over the
/// weeks.</summary>
internal static class ForecastPicture
{
    private const double Height = 1080;
    private const int MostCurves = 6;

    private static readonly Ink[] Curves =
        [Colours.Wire, Colours.Heavy, Colours.Occlusal, Colours.Force, Colours.Mesial, Colours.CrownEdge];

    /// <summary>Draws it into a file.</summary>
    public static void Write(string path, ForecastAnswer answer, ForceUnit unit, ToothNotation notation)
    {
        string title = answer.Case.Title.Length > 0 ? answer.Case.Title : "Case without a title";
        string subtitle = CaseWords.WireAndSlots(answer.Case);
        string spent = ForecastReport.Spent(answer);
        PictureFile.Write(path, Height, title, $"{subtitle}. {spent}", canvas =>
        {
            canvas.Fill(new Box(0, 0, canvas.Width, canvas.Height), Colours.Paper);
            canvas.Text(new Spot(28, 44), title, new TextStyle(27, Colours.Text, Bold: true));
            canvas.Text(new Spot(28, 72), subtitle, new TextStyle(16, Colours.Quiet));
            canvas.Text(new Spot(28, 96), spent, new TextStyle(16, Colours.Text));
            using Plot index = Irregularity(answer);
            canvas.Chart(index, new Box(28, 112, Sheet.Width - 56, 420));
            using Plot forces = Forces(answer, unit, new ToothWords(answer.Case, notation));
            canvas.Chart(forces, new Box(28, 548, Sheet.Width - 56, 440));
            canvas.Text(new Spot(28, 1020), Cautions.Forecast(answer.Case), new TextStyle(14, Colours.Quiet));
            canvas.Text(new Spot(28, 1044), Cautions.Decision, new TextStyle(14, Colours.Quiet));
        });
    }

    private static Plot Irregularity(ForecastAnswer answer)
    {
        Typeface.UseInCharts();
        var chart = new Plot();
        if (answer.Irregularity(0) is null)
        {
            chart.Title("Irregularity is not known: it takes slots on all six front teeth.");
            ChartStyle.Apply(chart);
            return chart;
        }

        double[] weeks = [.. Enumerable.Range(0, answer.Weeks + 1).Select(week => (double)week)];
        var ranges = weeks.Select(week => answer.Irregularity((int)week)!.Value).ToArray();
        if (answer.Drawn is not null)
        {
            var band = chart.Add.FillY(
                weeks, [.. ranges.Select(one => one.P10)], [.. ranges.Select(one => one.P90)]);
            band.FillColor = Hex(Colours.Crown);
            band.LineWidth = 0;
            band.LegendText = "80 of 100 draws";
        }

        var median = chart.Add.ScatterLine(weeks, [.. ranges.Select(one => one.P50)], Hex(Colours.Wire));
        median.LineWidth = 3;
        median.LegendText = answer.Drawn is null ? "at the median rate" : "median";
        Finish(chart, "irregularity of the front teeth [mm]", ranges.Max(one => one.P90));
        return chart;
    }

    private static Plot Forces(ForecastAnswer answer, ForceUnit unit, ToothWords words)
    {
        Typeface.UseInCharts();
        var chart = new Plot();
        ForecastDay[] days = [.. answer.Forecast.Days];
        int[] heaviest =
        [
            .. Enumerable.Range(0, days[0].Teeth.Length)
                .OrderByDescending(i => days.Max(day => day.Teeth[i].Clinical.Force)).Take(MostCurves).Order(),
        ];
        double[] weeks = [.. days.Select(day => day.Day / 7.0)];
        for (int k = 0; k < heaviest.Length; k++)
        {
            int tooth = heaviest[k];
            var curve = chart.Add.ScatterLine(
                weeks, [.. days.Select(day => unit.Of(day.Teeth[tooth].Clinical.Force))], Hex(Curves[k]));
            curve.LineWidth = 2;
            curve.LinePattern = k % 2 == 0 ? LinePattern.Solid : LinePattern.Dashed;
            curve.LegendText = words.Number(tooth);
        }

        Finish(
            chart, $"force on the {heaviest.Length} most loaded teeth [{unit.Symbol}]",
            days.Max(day => day.Teeth.Max(tooth => unit.Of(tooth.Clinical.Force))));
        return chart;
    }

    private static void Finish(Plot chart, string left, double most)
    {
        chart.Axes.Left.TickGenerator = ChartStyle.FewTicks(6);
        chart.Axes.Bottom.TickGenerator = ChartStyle.FewTicks(12);
        chart.XLabel("weeks from today");
        chart.YLabel(left);
        ChartStyle.Apply(chart);
        chart.Axes.SetLimitsY(0, Math.Max(1.05 * most, 0.1));
        chart.ShowLegend(Alignment.UpperRight);
    }

    private static ScottPlot.Color Hex(Ink ink) => ScottPlot.Color.FromHex(ink.Hex);
}
