using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Bench;
using Archwright.Mechanics.Slots;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>Resistance to sliding of a wire through a tipped bracket between two neighbours, as the sliding rigs
/// measure it: coefficient × (what the tie presses + what the two edges press).</summary>
/// <remarks>
/// The forces at the edges are those of <see cref="SlidingTest"/>, which names the formula and what it leaves out. The
/// tie counts once. Keys: <c>wire</c>; <c>slot</c> and <c>bracket</c> (its width) in thousandths of an inch;
/// <c>span</c> from each edge to the neighbour's contact [mm]; <c>angle</c> [degrees], or <c>beyond</c>
/// counted from the critical angle; <c>tie</c> [N]; <c>state</c> = dry or wet; <c>temperature</c> [°C].
/// </remarks>
internal static class SlidingRig
{
    private const double Mouth = 36;

    /// <summary>Resistance [N].</summary>
    public static double Resistance(SetUp given) =>
        Coefficient(given) * (given.Number("tie") + EdgeForces(given, AngleOf(given)));

    /// <summary>The same over that of the other set-up, where <c>other_</c> stands before what differs.</summary>
    public static double Ratio(SetUp given) => Resistance(given) / Resistance(given.Other());

    /// <summary>The wire drawn through the bracket with friction, that sticks, slips and acts back on the edges, over
    /// <see cref="Resistance"/>.</summary>
    public static double Drawn(SetUp given) => Test(given).DrawingForce(
        AngleOf(given), Coefficient(given),
        Tie.Seating(TieKind.Elastic, given.Number("tie"), stiffness: 0)) / Resistance(given);

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
    public static double Critical(SetUp given) => Test(given).CriticalTip;

    /// <summary>Sum of the forces at both edges [N].</summary>
    public static double EdgeForces(SetUp given, double angle) => Test(given).EdgeForces(angle);

    private static SlidingTest Test(SetUp given) => new()
    {
        Wire = given.Wire().WholeWire,
        SlotHeight = given.Mils("slot"),
        BracketWidth = given.Mils("bracket"),
        Span = given.Number("span"),
        Temperature = given.Number("temperature", Mouth),
    };

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
