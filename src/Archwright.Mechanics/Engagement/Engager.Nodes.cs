using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <content>Where the nodes are, and how they follow the touching places.</content>
public sealed partial class Engager
{
    private bool NodesAreOff()
    {
        double least = NodeTracking.LeastShareOfForce * _rod.Contacts.LargestForce();
        double tolerance = _rod.Law.HasHistory || (_rubs && _rod.Contacts.HasFriction)
            ? NodeToleranceWithHistory
            : NodeTolerance;
        ReadOnlySpan<double> s = _rod.Mesh.S;
        foreach (ref readonly ContactRow row in _rod.Contacts.Rows)
        {
            if (!row.CanTouch || Math.Abs(row.Effective) <= least)
                continue;

            ref readonly Station station = ref _rod.Contacts.Stations[row.Station];
            double before = station.S - s[station.Element];
            double after = s[station.Element + 1] - station.S;
            if (Math.Min(before, after) > tolerance)
                return true;
        }

        return false;
    }

    private void BuildMesh()
    {
        _rod.Mesh.Build(_plan.Nodes(PerGap, PerSlot, TypicalWidth()), _layout.Rest);
        _rod.Tension.Forget();
        AttachFixedRows();
    }

    private double TypicalWidth()
    {
        double width = 0;
        foreach (Slot slot in Arrangement.Slots)
            width = Math.Max(width, slot.Width);

        return Math.Max(width, 1);
    }

    // Rows at a fixed point of the wire look up their node again.
    private void AttachFixedRows()
    {
        foreach (ref ContactRow row in _rod.Contacts.Rows)
        {
            if (row.Kind is RowKind.Pin)
                _slide.Attach(ref row, _rod.Mesh);
            if (row.Kind is not (RowKind.Place or RowKind.Direction or RowKind.Turn))
                continue;

            double place = _layout.Places[row.Slot];
            double wanted = row.EndStop ? place + row.Target : place;
            row.Node = _rod.Mesh.NearestNode(wanted);
            if (row.EndStop)
                row.Target = _rod.Mesh.S[row.Node] - place;
        }
    }

    // New nodes at the touching places; the shape is carried over, multipliers and places of contact stay.
    private void MoveNodes()
    {
        PlanTouched();
        int nodes = _rod.Mesh.Nodes;
        _rod.State.CopyTo(_before);
        _meshBefore.CopyFrom(_rod.Mesh);
        ReadOnlySpan<double> places = _plan.Nodes(PerGap, PerSlot, TypicalWidth());
        _rod.Mesh.Build(places, _layout.Rest);
        MeshTransfer.Carry(_meshBefore, _before.AsSpan(0, 8 * nodes), places, _rod.State);
        _rod.Tension.Forget();
        AttachFixedRows();
        _rod.Contacts.ForgetElements();
    }

    private void PlanTouched()
    {
        double least = NodeTracking.LeastShareOfForce * _rod.Contacts.LargestForce();
        _plan.Clear();
        for (int i = 0; i < _from.Length; i++)
            PlanSlot(i, least);
    }

    private void PlanSlot(int index, double least)
    {
        Slot slot = Arrangement.Slots[index];
        if (!Layout.Restrains(slot))
            return;

        if (_slide.IsBefore(index))
            _plan.Add(_slide.PinPlace, insideSlot: false, closest: 0.05);
        if (slot.Hold is Hold.Clamped or Hold.Glide)
        {
            _plan.Add(_layout.Places[index], insideSlot: false, closest: 0.05);
            return;
        }

        bool first = true;
        double far = slot.Width / 2 - 1e-9;
        Span<Station> stations = _rod.Contacts.Stations;
        for (int k = 0; k < stations.Length; k++)
        {
            if (stations[k].Slot != index)
                continue;

            bool edge = Math.Abs(stations[k].U) > far || (slot.Hold is Hold.Point || !Layout.HasEdges(slot));
            if (!edge && !Touches(k, least))
                continue;

            if (stations[k].U > far && !first)
                _plan.DropLastCloserThan(stations[k].S, 0.15);
            _plan.Add(stations[k].S, !first, closest: first ? 0.02 : 0.15);
            first = false;
        }
    }

    private bool Touches(int station, double least)
    {
        foreach (ref readonly ContactRow row in _rod.Contacts.Rows)
        {
            if (row.CanTouch && row.Station == station && Math.Abs(row.Effective) > least)
                return true;
        }

        return false;
    }
}
