using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Engagement;

/// <summary>Carries a shape from one set of nodes to another along the same wire.</summary>
internal static class MeshTransfer
{
    /// <summary>Interpolates.</summary>
    /// <param name="from">Old nodes.</param>
    /// <param name="old">Old state.</param>
    /// <param name="to">New nodes.</param>
    /// <param name="state">New state, overwritten.</param>
    public static void Carry(RodMesh from, ReadOnlySpan<double> old, ReadOnlySpan<double> to, Span<double> state)
    {
        int element = 0;
        for (int i = 0; i < to.Length; i++)
        {
            double s = to[i];
            element = from.Find(s, element);
            double h = from.Length(element);
            var shape = new Hermite((s - from.S[element]) / h, h);
            Span<double> at = state.Slice(8 * i, 8);
            for (int k = 0; k < 3; k++)
            {
                int a = 8 * element + k;
                at[k] = shape.N0 * old[a] + shape.N1 * old[a + 3] + shape.N2 * old[a + 8] + shape.N3 * old[a + 11];
                at[3 + k] = shape.A0 * old[a] + shape.A1 * old[a + 3] + shape.A2 * old[a + 8] + shape.A3 * old[a + 11];
            }

            at[6] = Turn(old, element, shape);
            at[7] = i + 1 < to.Length ? TurnAt(from, old, (s + to[i + 1]) / 2, element) : 0;
        }
    }

    private static double TurnAt(RodMesh from, ReadOnlySpan<double> old, double s, int near)
    {
        int element = from.Find(s, near);
        double h = from.Length(element);
        return Turn(old, element, new Hermite((s - from.S[element]) / h, h));
    }

    private static double Turn(ReadOnlySpan<double> old, int element, in Hermite shape) =>
        shape.M0 * old[8 * element + 6] + shape.Mm * old[8 * element + 7] + shape.M1 * old[8 * element + 14];
}
