using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>How irregular the front teeth stand: the five horizontal distances between contact points that should
/// touch, canine to canine, from the patient's right to the left.</summary>
/// <remarks>R. M. Little, "The irregularity index", Am J Orthod 1975;68:554–563 (found): lower arch, measured
/// parallel to the biting plane, vertical steps not counted; used for the upper arch by analogy. Readings of single
/// contacts scatter by more than a fifth (D. Macauley et al., J Dent 2012;40:1127–1133; found): show one decimal at
/// most; changes below 1 mm are noise. Horizontal is the patient's x and y.</remarks>
public sealed record IrregularityIndex
{
    private IrregularityIndex(ImmutableArray<double> displacements) => Displacements = displacements;

    /// <summary>Five distances, from the patient's right to the left [mm].</summary>
    public ImmutableArray<double> Displacements { get; }

    /// <summary>The index: their sum [mm].</summary>
    public double Sum => Displacements.Sum();

    /// <summary>The author's word for it: "perfect", "minimal", "moderate", "severe" or "very severe". He names 1–3,
    /// 4–6, 7–9 and 10 or more; here each class begins half-way between.</summary>
    public string Category => Sum switch
    {
        < 0.5 => "perfect",
        < 3.5 => "minimal",
        < 6.5 => "moderate",
        < 9.5 => "severe",
        _ => "very severe",
    };

    /// <summary>The index of an arch from its slots.</summary>
    /// <param name="teeth">Tooth of each slot, null for a label that is none.</param>
    /// <param name="slots">The slots, in the same order.</param>
    /// <param name="index">The index; null when one of the six front teeth has no slot.</param>
    /// <exception cref="ArgumentException">Teeth and slots are not as many.</exception>
    public static bool TryOf(
        IReadOnlyList<ToothNumber?> teeth, IReadOnlyList<Slot> slots, [NotNullWhen(true)] out IrregularityIndex? index)
    {
        index = null;
        if (FrontSlots.Find(teeth, slots) is not { } front)
            return false;

        index = Of(front);
        return true;
    }

    private static IrregularityIndex Of(IReadOnlyList<FrontSlot> front) =>
        new([.. Enumerable.Range(0, 5).Select(i => Horizontal(Step(front[i], front[i + 1])))]);

    /// <summary>From the right tooth's copy of a contact point to the left tooth's.</summary>
    private static Vector3 Step(FrontSlot right, FrontSlot left)
    {
        Vector3 contact = ContactPoints.Planned(right.Tooth, right.Rest, left.Tooth, left.Rest);
        return left.Carried(contact) - right.Carried(contact);
    }

    private static double Horizontal(Vector3 step) => Math.Sqrt(step.X * step.X + step.Y * step.Y);
}
