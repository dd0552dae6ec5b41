using System.Collections.Immutable;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>Reads the result out of the workspace.</summary>
internal static class Reading
{
    private const double Touching = 1e-4;
    private const int PointsAnElement = 4;

    /// <summary>The result as it stands.</summary>
    public static EngagementResult Of(
        Equilibrium rod, Layout layout, Arrangement arrangement, SearchEnd end, int iterations)
    {
        bool converged = end == SearchEnd.Converged;
        ImmutableArray<SlotLoad> slots = converged ? Loads(rod, layout, arrangement) : [];
        (double strain, double at) = converged ? LargestStrain(rod, arrangement.Wire.Section) : (0, 0);
        return new EngagementResult
        {
            Converged = converged,
            Residual = converged ? rod.Residual : 0,
            HeldAlong = converged ? PinForce(rod) : 0,
            Obstacle = converged ? WeakTie(slots, arrangement) : NoEquilibrium(rod, arrangement, end),
            Slots = slots,
            LargestStrain = strain,
            LargestStrainNear = NearestSlot(layout, at),
            Set = converged ? PermanentSet.Of(rod, layout) : 0,
            TransformedShare = converged ? rod.Law.LargestTransformedShare() : 0,
            StoredEnergy = converged ? rod.Law.Energy(rod.Mesh, rod.Tie * rod.Stretch, rod.State) : 0,
            CentreLine = converged ? CentreLine(rod) : [],
            Iterations = iterations,
            Temperature = arrangement.Temperature,
        };
    }

    // A pin that still holds a wire which finds no rest along the arch is a force out of balance.
    private static double PinForce(Equilibrium rod)
    {
        ReadOnlySpan<ContactRow> rows = rod.Contacts.Rows;
        return rows.Length > 0 && rows[^1].Kind == RowKind.Pin ? Math.Abs(rows[^1].Effective) : 0;
    }

    private static ImmutableArray<SlotLoad> Loads(
        Equilibrium rod, Layout layout, Arrangement arrangement)
    {
        var loads = ImmutableArray.CreateBuilder<SlotLoad>(arrangement.Slots.Length);
        for (int i = 0; i < arrangement.Slots.Length; i++)
            loads.Add(Load(rod, layout, arrangement.Slots[i], i));

        return loads.MoveToImmutable();
    }

    private static SlotLoad Load(Equilibrium rod, Layout layout, Slot slot, int index)
    {
        Vector3 force = default;
        Vector3 moment = default;
        double pull = 0;
        double friction = 0;
        bool before = false;
        bool after = false;
        ReadOnlySpan<ContactRow> rows = rod.Contacts.Rows;
        for (int r = 0; r < rows.Length; r++)
        {
            ref readonly ContactRow row = ref rows[r];
            if (row.Slot != index || row.Effective == 0 || row.Kind == RowKind.Pin)
                continue;

            (Vector3 f, Vector3 m) = rod.Contacts.OnTooth(r, rod.State, rod.Frames, rod.Mesh);
            force += f;
            moment += m;
            if (row.Kind == RowKind.Friction)
            {
                friction += Vector3.Dot(f, rod.Frames[index].Along);
                continue;
            }

            bool lid = row.Kind == RowKind.Walls && row.Axis == 1 && row.Effective > 0;
            if (lid || row.Kind is RowKind.Seating or RowKind.Thread)
                pull += row.Effective;
            if (Math.Abs(row.Effective) <= Touching || row.Kind == RowKind.Seating)
                continue;

            double u = row.Kind == RowKind.Walls ? rod.Contacts.Stations[row.Station].U : 0;
            before |= u <= 0;
            after |= u >= 0;
        }

        ContactState contact = before && after ? ContactState.BothEdges
            : before || after ? ContactState.OneEdge : ContactState.None;
        return new SlotLoad(
            slot.Label, new Wrench(force, moment, rod.Frames[index].Centre), contact, Drawn(rod, layout, index), pull,
            friction);
    }

    private static double Drawn(Equilibrium rod, Layout layout, int index)
    {
        foreach (ref readonly Station station in rod.Contacts.Stations)
        {
            if (station.Slot == index && station.U == 0)
                return station.S - layout.Places[index];
        }

        return 0;
    }

    // Curvature is nearly linear along an element; it is carried from the Gauss points to the ends, where contact
    // forces make its peaks.
    private static (double Strain, double At) LargestStrain(Equilibrium rod, Section section)
    {
        double largest = 0;
        double at = 0;
        double reach = Math.Sqrt(3);
        for (int e = 0; e < rod.Mesh.Elements; e++)
        {
            SectionStrain a = RodAssembly.StrainAt(rod.Mesh, rod.State, RodMesh.Points * e);
            SectionStrain b = RodAssembly.StrainAt(rod.Mesh, rod.State, RodMesh.Points * e + 1);
            for (int end = 0; end < 2; end++)
            {
                double onB = end == 0 ? (1 - reach) / 2 : (1 + reach) / 2;
                double strain = section.LargestFibreStrain(
                    a.Axial + (b.Axial - a.Axial) * onB,
                    a.OverThickness + (b.OverThickness - a.OverThickness) * onB,
                    a.OverWidth + (b.OverWidth - a.OverWidth) * onB);
                if (strain > largest)
                    (largest, at) = (strain, rod.Mesh.S[e + end]);
            }
        }

        return (largest, at);
    }

    private static int NearestSlot(Layout layout, double s)
    {
        int nearest = 0;
        for (int i = 1; i < layout.Places.Length; i++)
        {
            if (Math.Abs(layout.Places[i] - s) < Math.Abs(layout.Places[nearest] - s))
                nearest = i;
        }

        return nearest;
    }

    // Without the free ends beyond the last slots, which are only there so that the wire is long enough.
    private static ImmutableArray<Vector3> CentreLine(Equilibrium rod)
    {
        var line = ImmutableArray.CreateBuilder<Vector3>();
        RodMesh mesh = rod.Mesh;
        Span<double> q = rod.State;
        const double shownTail = 1.5 / MeshPlan.Overhang;
        for (int e = 0; e < mesh.Elements; e++)
        {
            double from = e == 0 ? 1 - shownTail : 0;
            double to = e == mesh.Elements - 1 ? shownTail : 1;
            for (int k = 0; k < PointsAnElement; k++)
            {
                double u = from + (to - from) * k / PointsAnElement;
                line.Add(PointAt(mesh, q, e, u));
            }
        }

        line.Add(PointAt(mesh, q, mesh.Elements - 1, shownTail));
        return line.ToImmutable();
    }

    private static Vector3 PointAt(RodMesh mesh, ReadOnlySpan<double> q, int element, double u) =>
        new Hermite(u, mesh.Length(element)).Point(
            RodAssembly.Position(q, element), RodAssembly.Slope(q, element),
            RodAssembly.Position(q, element + 1), RodAssembly.Slope(q, element + 1));

    private static Obstacle? WeakTie(ImmutableArray<SlotLoad> loads, Arrangement arrangement)
    {
        int worst = -1;
        double excess = 0;
        for (int i = 0; i < loads.Length; i++)
        {
            double over = loads[i].PullOnTie - arrangement.Slots[i].Tie.Holds;
            if (over > excess)
                (worst, excess) = (i, over);
        }

        if (worst < 0)
            return null;

        double holds = arrangement.Slots[worst].Tie.Holds;
        return new Obstacle(worst, loads[worst].PullOnTie, holds,
            $"At {loads[worst].Label} the wire pulls at the tie with {loads[worst].PullOnTie:0.0} N; "
            + $"the tie holds {holds:0.0} N.");
    }

    private static Obstacle NoEquilibrium(Equilibrium rod, Arrangement arrangement, SearchEnd end)
    {
        int hardest = HardestSlot(rod, out double force);
        int slot = end == SearchEnd.Missed && rod.Contacts.MissedSlot >= 0 ? rod.Contacts.MissedSlot
            : hardest >= 0 ? hardest : MostDisplaced(arrangement);
        string label = arrangement.Slots[slot].Label;
        string reason = end switch
        {
            SearchEnd.Missed => $"The wire does not stay in the slot at {label}: it would have to run across it, "
                + "or is drawn out of it.",
            SearchEnd.OutOfIterations =>
                $"No resting shape was found for the wire within the allowed effort; it is hardest at {label}.",
            _ => $"The wire finds no resting shape with every slot engaged; it gives way at {label}.",
        };
        return new Obstacle(slot, force, double.NaN, reason);
    }

    private static int MostDisplaced(Arrangement arrangement)
    {
        int most = 0;
        double Shift(int i) => (arrangement.Slots[i].Actual.Centre - arrangement.Slots[i].Rest.Centre).Length;
        for (int i = 1; i < arrangement.Slots.Length; i++)
        {
            if (Shift(i) > Shift(most))
                most = i;
        }

        return most;
    }

    private static int HardestSlot(Equilibrium rod, out double force)
    {
        int slot = -1;
        force = 0;
        foreach (ref readonly ContactRow row in rod.Contacts.Rows)
        {
            if (row.Kind != RowKind.Pin && Math.Abs(row.Effective) > force)
                (slot, force) = (row.Slot, Math.Abs(row.Effective));
        }

        return slot;
    }
}
