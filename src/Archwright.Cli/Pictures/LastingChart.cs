using System.Collections.Immutable;
using Archwright.Cli.Units;
using Archwright.Dentition.Comparison;
using ScottPlot;

namespace Archwright.Cli.Pictures;

/// <summary>How the forces of several wires last as the teeth come in: force against remaining offset, one line a wire
/// with its name at the left, where the wire goes in.</summary>
internal sealed class LastingChart(ImmutableArray<(string Wire, ImmutableArray<RemainingForce> Readings)> wires,
    ForceUnit unit)
{
    private const int MostWires = 6;

    // Told apart in grey and by those who confuse red and green: by marker as well as by colour.
    private static readonly (string Hex, MarkerShape Shape)[] Looks =
    [
        ("#12566b", MarkerShape.FilledCircle), ("#b8400f", MarkerShape.FilledSquare),
        ("#1f6fb2", MarkerShape.FilledTriangleUp), ("#e0a030", MarkerShape.FilledDiamond),
        ("#6d7f8d", MarkerShape.OpenCircle), ("#1d2733", MarkerShape.OpenSquare),
    ];

    /// <summary>Height of the chart [px].</summary>
    public const double Height = 330;

    /// <summary>The chart of those wires that were followed, the first of them; null where none was.</summary>
    public static LastingChart? Of(IEnumerable<ComparedWire> ranked, ForceUnit unit)
    {
        ImmutableArray<(string, ImmutableArray<RemainingForce>)> followed =
        [
            .. ranked.Where(wire => wire.Lasting.Length > 1).Take(MostWires)
                .Select(wire => (wire.Wire.Id, wire.Lasting)),
        ];
        return followed.IsEmpty ? null : new LastingChart(followed, unit);
    }

    /// <summary>Draws it.</summary>
    public void Draw(Canvas canvas, Box box)
    {
        using IDisposable part = canvas.Part("lasting", "How the force lasts as the teeth come in");
        canvas.Text(new Spot(box.Left + 16, box.Top + 18), "How the force lasts as the teeth come in",
            new TextStyle(17, Colours.Text, Bold: true));
        using Plot chart = Chart();
        canvas.Chart(chart, box.Inset(8, 26, 16, 4));
    }

    private Plot Chart()
    {
        Typeface.UseInCharts();
        var chart = new Plot();
        for (int i = 0; i < wires.Length; i++)
        {
            (string wire, ImmutableArray<RemainingForce> readings) = wires[i];
            var line = chart.Add.Scatter(
                readings.Select(one => 100 * (1 - one.OffsetLeft)).ToArray(),
                readings.Select(one => unit.Of(one.Force)).ToArray(), ScottPlot.Color.FromHex(Looks[i].Hex));
            line.LineWidth = 2;
            line.MarkerShape = Looks[i].Shape;
            line.MarkerSize = 9;
            line.LegendText = wire;
        }

        chart.Axes.SetLimitsY(0, 1.08 * wires.Max(wire => wire.Readings.Max(one => unit.Of(one.Force))) + 1e-9);
        chart.Axes.SetLimitsX(-2, 100);
        chart.Axes.Left.TickGenerator = ChartStyle.FewTicks(5);
        chart.Axes.Bottom.TickGenerator = ChartStyle.FewTicks(6);
        chart.XLabel("way that every displaced tooth has come [%]");
        chart.YLabel($"force on the tooth with the most [{unit.Symbol}]");
        ChartStyle.Apply(chart);
        chart.ShowLegend(Alignment.UpperRight);
        return chart;
    }
}
