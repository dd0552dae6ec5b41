using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>A wire bent to one curvature all along, and let go. Two slots grip it; the second travels along the arc
/// that the wire would take, so that the wire between them carries a moment and next to nothing else.</summary>
/// <remarks>Keys: <c>wire</c>, <c>other</c>, <c>angle</c> over 5 mm [degrees], <c>temperature</c> [°C];
/// <c>other_law</c> = elastic takes the other wire as if it never yielded. The gripped wire keeps its length, which
/// matters where tension and compression differ: by 2 % of the moment.</remarks>
internal static class SpringBack
{
    private const double Length = 5;
    private const double Stride = 0.02;
    private const double Mouth = 36;

    /// <summary>Angle that comes back of <c>wire</c> over that of <c>other</c>.</summary>
    public static double Ratio(SetUp given) => Back(given, "wire") / Back(given, "other");

    /// <summary>Moment of <c>wire</c> over that of <c>other</c>.</summary>
    public static double MomentRatio(SetUp given)
    {
        double turn = Angle.FromDegrees(given.Number("angle"));
        bool isElastic = given.Has("other_law") && given.Text("other_law") == "elastic";
        Wire other = isElastic ? given.Wire("other").Wire : given.Wire("other").WholeWire;
        return Go(Gripped(given.Wire().WholeWire, Temperature(given)), 0, turn)
            / Go(Gripped(other, Temperature(given)), 0, turn);
    }

    /// <summary>Diameter of the mandrel that leaves a bow of <c>bow</c> in a chord of <c>chord</c> [mm].</summary>
    public static double Mandrel(SetUp given)
    {
        CatalogueWire wire = given.Wire();
        double bow = given.Number("bow"), chord = given.Number("chord");
        double left = 2 * bow / (bow * bow + chord * chord / 4);
        double low = 2, high = 200;
        while (high - low > 0.05)
        {
            double mandrel = (low + high) / 2;
            double turn = Length * 2 / (mandrel + wire.Section.Thickness);
            (low, high) = Residual(wire, turn, Temperature(given)) > Length * left
                ? (mandrel, high)
                : (low, mandrel);
        }

        return (low + high) / 2;
    }

    private static double Temperature(SetUp given) => given.Number("temperature", Mouth);

    private static double Back(SetUp given, string wire)
    {
        double turn = Angle.FromDegrees(given.Number("angle"));
        return turn - Residual(given.Wire(wire), turn, Temperature(given));
    }

    // The turn at which the moment is gone, by the secant rule from the elastic guess [rad].
    private static double Residual(CatalogueWire wire, double turn, double temperature)
    {
        Engager engager = Gripped(wire.WholeWire, temperature);
        double top = Go(engager, 0, turn);
        double stiffness = wire.Alloy.Young.Value * wire.Section.BendingOverWidth / Length;
        double at = turn, moment = top;
        double next = turn - top / stiffness;
        for (int i = 0; i < 12 && Math.Abs(moment) > 1e-4 * Math.Abs(top); i++)
        {
            double then = Go(engager, at, next);
            double slope = Math.Abs(next - at) > 1e-9 ? (then - moment) / (next - at) : stiffness;
            (at, moment) = (next, then);
            next = at - moment / (slope > 0.01 * stiffness ? slope : stiffness);
        }

        return at;
    }

    // Moment at the end of the way [N·mm].
    private static double Go(Engager engager, double from, double to)
    {
        int steps = Math.Max(1, (int)Math.Ceiling(Math.Abs(to - from) / Stride));
        double moment = 0;
        for (int i = 1; i <= steps; i++)
        {
            SlotFrame onArc = OnArc(from + (to - from) * i / steps);
            moment = -Bench.Checked(engager.Apply(new Step(null, [(1, onArc)]))).Slots[1].OnTooth.Moment.Z;
        }

        return moment;
    }

    private static SlotFrame OnArc(double turn)
    {
        double radius = Math.Abs(turn) > 1e-9 ? Length / turn : 0;
        Vector3 to = radius == 0
            ? new Vector3(Length, 0, 0)
            : new Vector3(radius * Math.Sin(turn), radius * (1 - Math.Cos(turn)), 0);
        return Bench.Slot(0, Hold.Clamped).Rest.Moved(to, new Vector3(0, 0, turn));
    }

    private static Engager Gripped(Wire wire, double temperature)
    {
        var engager = new Engager(new Arrangement
        {
            Wire = wire,
            Rest = new RestShape.Straight(),
            Temperature = temperature,
            Slots = [Bench.Slot(0, Hold.Clamped), Bench.Slot(Length, Hold.Clamped)],
        });
        Bench.Checked(engager.Engage());
        return engager;
    }
}
