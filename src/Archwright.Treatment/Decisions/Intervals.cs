using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Policies;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Decisions;

/// <summary>Weeks to the next visit: the practice's interval for the kind of wire, shortened where the wire is spent
/// earlier or the patient is to be seen sooner.</summary>
internal static class Intervals
{
    public static IntervalKind KindOf(CatalogueWire wire) => (wire.InitialModulusOnly, wire.Section.IsRound) switch
    {
        (true, true) => IntervalKind.TransformingRound,
        (true, false) => IntervalKind.TransformingRectangular,
        (false, true) => IntervalKind.OtherRound,
        (false, false) => IntervalKind.OtherRectangular,
    };

    /// <summary>The interval after a wire, or after looking where there is none.</summary>
    public static IntervalWeeks For(WireFigures? wire, bool cautious, VisitPolicy policy)
    {
        PolicyInterval careful = policy.Interval(IntervalKind.Cautious);
        if (wire is null)
            return new IntervalWeeks(careful.Low, careful.Usual, careful.High);

        PolicyInterval usual = policy.Interval(KindOf(wire.Wire));
        if (cautious)
        {
            return new IntervalWeeks(
                Math.Min(careful.Low, usual.Low), Math.Min(careful.Usual, usual.Usual),
                Math.Min(careful.High, usual.High));
        }

        if (wire.Delivery?.SpentInWeeks is not { } spent)
            return new IntervalWeeks(usual.Low, usual.Usual, usual.High);

        int mid = Week(spent.P50, usual.Low, usual.Usual);
        int high = Week(spent.P90, mid, usual.High);
        return new IntervalWeeks(Math.Min(mid, Week(spent.P10, usual.Low, usual.Usual)), mid, high);
    }

    private static int Week(double weeks, int low, int high) =>
        double.IsInfinity(weeks) ? high : (int)Math.Clamp(Math.Ceiling(weeks), low, high);
}
