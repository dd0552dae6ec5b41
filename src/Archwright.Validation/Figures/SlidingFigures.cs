using Archwright.Validation.Record;
using Archwright.Validation.SetUps;

namespace Archwright.Validation.Figures;

/// <summary>Pictures of resistance to sliding; <c>docs/theory/sliding.md</c> reads them.</summary>
internal static class SlidingFigures
{
    private static readonly double[] Angles = [.. Enumerable.Range(0, 31).Select(i => i / 3.0)];

    public static RecordFigure Resistance() => new()
    {
        Name = "sliding",
        Title = "Resistance to sliding against the tip of the bracket, 16 mil in 22 mil, in saliva",
        Caption = "Bracket 140 mil wide, 8 mm to the neighbours. Full lines: a steel tie that presses with 2.94 N. "
            + "Broken lines: a passive lid. Below the critical angle only the tie counts, and steel slides best; "
            + "beyond it the wire's own bending presses the edges, and the soft wire slides best. To the first order "
            + "in the coefficient.",
        Across = "tip of the bracket against the wire [degrees]",
        Up = "resistance [N]",
        Lines =
        [
            Line("steel, tied", "ss-016", 2.94), Line("beta-titanium, tied", "bti-016", 2.94),
            Line("superelastic NiTi, tied", "niti-016", 2.94),
            Line("steel, passive lid", "ss-016", 0), Line("beta-titanium, passive lid", "bti-016", 0),
            Line("superelastic NiTi, passive lid", "niti-016", 0),
        ],
        Marks = [],
    };

    private static FigureLine Line(string name, string wire, double tie)
    {
        var given = new SetUp(
            "sliding", FormattableString.Invariant(
                $"wire={wire}; slot=22; bracket=140; span=8; tie={tie}; state=wet; angle=0"));
        double critical = Dentition.Units.Angle.ToDegrees(SlidingRig.Critical(given));
        return new FigureLine(
            name, [.. Angles.Select(angle => (angle, SlidingRig.At(given, angle - critical)))], IsDashed: tie == 0);
    }
}
