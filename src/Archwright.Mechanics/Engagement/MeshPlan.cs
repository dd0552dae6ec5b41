namespace Archwright.Mechanics.Engagement;

/// <summary>Where the nodes go: one at every place where the wire is or may be touched, the rest between
/// them.</summary>
/// <remarks>A contact force inside an element would put a kink into its curvature that a cubic does not have; on a node
/// it costs nothing. The touching places move along the wire, so the nodes follow them (docs/decisions/0002).</remarks>
internal sealed class MeshPlan
{
    /// <summary>Free length of wire beyond the last contact [mm]; it stays straight and only has to be long enough not
    /// to be drawn in.</summary>
    public const double Overhang = 8;

    private readonly double[] _anchors;
    private readonly bool[] _insideSlot;
    private readonly double[] _nodes;

    public MeshPlan(int mostNodes)
    {
        _anchors = new double[mostNodes];
        _insideSlot = new bool[mostNodes];
        _nodes = new double[mostNodes];
    }

    /// <summary>Number of anchors so far.</summary>
    public int Anchors { get; private set; }

    /// <summary>Starts a new plan.</summary>
    public void Clear() => Anchors = 0;

    /// <summary>Adds a place that wants a node, in ascending order; places closer than
    /// <paramref name="closest"/> [mm] to the one before are left out.</summary>
    /// <param name="s">[mm]</param>
    /// <param name="insideSlot">The stretch from the anchor before lies inside one slot.</param>
    /// <param name="closest">[mm]</param>
    public void Add(double s, bool insideSlot, double closest)
    {
        if (Anchors > 0 && s - _anchors[Anchors - 1] < closest)
            return;

        _anchors[Anchors] = s;
        _insideSlot[Anchors] = insideSlot;
        Anchors++;
    }

    /// <summary>Takes back the last anchor where it is closer than that to a more important one.</summary>
    public void DropLastCloserThan(double s, double closest)
    {
        if (Anchors > 1 && s - _anchors[Anchors - 1] < closest && _insideSlot[Anchors - 1])
            Anchors--;
    }

    /// <summary>The nodes, ascending.</summary>
    /// <param name="perGap">Elements in a gap between two slots of up to <see cref="UsualGap"/>.</param>
    /// <param name="perSlot">Elements of the whole width of a slot.</param>
    /// <param name="slotWidth">Typical width of a slot [mm].</param>
    public ReadOnlySpan<double> Nodes(int perGap, int perSlot, double slotWidth)
    {
        int count = 0;
        _nodes[count++] = _anchors[0] - Overhang;
        _nodes[count++] = _anchors[0];
        for (int i = 1; i < Anchors; i++)
        {
            double from = _anchors[i - 1];
            double length = _anchors[i] - from;
            int pieces = _insideSlot[i]
                ? Math.Max(1, (int)Math.Ceiling(perSlot * length / slotWidth - 0.05))
                : Math.Max(perGap, (int)Math.Ceiling(perGap * length / UsualGap - 0.05));
            for (int k = 1; k <= pieces; k++)
                _nodes[count++] = k == pieces ? _anchors[i] : from + length * k / pieces;
        }

        _nodes[count] = _nodes[count - 1] + Overhang;
        return _nodes.AsSpan(0, count + 1);
    }

    /// <summary>Longest gap that gets the plain number of elements [mm]; longer ones get more, in proportion.</summary>
    public const double UsualGap = 6;
}
