using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>A first turn of the section along a guessed shape: level with each slot that can turn it, linear
/// between.</summary>
internal static class StartingTurn
{
    /// <summary>Fills the turns of the state; the centre line must be there already.</summary>
    public static void Fill(
        Equilibrium rod, Arrangement arrangement, List<(int Slot, double S)> anchors)
    {
        Span<double> q = rod.State;
        var at = new List<double>();
        var turn = new List<double>();
        foreach ((int slot, double s) in anchors)
        {
            if (!Turns(arrangement, slot))
                continue;

            at.Add(s);
            turn.Add(TurnAt(rod, q, slot, s));
        }

        if (at.Count == 0)
            return;

        for (int i = 0; i < rod.Mesh.Nodes; i++)
        {
            double s = rod.Mesh.S[i];
            q[8 * i + 6] = Interpolate(at, turn, s);
            q[8 * i + 7] = i < rod.Mesh.Elements ? Interpolate(at, turn, (s + rod.Mesh.S[i + 1]) / 2) : 0;
        }
    }

    private static bool Turns(Arrangement arrangement, int slot) =>
        arrangement.Slots[slot].Hold == Hold.Clamped
        || (!arrangement.Wire.Section.IsRound && Layout.HasWalls(arrangement.Slots[slot]));

    private static double TurnAt(Equilibrium rod, ReadOnlySpan<double> q, int slot, double s)
    {
        ref readonly SlotFrame frame = ref rod.Frames[slot];
        int element = rod.Mesh.Find(s, 0);
        double h = rod.Mesh.Length(element);
        var shape = new Hermite((s - rod.Mesh.S[element]) / h, h);
        Numerics.Vector3 point = shape.Point(
            RodAssembly.Position(q, element), RodAssembly.Slope(q, element),
            RodAssembly.Position(q, element + 1), RodAssembly.Slope(q, element + 1));
        Station station = default;
        station.Slot = slot;
        station.S = s;
        station.TurnAt = s;
        station.NeedsTurn = true;
        station.U = Numerics.Vector3.Dot(frame.Along, point - frame.Centre);
        station.Locate(rod.Mesh, q, frame);
        return station.Crosses ? -station.Turn : 0;
    }

    private static double Interpolate(List<double> at, List<double> value, double s)
    {
        int i = 0;
        while (i < at.Count - 1 && s > at[i + 1])
            i++;

        if (s <= at[0] || i == at.Count - 1)
            return value[i];

        return value[i] + (value[i + 1] - value[i]) * (s - at[i]) / (at[i + 1] - at[i]);
    }
}
