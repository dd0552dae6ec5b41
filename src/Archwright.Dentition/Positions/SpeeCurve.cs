using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>How deep the row of teeth sags between incisors and last molars.</summary>
/// <param name="Right">Greatest depth on the patient's right [mm]; negative where it bulges.</param>
/// <param name="Left">On the left [mm].</param>
/// <remarks>Read at the slots against their planned heights, so that a level arch has none: on casts it is read at
/// the cusps. Depth is measured from the straight line between the mean of the two central incisors and the last
/// molar, against the length along the row.</remarks>
public sealed record SpeeCurve(double Right, double Left)
{
    /// <summary>The curve of an arch; null without a central incisor and a molar on both sides.</summary>
    /// <param name="teeth">Tooth of each slot, null for a label that is none.</param>
    /// <param name="slots">The slots, in the same order.</param>
    /// <exception cref="ArgumentException">Teeth and slots are not as many.</exception>
    public static SpeeCurve? Of(IReadOnlyList<ToothNumber?> teeth, IReadOnlyList<Slot> slots)
    {
        if (teeth.Count != slots.Count)
            throw new ArgumentException($"{teeth.Count} teeth were given for {slots.Count} slots.", nameof(teeth));

        (double Along, double Height)[] right = Side(teeth, slots, isRight: true);
        (double Along, double Height)[] left = Side(teeth, slots, isRight: false);
        if (right.Length < 3 || left.Length < 3)
            return null;

        double front = (right[0].Height + left[0].Height) / 2;
        return new SpeeCurve(Depth(right, front), Depth(left, front));
    }

    // From the central incisor to the last molar: length along the row, and height above the planned one.
    private static (double Along, double Height)[] Side(
        IReadOnlyList<ToothNumber?> teeth, IReadOnlyList<Slot> slots, bool isRight)
    {
        int[] row =
        [
            .. Enumerable.Range(0, teeth.Count)
                .Where(i => teeth[i] is { } tooth && tooth.IsRight == isRight)
                .OrderBy(i => teeth[i]!.Value.Position),
        ];
        if (row.Length == 0 || teeth[row[0]]!.Value.Position != 1 || !teeth[row[^1]]!.Value.IsMolar)
            return [];

        double along = 0;
        var side = new (double, double)[row.Length];
        for (int k = 0; k < row.Length; k++)
        {
            Slot slot = slots[row[k]];
            if (k > 0)
                along += (slot.Rest.Centre - slots[row[k - 1]].Rest.Centre).Length;
            side[k] = (along, ClinicalAxes.For(teeth[row[k]]!.Value).Between(slot.Rest, slot.Actual).Occlusal);
        }

        return side;
    }

    private static double Depth((double Along, double Height)[] side, double front)
    {
        (double length, double end) = side[^1];
        return side.Skip(1).SkipLast(1)
            .Select(tooth => front + (end - front) * tooth.Along / length - tooth.Height)
            .MaxBy(Math.Abs);
    }
}
