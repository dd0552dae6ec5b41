using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>Where a search started, to go back to when it leads nowhere: nodes, shape, slide and the forces of the
/// restraints.</summary>
internal sealed class Snapshot
{
    private readonly RodMesh _mesh;
    private readonly double[] _state;
    private readonly double[] _forces;
    private double _slide;

    /// <param name="mostNodes">Room for nodes.</param>
    /// <param name="mostRows">Room for restraints.</param>
    /// <param name="room">Where its arrays come from.</param>
    public Snapshot(int mostNodes, int mostRows, Room room)
    {
        _mesh = new RodMesh(mostNodes, room);
        _state = room.Take<double>(8 * mostNodes);
        _forces = new double[mostRows];
    }

    /// <summary>Keeps how things stand.</summary>
    public void Take(Equilibrium rod)
    {
        _mesh.CopyFrom(rod.Mesh);
        rod.State.CopyTo(_state);
        _slide = rod.Slide?.Shift ?? 0;
        for (int i = 0; i < rod.Contacts.RowCount; i++)
            _forces[i] = rod.Contacts.Rows[i].Effective;
    }

    /// <summary>Puts things back. Rows at fixed points of the wire have to look up their nodes again.</summary>
    public void PutBack(Equilibrium rod)
    {
        rod.TakeSlide(_slide - (rod.Slide?.Shift ?? 0));
        rod.Mesh.CopyFrom(_mesh);
        rod.Tension.Forget();
        _state.AsSpan(0, 8 * rod.Mesh.Nodes).CopyTo(rod.State);
        for (int i = 0; i < rod.Contacts.RowCount; i++)
        {
            rod.Contacts.Rows[i].Multiplier = _forces[i];
            rod.Contacts.Rows[i].Effective = _forces[i];
        }

        rod.Contacts.ForgetElements();
    }
}
