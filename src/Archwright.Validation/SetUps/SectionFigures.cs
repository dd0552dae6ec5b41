using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Tables;
using Archwright.Mechanics.Sections;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>Constants of cross-sections. Sizes in thousandths of an inch: <c>diameter</c>, or <c>thickness</c>,
/// <c>width</c> and <c>radius</c> of the edges (0 when left out).</summary>
internal static class SectionFigures
{
    /// <summary>Burstone's cross-section number; <c>step</c> is occlusal or labial.</summary>
    public static double CrossSectionNumber(SetUp given)
    {
        Section section = Of(given);
        return WireStiffness.CrossSectionNumber(
            IsLabial(given) ? section.BendingOverWidth : section.BendingOverThickness);
    }

    /// <summary>J/(a b³) of a sharp rectangle with sides a ≥ b, <c>ratio</c> = a/b.</summary>
    public static double TorsionShare(SetUp given) => Section.Rectangular(1, given.Number("ratio")).Torsion
        / given.Number("ratio");

    /// <summary>J [mm⁴].</summary>
    public static double TorsionConstant(SetUp given) => Of(given).Torsion;

    /// <summary>What rounded edges cost, <c>of</c> = area or bending [%].</summary>
    public static double EdgeLoss(SetUp given)
    {
        Section round = Of(given);
        Section sharp = Section.Rectangular(given.Mils("thickness"), given.Mils("width"));
        return 100 * given.Text("of") switch
        {
            "area" => 1 - round.Area / sharp.Area,
            "bending" => 1 - round.BendingOverThickness / sharp.BendingOverThickness,
            string other => throw new TableException($"Rounded edges cost area or bending, not '{other}'."),
        };
    }

    /// <summary>The section of a set-up.</summary>
    public static Section Of(SetUp given) => given.Has("diameter")
        ? Section.Round(given.Mils("diameter"))
        : Section.Rectangular(
            given.Mils("thickness"), given.Mils("width"), given.Has("radius") ? given.Mils("radius") : 0);

    private static bool IsLabial(SetUp given) => given.Has("step") && given.Text("step") switch
    {
        "labial" => true,
        "occlusal" => false,
        string other => throw new TableException($"A step is occlusal or labial, not '{other}'."),
    };
}
