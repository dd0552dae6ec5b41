using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Treatment.Forecasts;

/// <summary>An idea of a wire's stiffness at its slots where the engaged wire has none to give: straight beams between
/// slots that hold them fast.</summary>
/// <remarks>Stiffer than a wire with play, which is the safe side: steps come out too short rather than too long. Along
/// the arch the wire slides and resists nothing, unless its ends are cinched: then it resists being made longer as a
/// whole, with EA/L. Nothing in the result rests on all this but the number of engagements.</remarks>
internal static class BeamChain
{
    private const double ShortestSpan = 0.5;

    /// <summary>Row-major 6n × 6n: load on the teeth by motion of the slots, as
    /// <see cref="Engager.TangentStiffness"/>.</summary>
    public static double[] Stiffness(Arrangement arrangement, ReadOnlySpan<SlotFrame> slots)
    {
        int size = 6 * slots.Length;
        var stiffness = new double[size * size];
        if (arrangement.Ends == WireEnds.Cinched)
            AddWhole(stiffness, size, arrangement, slots);
        int before = -1;
        for (int i = 0; i < slots.Length; i++)
        {
            if (arrangement.Slots[i].Tie.Kind == TieKind.None)
                continue;
            if (before >= 0)
                AddSpan(stiffness, size, arrangement, slots, before, i);
            before = i;
        }

        return stiffness;
    }

    // A cinched wire gets longer by g·x, g the directions of its spans at the slots that hold it.
    private static void AddWhole(
        double[] stiffness, int size, Arrangement arrangement, ReadOnlySpan<SlotFrame> slots)
    {
        var longer = new double[size];
        double length = 0;
        int before = -1;
        for (int i = 0; i < slots.Length; i++)
        {
            if (arrangement.Slots[i].Tie.Kind == TieKind.None)
                continue;
            if (before >= 0)
            {
                Vector3 gap = slots[i].Centre - slots[before].Centre;
                length += gap.Length;
                Put(longer, before, -gap.Unit());
                Put(longer, i, gap.Unit());
            }

            before = i;
        }

        double axial = arrangement.Wire.Alloy.Young * arrangement.Wire.Section.Area / Math.Max(length, ShortestSpan);
        for (int a = 0; a < size; a++)
        {
            for (int b = 0; b < size; b++)
                stiffness[a * size + b] -= axial * longer[a] * longer[b];
        }
    }

    private static void Put(double[] row, int slot, Vector3 v)
    {
        row[6 * slot] += v.X;
        row[6 * slot + 1] += v.Y;
        row[6 * slot + 2] += v.Z;
    }

    // With u the direction of the span, e₁ and e₂ across it, ends at arms r from the slot centres: six deformations
    // d = G x of the two slots' motions x, two bendings in each plane and one twist, each with its stiffness; K =
    // −Gᵀ D G.
    private static void AddSpan(
        double[] stiffness, int size, Arrangement arrangement, ReadOnlySpan<SlotFrame> slots, int i, int j)
    {
        Slot first = arrangement.Slots[i];
        Slot second = arrangement.Slots[j];
        Vector3 gap = slots[j].Centre - slots[i].Centre;
        double length = Math.Max(ShortestSpan, gap.Length - (first.Width + second.Width) / 2);
        Vector3 u = gap.Unit();
        Vector3 outward = slots[i].Outward + slots[j].Outward;
        Vector3 e1 = (outward - u * Vector3.Dot(outward, u)).Unit();
        Vector3 e2 = Vector3.Cross(u, e1);
        Section section = arrangement.Wire.Section;
        double young = arrangement.Wire.Alloy.Young;
        Vector3 armFirst = u * (first.Width / 2);
        Vector3 armSecond = u * (-second.Width / 2);
        AddPlane(young * section.BendingOverWidth, e1, e2);
        AddPlane(young * section.BendingOverThickness, e2, -e1);
        if (!section.IsRound)
            Add(arrangement.Wire.Alloy.Shear * section.Torsion / length, Row(default, -u, default, u));

        // Across e, turning about t: deflection and slope of the ends. The energy of a beam fixed at both ends
        // splits into 12EI/L³ on (Δw − L(θ₁+θ₂)/2) and EI/L on (θ₂ − θ₁).
        void AddPlane(double bending, Vector3 e, Vector3 t)
        {
            Vector3 half = t * (length / 2);
            Vector3 turnFirst = -Vector3.Cross(armFirst, e) - half;
            Vector3 turnSecond = Vector3.Cross(armSecond, e) - half;
            Add(12 * bending / (length * length * length), Row(-e, turnFirst, e, turnSecond));
            Add(bending / length, Row(default, -t, default, t));
        }

        void Add(double weight, double[] row)
        {
            for (int a = 0; a < 12; a++)
            {
                int r = a < 6 ? 6 * i + a : 6 * j + a - 6;
                for (int b = 0; b < 12; b++)
                {
                    int c = b < 6 ? 6 * i + b : 6 * j + b - 6;
                    stiffness[r * size + c] -= weight * row[a] * row[b];
                }
            }
        }
    }

    private static double[] Row(Vector3 shiftFirst, Vector3 turnFirst, Vector3 shiftSecond, Vector3 turnSecond) =>
    [
        shiftFirst.X, shiftFirst.Y, shiftFirst.Z, turnFirst.X, turnFirst.Y, turnFirst.Z,
        shiftSecond.X, shiftSecond.Y, shiftSecond.Z, turnSecond.X, turnSecond.Y, turnSecond.Z,
    ];
}
