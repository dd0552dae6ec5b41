using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>Resistance to sliding of a wire through a tipped bracket between two neighbours, as the sliding rigs
/// measure it: coefficient × (what the tie presses + what the two edges press).</summary>
/// <remarks>
/// The forces at the edges are those of the engaged wire without friction; friction itself does not act back on them,
/// so this is right to the first order in the coefficient. R. P. Kusy, "Ongoing innovations in biomechanics and
/// materials for the new millennium", Angle Orthod 70 (2000) 366–376: resistance = μ N of ligation + μ Σ N of binding
/// (found). The tie counts once. Two opposite forces N at the ends of a bracket of width W make the moment N W, so
/// Σ N = 2 |M|/W. Keys: <c>wire</c>; <c>slot</c> and <c>bracket</c> (its width) in thousandths of an inch; <c>span</c>
/// from each edge to the neighbour's contact [mm]; <c>angle</c> [degrees], or <c>beyond</c> counted from the critical
/// angle; <c>tie</c> [N]; <c>state</c> = dry or wet; <c>temperature</c> [°C].
/// </remarks>
internal static class SlidingRig
{
    private const double Mouth = 36;

    /// <summary>Resistance [N].</summary>
    public static double Resistance(SetUp given) =>
        Coefficient(given) * (given.Number("tie") + EdgeForces(given, AngleOf(given)));

    /// <summary>The same over that of the other set-up, where <c>other_</c> stands before what differs.</summary>
    public static double Ratio(SetUp given) => Resistance(given) / Resistance(given.Other());

    /// <summary>Angle beyond the critical one at which <c>wire</c> and the other wire resist alike: below it the one
    /// with the lower coefficient slides better, beyond it the softer one [degrees].</summary>
    /// <exception cref="InvalidOperationException">They never do, up to 12°.</exception>
    public static double Crossing(SetUp given)
    {
        const double Most = 12;

        // At the critical angle itself the edges press with next to nothing, and roundings would decide.
        const double Least = 0.1;
        double Difference(double beyond) => At(given, beyond) - At(given.Other(), beyond);
        double low = Least, high = Most;
        if (Difference(low) * Difference(high) > 0)
            throw new InvalidOperationException("The two wires do not change places up to 12° beyond.");

        double atLow = Difference(low);
        while (high - low > 0.01)
        {
            double middle = (low + high) / 2;
            double there = Difference(middle);
            (low, high, atLow) = there * atLow > 0 ? (middle, high, there) : (low, middle, atLow);
        }

        return (low + high) / 2;
    }

    /// <summary>Resistance at an angle beyond the critical one [N].</summary>
    public static double At(SetUp given, double beyondDegrees) =>
        Coefficient(given) * (given.Number("tie") + EdgeForces(
            given, Critical(given) + Angle.FromDegrees(beyondDegrees)));

    /// <summary>Critical contact angle of the set-up [rad].</summary>
    public static double Critical(SetUp given) => ContactAngle.CriticalContactAngle(
        given.Mils("slot"), given.Mils("bracket"), given.Wire().Section.Thickness);

    /// <summary>Sum of the forces at both edges [N].</summary>
    public static double EdgeForces(SetUp given, double angle)
    {
        CatalogueWire wire = given.Wire();
        double height = given.Mils("slot"), width = given.Mils("bracket");
        double neighbour = width / 2 + given.Number("span");
        Slot tipped = Bench.Slot(0, Hold.Walls) with
        {
            Width = width, Height = height, Depth = height + wire.Section.Width,
        };
        EngagementResult result = Bench.Checked(new Engager(new Arrangement
        {
            Wire = wire.WholeWire,
            Rest = new RestShape.Straight(),
            Temperature = given.Number("temperature", Mouth),
            Slots =
            [
                Bench.Slot(-neighbour, Hold.Point),
                tipped with { Actual = tipped.Rest.Moved(default, new Vector3(0, angle, 0)) },
                Bench.Slot(neighbour, Hold.Point),
            ],
        }).Engage());
        return 2 * Math.Abs(result.Slots[1].OnTooth.Moment.Y) / width;
    }

    private static double AngleOf(SetUp given) => given.Has("beyond")
        ? Critical(given) + Angle.FromDegrees(given.Number("beyond"))
        : Angle.FromDegrees(given.Number("angle"));

    private static double Coefficient(SetUp given) => given.Text("state") switch
    {
        "dry" => given.Wire().Alloy.FrictionDry.Value,
        "wet" => given.Wire().Alloy.FrictionWet.Value,
        string other => throw new TableException($"A wire slides dry or wet, not '{other}'."),
    };
}
