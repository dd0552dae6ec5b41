using Archwright.Mechanics.Bench;
using Archwright.Validation.Record;
using Archwright.Validation.SetUps;

namespace Archwright.Validation.Figures;

/// <summary>Pictures of plain beams.</summary>
internal static class BeamFigures
{
    public static RecordFigure Elastica(IReadOnlyList<CheckResult> results)
    {
        (double Load, LoadedTip Tip)[] path =
            [.. Enumerable.Range(0, 41).Select(i => i / 4.0).Select(load => (load, LargeBending.Elastica(load)))];
        CheckResult[] ours = [.. results.Where(result => result.Check.Compute == "elastica")];
        FigureMark Marks(string of) => Published.Marks(
            "published: " + of, ours.Where(result => result.Check.With.Text("of") == of), with => with.Number("load"));
        return new RecordFigure
        {
            Name = "elastica",
            Title = "A cantilever far beyond small bending",
            Caption = "Deflection and shortening of the tip as shares of the length, against the load; marks: "
                + "Mattiasson 1981, and the elliptic integrals of Bisshopp and Drucker 1945.",
            Across = "P L²/(E I)",
            Up = "share of the length",
            Lines =
            [
                new FigureLine("deflection", [.. path.Select(at => (at.Load, at.Tip.Position.Y / 10))]),
                new FigureLine("shortening", [.. path.Select(at => (at.Load, 1 - at.Tip.Position.X / 10))]),
            ],
            Marks = [Marks("deflection"), Marks("shortening")],
        };
    }
}
