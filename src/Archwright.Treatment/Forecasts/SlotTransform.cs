using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Treatment.Forecasts;

/// <summary>Takes the wire's stiffness from the slots to the centres of resistance.</summary>
/// <remarks>A small motion (v, ω) of the tooth at its centre of resistance, in the axes of its slot, moves the slot
/// by shift = Q v + Q ω × r and turn = Q ω, r from the centre of resistance to the slot, Q the axes. Loads go the
/// other way by the transpose, so K becomes Tᵀ K T. Its symmetric part is taken: what is not symmetric comes from
/// the turn of the arms and is put right by the engaged wire.</remarks>
internal static class SlotTransform
{
    /// <param name="arch">Teeth.</param>
    /// <param name="maps">As <see cref="FillMaps"/> gives them.</param>
    /// <param name="stiffness">At the slots.</param>
    /// <param name="result">Takes it.</param>
    public static void ToResistance(
        MovingArch arch, ReadOnlySpan<double> maps, ReadOnlySpan<double> stiffness, Span<double> result)
    {
        int size = 6 * arch.Count;
        Span<double> half = stackalloc double[36];
        Span<double> block = stackalloc double[36];
        for (int i = 0; i < arch.Count; i++)
        {
            for (int j = 0; j < arch.Count; j++)
            {
                ReadOnlySpan<double> left = maps.Slice(36 * i, 36);
                ReadOnlySpan<double> right = maps.Slice(36 * j, 36);
                for (int a = 0; a < 6; a++)
                {
                    for (int b = 0; b < 6; b++)
                    {
                        double sum = 0;
                        for (int k = 0; k < 6; k++)
                            sum += stiffness[(6 * i + a) * size + 6 * j + k] * right[6 * k + b];
                        half[6 * a + b] = sum;
                    }
                }

                for (int a = 0; a < 6; a++)
                {
                    for (int b = 0; b < 6; b++)
                    {
                        double sum = 0;
                        for (int k = 0; k < 6; k++)
                            sum += left[6 * k + a] * half[6 * k + b];
                        block[6 * a + b] = sum;
                        result[(6 * i + a) * size + 6 * j + b] = sum;
                    }
                }
            }
        }

        for (int r = 0; r < size; r++)
        {
            for (int c = 0; c < r; c++)
            {
                double mean = (result[r * size + c] + result[c * size + r]) / 2;
                result[r * size + c] = mean;
                result[c * size + r] = mean;
            }
        }
    }

    /// <summary>Row-major 6 × 6 a tooth: the slot's shift and turn in the frame of the case, by motion of the tooth at
    /// its centre of resistance in the axes of the slot.</summary>
    public static void FillMaps(MovingArch arch, ReadOnlySpan<SlotFrame> slots, Span<double> maps)
    {
        for (int i = 0; i < arch.Count; i++)
            FillMap(arch, i, slots[i], maps.Slice(36 * i, 36));
    }

    // Row-major 6 × 6: slot's shift and turn in the frame of the case, by motion at the centre of resistance.
    private static void FillMap(MovingArch arch, int tooth, in SlotFrame slot, Span<double> map)
    {
        Vector3 arm = slot.Centre - arch.Supports[tooth].ResistanceOf(slot);
        map.Clear();
        Put(map, 0, 0, slot.Along);
        Put(map, 1, 0, slot.Outward);
        Put(map, 2, 0, slot.Third);
        Put(map, 3, 3, slot.Along);
        Put(map, 4, 3, slot.Outward);
        Put(map, 5, 3, slot.Third);
        Put(map, 3, 0, Vector3.Cross(slot.Along, arm));
        Put(map, 4, 0, Vector3.Cross(slot.Outward, arm));
        Put(map, 5, 0, Vector3.Cross(slot.Third, arm));
    }

    private static void Put(Span<double> map, int column, int row, Vector3 v)
    {
        map[6 * row + column] = v.X;
        map[6 * (row + 1) + column] = v.Y;
        map[6 * (row + 2) + column] = v.Z;
    }
}
