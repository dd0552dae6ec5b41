using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>Widths of an arch as teeth stand now.</summary>
public static class ArchWidths
{
    /// <summary>Horizontal distance between the cusp tips of the two canines [mm]; null when one has no
    /// slot.</summary>
    /// <param name="teeth">Tooth of each slot, null for a label that is none.</param>
    /// <param name="slots">The slots, in the same order.</param>
    /// <exception cref="ArgumentException">Teeth and slots are not as many.</exception>
    public static double? Intercanine(IReadOnlyList<ToothNumber?> teeth, IReadOnlyList<Slot> slots) =>
        Between(teeth, slots, position: 3);

    /// <summary>Horizontal distance between two teeth of the same kind, right and left, at the middle of their
    /// cutting edge or cusp [mm]; null when one has no slot.</summary>
    /// <param name="teeth">Tooth of each slot, null for a label that is none.</param>
    /// <param name="slots">The slots, in the same order.</param>
    /// <param name="position">1 central incisor to 7 second molar.</param>
    /// <exception cref="ArgumentException">Teeth and slots are not as many.</exception>
    public static double? Between(IReadOnlyList<ToothNumber?> teeth, IReadOnlyList<Slot> slots, int position)
    {
        if (teeth.Count != slots.Count)
            throw new ArgumentException($"{teeth.Count} teeth were given for {slots.Count} slots.", nameof(teeth));

        Vector3? right = Tip(teeth, slots, position, isRight: true);
        Vector3? left = Tip(teeth, slots, position, isRight: false);
        if (right is not Vector3 r || left is not Vector3 l)
            return null;

        return Math.Sqrt((r.X - l.X) * (r.X - l.X) + (r.Y - l.Y) * (r.Y - l.Y));
    }

    private static Vector3? Tip(
        IReadOnlyList<ToothNumber?> teeth, IReadOnlyList<Slot> slots, int position, bool isRight)
    {
        for (int i = 0; i < slots.Count; i++)
        {
            if (teeth[i] is ToothNumber tooth && tooth.Position == position && tooth.IsRight == isRight
                && Anatomy.TryOf(tooth, out _))
            {
                return ContactPoints.CuspTip(tooth, slots[i].Actual);
            }
        }

        return null;
    }
}
