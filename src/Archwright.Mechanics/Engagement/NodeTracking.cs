using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>Keeps nodes at the touching places while the wire slides.</summary>
/// <remarks>A contact force inside an element puts a kink into its curvature that a cubic cannot follow: the element is
/// then a little too stiff, and the wire seems to cling to its nodes. So after each Newton step the node next to a
/// touching place moves there along the wire. Its new values are those of the present shape at that place, so the shape
/// hardly changes, and less and less as Newton converges.</remarks>
internal sealed class NodeTracking
{
    private const double LeastMove = 1e-7;
    private const double LargestShareOfElement = 0.3;
    public const double LeastShareOfForce = 0.03;

    private readonly int[] _nodes;
    private readonly double[] _before;
    private int _count;

    public NodeTracking(int most)
    {
        _nodes = new int[most];
        _before = new double[most];
    }

    /// <summary>Moves nodes to the touching places of a state, where those are no farther than
    /// <paramref name="farthest"/> [mm].</summary>
    public void Follow(
        RodMesh mesh, ContactSet contacts, RestCurve rest, ReadOnlySpan<SlotFrame> frames, Span<double> q,
        double farthest = double.PositiveInfinity)
    {
        _count = 0;
        if (!contacts.Reaches(mesh, q, frames))
            return;

        int pinned = PinnedNode(contacts);
        int lastMoved = -1;
        double least = LeastShareOfForce * contacts.LargestForce();
        ReadOnlySpan<ContactRow> rows = contacts.Rows;
        for (int i = 0; i < rows.Length; i++)
        {
            double force = Math.Max(Math.Abs(rows[i].Effective), Math.Abs(rows[i].Multiplier));
            if (!rows[i].CanTouch || force <= least)
                continue;

            ref readonly Station station = ref contacts.Stations[rows[i].Station];
            int node = NodeNear(mesh, station, out double move);
            if (node <= lastMoved || node == pinned || node == 0 || node == mesh.Nodes - 1)
                continue;

            double room = Math.Min(
                farthest, LargestShareOfElement * Math.Min(mesh.Length(node - 1), mesh.Length(node)));
            if (Math.Abs(move) < LeastMove || Math.Abs(move) > room)
                continue;

            _nodes[_count] = node;
            _before[_count] = mesh.S[node];
            _count++;
            lastMoved = node;
            Interpolate(mesh, station.Element, station.S, node, q);
            Put(mesh, contacts, rest, node, station.S);
        }
    }

    /// <summary>Puts the nodes back where they were before the last <see cref="Follow"/>.</summary>
    public void TakeBack(RodMesh mesh, ContactSet contacts, RestCurve rest)
    {
        for (int i = 0; i < _count; i++)
            Put(mesh, contacts, rest, _nodes[i], _before[i]);

        _count = 0;
    }

    private static void Put(RodMesh mesh, ContactSet contacts, RestCurve rest, int node, double s)
    {
        double move = s - mesh.S[node];
        mesh.MoveNode(node, s, rest);

        // An end stop speaks of a point of the wire; another point rests that much further along. Stops come last but
        // for the pin.
        Span<ContactRow> rows = contacts.Rows;
        for (int i = rows.Length - 1; i >= 0 && (rows[i].EndStop || rows[i].Kind == RowKind.Pin); i--)
        {
            if (rows[i].EndStop && rows[i].Node == node)
                rows[i].Target += move;
        }
    }

    private static int NodeNear(RodMesh mesh, in Station station, out double move)
    {
        double before = station.S - mesh.S[station.Element];
        double after = mesh.S[station.Element + 1] - station.S;
        move = before <= after ? before : -after;
        return before <= after ? station.Element : station.Element + 1;
    }

    // Values of the present shape at s become those of the node; the turns in the middle of the two elements beside it
    // follow.
    private static void Interpolate(RodMesh mesh, int element, double s, int node, Span<double> q)
    {
        double left = mesh.S[node - 1];
        double right = mesh.S[node + 1];
        double turnLeft = NodalState.TurnAt(mesh, q, (left + s) / 2, node - 1);
        double turnRight = NodalState.TurnAt(mesh, q, (s + right) / 2, node - 1);
        (Vector3 point, Vector3 slope, double turn) = NodalState.At(mesh, q, element, s);
        NodalState.Put(q, node, point, slope, turn, turnRight);
        q[8 * node - 1] = turnLeft;
    }

    private static int PinnedNode(ContactSet contacts)
    {
        ReadOnlySpan<ContactRow> rows = contacts.Rows;
        return rows.Length > 0 && rows[^1].Kind == RowKind.Pin ? rows[^1].Node : -1;
    }
}
