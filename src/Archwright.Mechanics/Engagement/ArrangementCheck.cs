using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>Refuses arrangements that no wire and no solver can answer.</summary>
internal static class ArrangementCheck
{
    private const double SizeTolerance = 1e-9;
    private const double MostFriction = 2;

    /// <exception cref="ArgumentException">The first thing that is wrong, with the slot and the figures.</exception>
    public static void Throw(Arrangement arrangement)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        if (arrangement.Slots.IsDefaultOrEmpty || arrangement.Slots.Length > Arrangement.MostSlots)
        {
            throw new ArgumentException(
                $"An arrangement has 1 to {Arrangement.MostSlots} slots.", nameof(arrangement));
        }

        bool held = false;
        foreach (Slot slot in arrangement.Slots)
        {
            Check(slot, arrangement.Wire.Section);
            held |= Layout.Restrains(slot);
        }

        if (!held)
            throw new ArgumentException("No slot holds the wire.", nameof(arrangement));

        if (arrangement.Rest is RestShape.Points points)
            Check(points);
    }

    private static void Check(Slot slot, Section section)
    {
        if (!(slot.Width >= 0.1 && slot.Width <= 20))
            throw Wrong(slot, $"its width of {slot.Width} mm is not between 0.1 and 20 mm");

        foreach (SlotFrame frame in (ReadOnlySpan<SlotFrame>)[slot.Rest, slot.Actual])
        {
            double along = frame.Along.Length;
            double outward = frame.Outward.Length;
            if (!frame.Centre.IsFinite || !(Math.Abs(along - 1) < 1e-6) || !(Math.Abs(outward - 1) < 1e-6))
                throw Wrong(slot, "its frame is not made of finite numbers and unit vectors");
        }

        if (!slot.IsBonded && (slot.Tie.Kind != TieKind.None || slot.Hold != Hold.Walls))
            throw Wrong(slot, "there is no bracket on it, and yet it is to hold the wire");

        if (!(slot.Friction >= 0 && slot.Friction <= MostFriction))
            throw Wrong(slot, $"its coefficient of friction of {slot.Friction} is not between 0 and {MostFriction}");

        if (!Layout.HasWalls(slot))
            return;

        if (!(slot.Height >= section.Thickness - SizeTolerance) || !(slot.Height <= 20))
            throw Wrong(slot, $"it is {slot.Height} mm high, the wire {section.Thickness} mm thick");
        if (!(slot.Depth >= section.Width - SizeTolerance) || !(slot.Depth <= 20))
            throw Wrong(slot, $"it is {slot.Depth} mm deep, the wire {section.Width} mm wide");
    }

    private static void Check(RestShape.Points points)
    {
        if (points.Path.IsDefault || points.Path.Length < 2)
            throw new ArgumentException("A rest shape through points needs two of them.", nameof(points));
        if (!points.Outward.IsDefaultOrEmpty && points.Outward.Length != points.Path.Length)
            throw new ArgumentException("There must be one outward direction a point.", nameof(points));

        for (int i = 0; i < points.Path.Length; i++)
        {
            if (!points.Path[i].IsFinite)
                throw new ArgumentException($"Point {i} of the rest shape is not finite.", nameof(points));
            if (i > 0 && (points.Path[i] - points.Path[i - 1]).Length < 1e-6)
                throw new ArgumentException($"Points {i - 1} and {i} of the rest shape coincide.", nameof(points));
        }
    }

    private static ArgumentException Wrong(Slot slot, string what) =>
        new($"Slot {slot.Label} cannot be used: {what}.", nameof(slot));
}
