using Archwright.Dentition.Catalogue;
using Archwright.Mechanics.Bench;
using Archwright.Validation.Record;
using Archwright.Validation.SetUps;

namespace Archwright.Validation.Figures;

/// <summary>Pictures of bent wires with memory.</summary>
internal static class BendFigures
{
    private static readonly double[] Degrees = [20, 30, 36, 40];

    public static RecordFigure Kinds(IReadOnlyList<CheckResult> results) => new()
    {
        Name = "bend",
        Title = "Three-point bend after ISO 15841, round 0.016 in, 36 °C",
        Caption = "Up to 3.1 mm and back; the lower part of each loop is the way back, on which a wire works for "
            + "weeks. Bar: unloading force at 2 mm of eight superelastic products, 1.0 to 2.0 N (Bellini et al. 2016).",
        Across = "deflection [mm]",
        Up = "force [N]",
        Lines =
        [
            .. WireCatalogue.Default.Alloys.Where(alloy => alloy.Transformation is not null).Select(alloy => Loop(
                alloy.Title, Bending.Run(alloy.Id + "-016"))),
        ],
        Marks = [new FigureMark("superelastic products", [
            (2, Published.Check(results, "bend-niti-016-at-2").Published)])],
    };

    public static RecordFigure Temperatures() => new()
    {
        Name = "bend-temperature",
        Title = "The same bend of heat-activated NiTi at four temperatures",
        Caption = "Each degree moves both plateaus by 6.5 MPa. Parvizi and Rock 2003 found a highly significant rise "
            + "for each 10 °C between 20 and 40 °C; they printed no force that could be read.",
        Across = "deflection [mm]",
        Up = "force [N]",
        Lines =
        [
            .. Degrees.Select(temperature => Loop(
                $"{temperature:0} °C", Bending.Run("haniti-016", temperature))),
        ],
        Marks = [],
    };

    public static RecordFigure Sizes(IReadOnlyList<CheckResult> results)
    {
        CheckResult[] ours =
        [
            .. results.Where(result => result.Check.Compute == "displaced-tooth"
                && result.Check.With.Text("of") == "intrusive"),
        ];
        return new RecordFigure
        {
            Name = "displaced-tooth",
            Title = "An incisor 1.6 mm extruded: intrusive force of superelastic wires",
            Caption = "Computed in a full arch of average teeth without friction; bars: Seidel et al. 2023, range over "
                + "products. The distances of the brackets of that rig are not known to us. The trend with the size "
                + "holds.",
            Across = "diameter [mil]",
            Up = "force [N]",
            Lines = [new FigureLine("computed", [.. ours.Select(result => (Mils(result), result.Computed))])],
            Marks = [new FigureMark("published", [.. ours.Select(result => (Mils(result), result.Check.Published))])],
        };
    }

    private static double Mils(CheckResult result) =>
        result.Check.With.Wire().Section.Thickness / WireStiffness.BaseDiameter * 4;

    private static FigureLine Loop(string name, BendResult bend) =>
        new(name, [.. bend.Curve.Select(point => (point.Deflection, point.Force))]);
}
