using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Sections;
using Archwright.Validation.Record;
using Archwright.Validation.SetUps;

namespace Archwright.Validation.Figures;

/// <summary>Pictures of wires in brackets.</summary>
internal static class BracketFigures
{
    private const double MostTwist = 30;

    public static RecordFigure Geometries(IReadOnlyList<CheckResult> results)
    {
        double[] ratios = [.. Enumerable.Range(-20, 41).Select(i => i / 20.0)];
        return new RecordFigure
        {
            Name = "geometries",
            Title = "Two brackets on a straight wire: the ratio of their moments",
            Caption = "Engaged at angles of 0.001; marks: the six classes of Burstone and Koenig 1974.",
            Across = "θ_A / θ_B",
            Up = "M_A / M_B",
            Lines = [new FigureLine("computed", [.. ratios.Select(ratio => (ratio, TwoBrackets.Moments(ratio)))])],
            Marks =
            [
                Published.Marks(
                    "published", results.Where(result => result.Check.Compute == "geometry-moments"),
                    with => with.Number("ratio")),
            ],
        };
    }

    public static RecordFigure Torque(IReadOnlyList<CheckResult> results)
    {
        SetUp compliant = Published.Check(results, "torque-compliant-bti-17x25").With;
        SetUp rigid = Published.Check(results, "torque-rigid-bti-17x25").With;
        FigureLine Line(string name, SetUp with, string wire, bool isDashed)
        {
            WireCatalogue.Default.TryFind(wire, out CatalogueWire? found);
            return new FigureLine(
                name, TorqueRig.Readings(with, found!.Wire, twist => twist >= MostTwist, torque => torque > 45).Points,
                isDashed);
        }

        return new RecordFigure
        {
            Name = "torque",
            Title = "Torque of 17 × 25 mil in 18 mil slots",
            Caption = "Broken lines: rigid brackets, which overshoot what rigs measure. Full lines: brackets that give "
                + "way by 0.555° for each N·mm, fitted to the upper mark (steel) alone; the lower mark (beta-titanium) "
                + "is then predicted. Marks: Sifakakis et al. 2014.",
            Across = "twist of the incisor [degrees]",
            Up = "torque [N·mm]",
            Lines =
            [
                Line("steel", compliant, "ss-017x025", isDashed: false),
                Line("beta-titanium", compliant, "bti-017x025", isDashed: false),
                Line("steel, rigid", rigid, "ss-017x025", isDashed: true),
                Line("beta-titanium, rigid", rigid, "bti-017x025", isDashed: true),
            ],
            Marks =
            [
                new FigureMark("measured", [
                    (15, Published.Check(results, "torque-rigid-ss-17x25").Published),
                    (15, Published.Check(results, "torque-rigid-bti-17x25").Published)]),
            ],
        };
    }

    public static RecordFigure Play(IReadOnlyList<CheckResult> results)
    {
        string[] sizes = ["18x25", "19x25", "21x25"];
        double[] slots = [.. Enumerable.Range(0, 17).Select(i => 0.545 + i * 0.005)];
        (double, Interval) Mark(string id, double slot) => (slot, Published.Check(results, id).Published);
        return new RecordFigure
        {
            Name = "play",
            Title = "Torque play against the height of a 22 mil slot",
            Caption = "Edges rounded by 2 mil. The stated slot is 0.559 mm high; measured ones were 0.563 to 0.613 mm. "
                + "Marks stand at 0.588 mm, the middle of the measured: engagement angles of a review, 18, 14 and 6°, "
                + "for 18, 19 and 21 × 25 mil.",
            Across = "slot height [mm]",
            Up = "play, one way [degrees]",
            Lines = [.. sizes.Select(size => Line(size, slots))],
            Marks =
            [
                new FigureMark("published", [
                    Mark("play-review-18x25-in-22", 0.588), Mark("play-review-passive", 0.588),
                    Mark("play-review-21x25", 0.588)]),
            ],
        };
    }

    private static FigureLine Line(string size, double[] slots)
    {
        string[] sides = size.Split('x');
        Section section = SectionFigures.Of(new SetUp("play", $"thickness={sides[0]}; width={sides[1]}; radius=2"));
        return new FigureLine(
            $"{sides[0]} × {sides[1]} mil",
            [.. slots.Where(slot => slot > section.Thickness)
                .Select(slot => (slot, Angle.ToDegrees(SetUps.Play.OfOneSlot(section, slot))))]);
    }
}
