using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <content>Where a cold solve starts: a guessed shape, or the rest shape.</content>
public sealed partial class Engager
{
    private bool StartFromGuess(SlotFrame[] target)
    {
        target.CopyTo(_rod.Frames, 0);
        if (Guess.For(Arrangement, _layout, target) is not { } guess)
            return false;

        _plan.Clear();
        int before = -1;
        _slide.Reset();
        foreach ((int slot, double place) in guess.Anchors)
        {
            if (_slide.IsBefore(slot) && before != slot)
                _plan.Add(_slide.PinPlace, insideSlot: false, closest: 0.05);

            double s = Arrangement.Slots[slot].Hold is Hold.Clamped or Hold.Glide ? _layout.Places[slot] : place;
            _plan.Add(s, before == slot, closest: 0.05);
            before = slot;
        }

        BuildMesh();
        Span<double> q = _rod.State;
        for (int i = 0; i < _rod.Mesh.Nodes; i++)
        {
            (Vector3 point, Vector3 slope) = guess.At(_rod.Mesh.S[i]);
            NodalState.Put(q, i, point, slope);
        }

        StartingTurn.Fill(_rod, Arrangement, guess.Anchors);
        _slide.StandAt(_rod);
        ForgetMultipliers(guess.Anchors);
        return true;
    }

    private void StartFromRest()
    {
        _plan.Clear();
        _slide.Reset();
        for (int i = 0; i < _from.Length; i++)
        {
            Slot slot = Arrangement.Slots[i];
            _rod.Frames[i] = slot.Rest;
            if (_slide.IsBefore(i))
                _plan.Add(_slide.PinPlace, insideSlot: false, closest: 0.05);
            if (!Layout.Restrains(slot))
                continue;

            double half = Layout.HasEdges(slot) ? slot.Width / 2 : 0;
            _plan.Add(_layout.Places[i] - half, insideSlot: false, closest: 0.05);
            if (half > 0)
                _plan.Add(_layout.Places[i] + half, insideSlot: true, closest: 0.05);
        }

        BuildMesh();
        Span<double> q = _rod.State;
        for (int i = 0; i < _rod.Mesh.Nodes; i++)
            NodalState.Put(q, i, _rod.Mesh.RestPosition(i), _rod.Mesh.RestTangent(i));

        foreach (ref Station station in _rod.Contacts.Stations)
            station.S = _layout.Places[station.Slot] + station.U;
        _rod.Contacts.ForgetForces();
    }

    private void ForgetMultipliers(List<(int Slot, double S)> anchors)
    {
        foreach (ref Station station in _rod.Contacts.Stations)
        {
            foreach ((int slot, double s) in anchors)
            {
                if (slot == station.Slot)
                    station.S = s;
            }
        }

        _rod.Contacts.ForgetForces();
    }
}
