using Archwright.Dentition.Units;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>Critical contact angle, found by tipping a slot on a straight wire until both its edges answer. The formula
/// is used to place the two readings, and nowhere else.</summary>
internal static class BindingAngle
{
    private const double Far = 15;
    private const double Step = 0.002;

    /// <summary>The angle at which the moment, drawn back in a straight line, is nil [degrees]. Sizes in thousandths
    /// of an inch: <c>wire</c>, <c>slot</c>, <c>bracket</c>.</summary>
    public static double InDegrees(SetUp given)
    {
        Wire wire = Bench.Round(200_000, given.Mils("wire"));
        double slot = given.Mils("slot"), width = given.Mils("bracket");
        double near = ContactAngle.CriticalContactAngle(slot, width, wire.Section.Thickness);
        double first = Moment(wire, slot, width, near + Step);
        double second = Moment(wire, slot, width, near + 2 * Step);
        return Angle.ToDegrees(near + Step - Step * first / (second - first));
    }

    private static double Moment(Wire wire, double slot, double width, double angle) => Bench.Engage(
        wire, Bench.Slot(-Far, Hold.Point),
        Bench.Slot(0, Hold.Walls, turn: angle) with { Width = width, Height = slot, Depth = slot },
        Bench.Slot(Far, Hold.Point)).Slots[1].OnTooth.Moment.Z;
}
