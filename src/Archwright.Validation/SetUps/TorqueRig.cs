using Archwright.Dentition.Units;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>Torque of a wire in a slot between two neighbours, as rigs measure it on an incisor.</summary>
/// <remarks>
/// A straight wire in three slots, the middle one turned about it. The neighbours grip the wire
/// (<c>neighbours</c> = gripping, when left out) or have the same play (= alike). The bracket with what carries it may
/// give way by <c>compliance</c> degrees for each N·mm: then twist of the tooth = turn of the slot + compliance ×
/// torque, which is found by turning the slot step by step until the sum is reached. Keys: <c>wire</c>, <c>slot</c> in
/// thousandths of an inch or <c>slot_mm</c>, <c>gap_left</c> and <c>gap_right</c> between the edges of neighbouring
/// slots [mm], <c>twist</c> [degrees].
/// </remarks>
internal static class TorqueRig
{
    private const double SlotWidth = 3;
    private const double Depth = 1.2;
    private const double Stride = 0.5;
    private const double MostTurn = 60;

    /// <summary>Torque at a twist [N·mm].</summary>
    public static double Torque(SetUp given) =>
        Readings(given, WireOf(given), twist => twist >= given.Number("twist")).At(given.Number("twist"));

    /// <summary>Torque of <c>wire</c> over that of <c>other</c>.</summary>
    public static double TorqueRatio(SetUp given)
    {
        double twist = given.Number("twist");
        return Readings(given, WireOf(given), at => at >= twist).At(twist)
            / Readings(given, WireOf(given, "other"), at => at >= twist).At(twist);
    }

    /// <summary>Degrees for each N·mm beyond the play.</summary>
    public static double DegreesPerTorque(SetUp given)
    {
        Curve curve = Readings(given, WireOf(given), twist => twist >= MostTurn / 2);
        (double Twist, double Torque)[] last = [.. curve.Points.TakeLast(3)];
        return (last[^1].Twist - last[0].Twist) / (last[^1].Torque - last[0].Torque);
    }

    /// <summary>Twist at which <c>torque</c> [N·mm] is reached [degrees].</summary>
    public static double TwistForTorque(SetUp given)
    {
        double wanted = given.Number("torque");
        Curve curve = Readings(given, WireOf(given), _ => false, torque => torque >= wanted);
        return curve.TwistAt(wanted);
    }

    /// <summary>Least rate of torque up to <c>torque</c> [N·mm], as a share of its first rate beyond the play: small
    /// where the curve has a plateau.</summary>
    public static double LeastRate(SetUp given)
    {
        double most = given.Number("torque");
        Curve curve = Readings(given, WireOf(given), _ => false, torque => torque >= most);
        double[] rates =
        [
            .. curve.Points.Zip(curve.Points.Skip(1), (a, b) => (b.Torque - a.Torque) / (b.Twist - a.Twist)),
        ];
        int first = Array.FindIndex(rates, rate => rate > 0.8 * rates.Max());
        return rates[first..].Min() / rates[first..].Max();
    }

    /// <summary>Torque along a growing twist, for pictures too.</summary>
    public static Curve Readings(
        SetUp given, Wire wire, Func<double, bool> isFar, Func<double, bool>? isStrong = null)
    {
        double compliance = given.Number("compliance", 0);
        Engager engager = Engaged(given, wire);
        List<(double Twist, double Torque)> points = [(0, 0)];
        for (double turn = Stride; turn <= MostTurn; turn += Stride)
        {
            SlotFrame turned = engager.Arrangement.Slots[1].Rest.Moved(
                default, Axis * Angle.FromDegrees(turn));
            EngagementResult result = Bench.Checked(engager.Apply(new Step(null, [(1, turned)])));
            double torque = -Vector3.Dot(result.Slots[1].OnTooth.Moment, Axis);
            points.Add((turn + compliance * torque, torque));
            if (isFar(points[^1].Twist) || isStrong?.Invoke(torque) == true)
                break;
        }

        return new Curve(points);
    }

    private static readonly Vector3 Axis = new(1, 0, 0);

    // Steel and beta-titanium stay elastic in these tests; what transforms has its whole law.
    private static Wire WireOf(SetUp given, string key = "wire") =>
        given.Wire(key).Alloy.Transformation is null ? given.Wire(key).Wire : given.Wire(key).WholeWire;

    private static Engager Engaged(SetUp given, Wire wire)
    {
        double height = given.Has("slot_mm") ? given.Number("slot_mm") : given.Mils("slot");
        Hold neighbours = given.Has("neighbours") && given.Text("neighbours") == "alike"
            ? Hold.EdgesOnly
            : Hold.Clamped;
        var engager = new Engager(new Arrangement
        {
            Wire = wire,
            Temperature = given.Number("temperature", 36),
            Rest = new RestShape.Straight(),
            Slots =
            [
                Slot(-given.Number("gap_left") - SlotWidth, neighbours, height),
                Slot(0, Hold.EdgesOnly, height),
                Slot(given.Number("gap_right") + SlotWidth, neighbours, height),
            ],
        });
        Bench.Checked(engager.Engage());
        return engager;
    }

    private static Slot Slot(double x, Hold hold, double height) =>
        Bench.Slot(x, hold) with { Width = SlotWidth, Height = height, Depth = Depth };

    /// <summary>Twist and torque, both growing.</summary>
    internal sealed record Curve(IReadOnlyList<(double Twist, double Torque)> Points)
    {
        /// <summary>Torque at a twist, in a straight line between readings [N·mm].</summary>
        public double At(double twist) => Between(twist, point => point.Twist, point => point.Torque);

        /// <summary>Twist at a torque [degrees].</summary>
        public double TwistAt(double torque) => Between(torque, point => point.Torque, point => point.Twist);

        private double Between(
            double wanted, Func<(double Twist, double Torque), double> from,
            Func<(double Twist, double Torque), double> to)
        {
            for (int i = 1; i < Points.Count; i++)
            {
                double low = from(Points[i - 1]), high = from(Points[i]);
                if (wanted >= low && wanted <= high && high > low)
                    return to(Points[i - 1]) + (to(Points[i]) - to(Points[i - 1])) * (wanted - low) / (high - low);
            }

            throw new InvalidOperationException(
                $"The rig does not reach {wanted:0.##} within a turn of {MostTurn:0}°.");
        }
    }
}
