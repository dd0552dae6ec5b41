using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>A whole state of a wire in its slots, to come back to: mesh, shape, contacts, slots, temperature, and the
/// wire's history. Room for it is made once.</summary>
internal sealed class Checkpoint
{
    private readonly RodMesh _mesh;
    private readonly Tension _tension;
    private readonly double[] _state;
    private readonly Station[] _stations;
    private readonly ContactRow[] _rows;
    private readonly SlotFrame[] _frames;
    private double _temperature;
    private double _residual;
    private (double Shift, double Share) _pace;

    public Checkpoint(int mostNodes, int mostStations, int mostRows, int slots, Room room)
    {
        _mesh = new RodMesh(mostNodes, room);
        _tension = new Tension(mostNodes, room);
        _state = room.Take<double>(8 * mostNodes);
        _stations = room.Take<Station>(mostStations);
        _rows = room.Take<ContactRow>(mostRows);
        _frames = new SlotFrame[slots];
    }

    /// <summary>Keeps the state as it is now.</summary>
    public void Keep(Equilibrium rod, double temperature)
    {
        _mesh.CopyFrom(rod.Mesh);
        _tension.CopyFrom(rod.Tension);
        rod.State.CopyTo(_state);
        rod.Contacts.Stations.CopyTo(_stations);
        rod.Contacts.Rows.CopyTo(_rows);
        rod.Frames.CopyTo(_frames, 0);
        rod.Law.Keep();
        _temperature = temperature;
        _residual = rod.Residual;
        _pace = rod.Pace;
    }

    /// <summary>Puts the kept state back.</summary>
    /// <returns>Its temperature [°C].</returns>
    public double PutBack(Equilibrium rod)
    {
        rod.Mesh.CopyFrom(_mesh);
        rod.Tension.CopyFrom(_tension);
        _state.AsSpan(0, rod.State.Length).CopyTo(rod.State);
        _stations.AsSpan(0, rod.Contacts.StationCount).CopyTo(rod.Contacts.Stations);
        _rows.AsSpan(0, rod.Contacts.RowCount).CopyTo(rod.Contacts.Rows);
        _frames.CopyTo(rod.Frames, 0);
        rod.Law.PutBack();
        rod.Stand(_residual);
        rod.Pace = _pace;
        return _temperature;
    }
}
