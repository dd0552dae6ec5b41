using System.Runtime.InteropServices;
using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Rods;

/// <summary>The forces along a wire that a search goes by: those that its last step foresaw.</summary>
/// <remarks>
/// A wire is thousands of times as stiff along as across, so after a step the force that goes with its stretch is that
/// of the step's second order, hundreds of newtons, and a tangent made with it belongs to another wire: stiff or about
/// to buckle. The force that the step foresaw, N + EA δε, has no such part. With it in the geometric stiffness, and the
/// true one in the balance, Newton's method takes far longer steps; where both agree it is Newton's method itself, and
/// what it converges to does not change. D. Magisano, L. Leonetti, G. Garcea, "How to improve efficiency and robustness
/// of the Newton method in geometrically non-linear structural problem discretized via displacement-based finite
/// elements", Comput. Methods Appl. Mech. Eng. 313 (2017) 986–1005 (from memory).
/// </remarks>
internal sealed class Tension
{
    private readonly double[] _atPoints;
    private readonly double[] _stretchAtPoints;
    private readonly double[] _atNodes;
    private readonly double[] _stretchAtNodes;
    private bool _isForeseen;

    /// <param name="mostNodes">Most nodes of the wire.</param>
    /// <param name="room">Where its arrays come from; null for the heap.</param>
    public Tension(int mostNodes, Room? room = null)
    {
        _atPoints = Room.TakeCleared<double>(room, RodMesh.Points * mostNodes);
        _stretchAtPoints = Room.TakeCleared<double>(room, RodMesh.Points * mostNodes);
        _atNodes = Room.TakeCleared<double>(room, mostNodes);
        _stretchAtNodes = Room.TakeCleared<double>(room, mostNodes);
    }

    /// <summary>The wire is another one than at the last step, or elsewhere: the true forces hold.</summary>
    public void Forget() => _isForeseen = false;

    /// <summary>Takes over what another one of the same room foresees.</summary>
    public void CopyFrom(Tension other)
    {
        _isForeseen = other._isForeseen;
        other._atPoints.CopyTo(_atPoints, 0);
        other._atNodes.CopyTo(_atNodes, 0);
    }

    /// <summary>Force at a Gauss point for the tangent [N].</summary>
    /// <param name="point">Index.</param>
    /// <param name="force">The true one [N]; kept.</param>
    /// <param name="stiffness">Its change for a unit of stretch [N]; kept.</param>
    public double AtPoint(int point, double force, double stiffness) =>
        Exchange(ref _atPoints[point], ref _stretchAtPoints[point], force, stiffness);

    /// <summary>Force of the tie of a node's slope for the tangent, as <see cref="AtPoint"/> [N].</summary>
    /// <param name="node">Index.</param>
    /// <param name="force">The true one [N·mm].</param>
    /// <param name="stiffness">Its change for a unit of stretch [N·mm].</param>
    public double AtNode(int node, double force, double stiffness) =>
        Exchange(ref _atNodes[node], ref _stretchAtNodes[node], force, stiffness);

    /// <summary>Goes along with a share of a step.</summary>
    /// <param name="mesh">Nodes.</param>
    /// <param name="q">The state that the forces were evaluated at.</param>
    /// <param name="step">The whole step.</param>
    /// <param name="share">Share of it that is taken.</param>
    public void Foresee(RodMesh mesh, ReadOnlySpan<double> q, ReadOnlySpan<double> step, double share)
    {
        ref double state = ref MemoryMarshal.GetReference(q);
        ref double change = ref MemoryMarshal.GetReference(step);
        ref double weights = ref MemoryMarshal.GetReference(mesh.Weights);
        for (int point = 0; point < RodMesh.Points * mesh.Elements; point++)
        {
            int element = point / RodMesh.Points;
            Vector3 slope = RodAssembly.Slope(ref state, ref weights, element, point);
            Vector3 rise = RodAssembly.Slope(ref change, ref weights, element, point);
            _atPoints[point] += share * _stretchAtPoints[point] * Vector3.Dot(slope, rise) / slope.Length;
        }

        for (int i = 0; i < mesh.Nodes; i++)
        {
            Vector3 slope = RodAssembly.Slope(q, i);
            _atNodes[i] += share * _stretchAtNodes[i] * Vector3.Dot(slope, RodAssembly.Slope(step, i)) / slope.Length;
        }

        _isForeseen = true;
    }

    private double Exchange(ref double kept, ref double keptStiffness, double force, double stiffness)
    {
        double foreseen = _isForeseen ? kept : force;
        kept = force;
        keptStiffness = stiffness;
        return foreseen;
    }
}
