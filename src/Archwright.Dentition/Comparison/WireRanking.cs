namespace Archwright.Dentition.Comparison;

/// <summary>The order in which compared wires are shown; see <see cref="WireComparison"/> for the rule in
/// words.</summary>
internal static class WireRanking
{
    /// <summary>Best first. A stable sort: equal wires keep their order.</summary>
    public static IReadOnlyList<ComparedWire> InOrder(IEnumerable<ComparedWire> wires) =>
        [.. wires.OrderBy(wire => wire.Verdict).ThenBy(StillAbove).ThenBy(TeethAbove).ThenBy(Excess).ThenBy(Softness)];

    // What a tooth bears for weeks counts before what it bears on the day; where that is not known, the day's.
    private static int StillAbove(ComparedWire wire) => wire.Verdict == WireVerdict.AboveCeiling
        ? wire.Working?.CountAboveCeiling ?? TeethAbove(wire)
        : 0;

    private static int TeethAbove(ComparedWire wire) => wire.Verdict == WireVerdict.AboveCeiling
        ? wire.TeethAboveCeiling.Select(tooth => tooth.Slot).Distinct().Count()
        : 0;

    private static double Excess(ComparedWire wire) => wire.Verdict switch
    {
        WireVerdict.AboveCeiling => wire.LargestShareOfCeiling,
        WireVerdict.BendsForGood => wire.MaxStrain / wire.StrainLimit,
        _ => 0,
    };

    // Stiffest first: minus the geometric mean of the two bending stiffnesses. A square and a round wire compare as
    // they feel, and a flat one counts for both its sides.
    private static double Softness(ComparedWire wire)
    {
        double young = wire.Wire.Wire.Alloy.Young;
        return -young * Math.Sqrt(wire.Wire.Section.BendingOverThickness * wire.Wire.Section.BendingOverWidth);
    }
}
