using Archwright.Dentition.Tables;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>Closed forms of small deflection, found by engaging a wire in slots that hold it.</summary>
internal static class Beams
{
    private const double Young = 180_000;
    private const double Offset = 1e-3;
    private const double Length = 8;
    private const double Diameter = 0.4;

    private static readonly Wire Wire = Bench.Round(Young, Diameter);

    /// <summary>c in F = c E I d/L³ (in M = c E I d/L² for <c>of</c> = step-moment).</summary>
    public static double Factor(SetUp given)
    {
        double force = Wire.Alloy.Young * Wire.Section.BendingOverThickness * Offset / Math.Pow(Length, 3);
        return given.Text("of") switch
        {
            "three-point" => Force(1, Slot(-Length / 2, Hold.Point), High(Hold.Point), Slot(Length / 2, Hold.Point))
                / force,
            "clamped" => Force(
                1, Slot(-Length / 2, Hold.Clamped), High(Hold.Point), Slot(Length / 2, Hold.Clamped)) / force,
            "cantilever" => Force(1, Slot(-Length, Hold.Clamped), High(Hold.Point)) / force,
            "step" => Force(1, Slot(-Length, Hold.Clamped), High(Hold.Clamped)) / force,
            "step-moment" => Math.Abs(Bench.Engage(Wire, Slot(-Length, Hold.Clamped), High(Hold.Clamped))
                .Slots[1].OnTooth.Moment.Z) / (force * Length),
            "high" => Force(1, Slot(-Length, Hold.Clamped), High(Hold.Clamped), Slot(Length, Hold.Clamped)) / force,
            string other => throw new TableException($"There is no beam '{other}'."),
        };
    }

    /// <summary>Stiffness in the middle of a simple span of 10 mm, round steel wire [N/mm].</summary>
    public static double ThreePointStiffness(SetUp given)
    {
        Wire wire = Bench.Round(given.Number("young"), given.Mils("diameter"));
        return Math.Abs(Bench.Engage(wire, Slot(-5, Hold.Point), High(Hold.Point), Slot(5, Hold.Point))
            .Slots[1].OnTooth.Force.Y) / Offset;
    }

    private static double Force(int slot, params ReadOnlySpan<Slot> slots) =>
        Math.Abs(Bench.Engage(Wire, slots).Slots[slot].OnTooth.Force.Y);

    private static Slot Slot(double x, Hold hold) => Bench.Slot(x, hold);

    private static Slot High(Hold hold) => Bench.Slot(0, hold, Offset);
}
