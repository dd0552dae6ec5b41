using Archwright.Mechanics.Numerics;
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
            (Vector3 point, Vector3 slope, double turn) = NodalState.At(from, old, element, s);
            double turnAfter = i + 1 < to.Length ? NodalState.TurnAt(from, old, (s + to[i + 1]) / 2, element) : 0;
            NodalState.Put(state, i, point, slope, turn, turnAfter);
        }
    }
}
