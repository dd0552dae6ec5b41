using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>How hard the solver is to try.</summary>
public sealed record EngagementOptions
{
    /// <summary>The usual settings.</summary>
    public static EngagementOptions Default { get; } = new();

    /// <summary>Elements in a usual gap between two slots (6 mm); longer gaps get more, in proportion. More is finer;
    /// <c>docs/theory/rod.md</c> has the table of error against unknowns.</summary>
    public int ElementsPerGap { get; init; } = 3;

    /// <summary>Elements along the width of a slot.</summary>
    public int ElementsPerSlot { get; init; } = 3;

    /// <summary>Largest number of Newton iterations of one engagement before it is given up.</summary>
    public int MostIterations { get; init; } = 600;

    /// <summary>The number ρ of the augmented Lagrangian, relative to its usual value. The result does not depend on it.</summary>
    public double ContactNumber { get; init; } = 1;

    /// <summary>Whether an engagement may start from a guessed shape in the displaced slots. Otherwise it follows the path from the
    /// rest shape, as wires with memory must.</summary>
    public bool StartFromGuess { get; init; } = true;
}

/// <summary>Engages one wire in one set of slots. Holds the workspace: one instance a thread.</summary>
/// <remarks>
/// Cold: a guessed shape in the displaced slots, Newton's method, nodes moved to where the wire touches, Newton again. Where that fails, the
/// slots travel from where the wire is passive to where they are, in steps that shorten as needed. Warm (<see cref="Apply"/>): from
/// the last solution.
/// </remarks>
public sealed class Engager
{
    private const double FirstAim = 0.05;
    private const double NextAim = 1e-6;
    private const double TouchingForce = 1e-4;
    private const double AimAgain = 1e-3;
    private const int NearIterations = 10;
    private const int DirectIterations = 80;
    private const int StepIterations = 40;
    private const double ShortestStride = 1.0 / 512;
    private const double NodeTolerance = 0.08;
    private const int MostRemeshes = 16;

    private readonly Layout _layout;
    private readonly Equilibrium<ElasticSection> _rod;
    private readonly MeshPlan _plan;
    private readonly double[] _saved;
    private readonly double[] _savedMultipliers;
    private readonly RodMesh _savedMesh;
    private readonly double[] _before;
    private readonly RodMesh _meshBefore;
    private readonly SlotFrame[] _from;
    private readonly Slide _slide;
    private int _iterationsBefore;

    /// <summary>Prepares the wire in its rest shape.</summary>
    /// <exception cref="ArgumentException">The arrangement is impossible: no slot or too many, slots that coincide or run backwards, a wire
    /// thicker than a slot is high or deep.</exception>
    public Engager(Arrangement arrangement, EngagementOptions? options = null)
    {
        ArrangementCheck.Throw(arrangement);
        Arrangement = arrangement;
        Options = options ?? EngagementOptions.Default;
        _layout = Layout.Of(arrangement);

        int stations = 0;
        double length = _layout.Places[^1] - _layout.Places[0];
        foreach (Slot slot in arrangement.Slots)
            stations += Restraints.MostStations(slot.Width);

        int nodes = 16 + stations
            + arrangement.Slots.Length * (Options.ElementsPerSlot + Options.ElementsPerGap)
            + (int)(6 * Options.ElementsPerGap * length / MeshPlan.UsualGap);
        _plan = new MeshPlan(nodes);
        _rod = new Equilibrium<ElasticSection>(
            nodes, stations, 4 * stations + 6 * arrangement.Slots.Length + 2, arrangement.Slots.Length,
            new ElasticSection(arrangement.Wire.Section, arrangement.Wire.Alloy),
            arrangement.Wire.Alloy.Young * arrangement.Wire.Section.Area)
        {
            Rest = _layout.Rest,
        };
        _savedMesh = new RodMesh(nodes);
        _meshBefore = new RodMesh(nodes);
        _before = new double[8 * nodes];
        _saved = new double[8 * nodes];
        _savedMultipliers = new double[4 * stations + 6 * arrangement.Slots.Length + 2];
        _from = new SlotFrame[arrangement.Slots.Length];
        _rod.ContactNumber = ContactNumber.Usual * Options.ContactNumber;
        _slide = new Slide(arrangement, _layout);
    }

    /// <summary>What is engaged.</summary>
    public Arrangement Arrangement { get; private set; }

    /// <summary>How.</summary>
    public EngagementOptions Options { get; }

    internal Equilibrium<ElasticSection> Rod => _rod;

    internal Layout Layout => _layout;

    /// <summary>Brings the wire from its rest shape into the slots.</summary>
    /// <exception cref="OperationCanceledException">It was asked to stop.</exception>
    public EngagementResult Engage(CancellationToken cancellation = default)
    {
        _iterationsBefore = _rod.Iterations;
        Restraints.Fill(_rod.Contacts, Arrangement, _layout.Places);
        var target = new SlotFrame[_from.Length];
        for (int i = 0; i < target.Length; i++)
            target[i] = Arrangement.Slots[i].Actual;

        SearchEnd end = SearchEnd.Stalled;
        if (Options.StartFromGuess && StartFromGuess(target))
        {
            end = Settle(DirectIterations, near: false, cancellation);
        }

        if (end != SearchEnd.Converged)
        {
            StartFromRest();
            end = Settle(DirectIterations, near: false, cancellation);
            if (end == SearchEnd.Converged)
                end = Travel(target, cancellation);
        }

        return Result(end);
    }

    /// <summary>Goes on from the last converged state (history kept): slots move, or the temperature changes.</summary>
    /// <exception cref="InvalidOperationException"><see cref="Engage"/> has not been called.</exception>
    /// <exception cref="ArgumentException">A moved slot does not exist.</exception>
    /// <exception cref="OperationCanceledException">It was asked to stop.</exception>
    public EngagementResult Apply(Step step, CancellationToken cancellation = default)
    {
        if (_rod.Mesh.Nodes == 0)
            throw new InvalidOperationException("Engage the wire first.");

        _iterationsBefore = _rod.Iterations;
        var target = new SlotFrame[_from.Length];
        _rod.Frames.CopyTo(target, 0);
        var slots = Arrangement.Slots.ToBuilder();
        foreach ((int slot, SlotFrame actual) in step.Moves.IsDefault ? [] : step.Moves)
        {
            if (slot < 0 || slot >= target.Length)
                throw new ArgumentException($"There is no slot {slot}.", nameof(step));

            target[slot] = actual;
            slots[slot] = slots[slot] with { Actual = actual };
        }

        Arrangement = Arrangement with
        {
            Slots = slots.MoveToImmutable(),
            Temperature = step.Temperature ?? Arrangement.Temperature,
        };
        return Result(Travel(target, cancellation));
    }

    /// <summary>Condensed tangent stiffness of the engaged wire at its slots: change of the load on the teeth (force, and
    /// moment about the moving slot centre, in the frame of the case) for small motions of the slots (shift, then turn about the slot's
    /// centre), row-major 6n × 6n [N/mm, N/rad, N, N·mm/rad].</summary>
    /// <exception cref="InvalidOperationException">The wire is not engaged.</exception>
    public double[] TangentStiffness()
    {
        if (_rod.Mesh.Nodes == 0)
            throw new InvalidOperationException("Engage the wire first.");

        return Condensation.Stiffness(_rod, Arrangement.Slots.Length);
    }

    // Slots travel from where they are to the target; the stride is halved where no equilibrium is found and doubled after a success.
    private SearchEnd Travel(SlotFrame[] target, CancellationToken cancellation)
    {
        _rod.Frames.CopyTo(_from, 0);
        double done = 0;
        double stride = 1;
        var last = SearchEnd.Converged;
        while (done < 1)
        {
            if (_rod.Iterations - _iterationsBefore > Options.MostIterations)
                return SearchEnd.OutOfIterations;

            Save();
            double next = Math.Min(1, done + stride);
            MoveSlots(target, next);
            last = Settle(NearIterations, near: true, cancellation);
            if (last != SearchEnd.Converged)
            {
                Restore();
                MoveSlots(target, done, carryWire: false);
                MoveSlots(target, next);
                last = Settle(StepIterations, near: false, cancellation);
            }

            if (last == SearchEnd.Converged)
            {
                done = next;
                stride *= 2;
                continue;
            }

            Restore();
            MoveSlots(target, done, carryWire: false);
            stride /= 2;
            if (stride < ShortestStride)
                return last;
        }

        return last;
    }

    private void MoveSlots(SlotFrame[] target, double share, bool carryWire = true)
    {
        Span<Vector3> shift = stackalloc Vector3[_from.Length];
        for (int i = 0; i < _from.Length; i++)
        {
            SlotFrame next = FramePath.Between(_from[i], target[i], share);
            shift[i] = next.Centre - _rod.Frames[i].Centre;
            _rod.Frames[i] = next;
        }

        if (carryWire)
            CarryWire(shift);
    }

    // The wire goes along with the slots, by interpolation of their shifts: a better start than leaving it behind.
    private void CarryWire(ReadOnlySpan<Vector3> shift)
    {
        ReadOnlySpan<double> s = _rod.Mesh.S;
        Span<double> q = _rod.State;
        double[] places = _layout.Places;
        for (int i = 0; i < s.Length; i++)
        {
            int k = 0;
            while (k < places.Length - 2 && s[i] > places[k + 1])
                k++;

            Vector3 move = shift[0];
            Vector3 rate = default;
            if (places.Length > 1)
            {
                double span = places[k + 1] - places[k];
                double u = Math.Clamp((s[i] - places[k]) / span, 0, 1);
                double smooth = u * u * (3 - 2 * u);
                move = shift[k] * (1 - smooth) + shift[k + 1] * smooth;
                rate = (shift[k + 1] - shift[k]) * (6 * u * (1 - u) / span);
            }

            q[8 * i] += move.X;
            q[8 * i + 1] += move.Y;
            q[8 * i + 2] += move.Z;
            q[8 * i + 3] += rate.X;
            q[8 * i + 4] += rate.Y;
            q[8 * i + 5] += rate.Z;
        }
    }

    // Equilibrium; then nodes go to the touching places and the wire slides to where nothing drives it along any more, until both agree.
    private SearchEnd Settle(int mostIterations, bool near, CancellationToken cancellation)
    {
        _slide.Place(_rod);
        _slide.Begin();
        double aim = _rod.Contacts.LargestForce() > 0 ? AimAgain : FirstAim;
        SearchEnd end = near
            ? _rod.SearchNear(mostIterations, loose: true, cancellation)
            : _rod.SearchInside(mostIterations, aim, restart: true, loose: true, cancellation);
        for (int pass = 0; pass < MostRemeshes && end == SearchEnd.Converged; pass++)
        {
            // Contacts off the nodes put a false force on the pin, so the nodes go first.
            if (NodesAreOff())
                MoveNodes();
            else if (_slide.Wants(_rod, out double shift))
                ShiftNodes(shift);
            else
                break;

            end = Again(mostIterations, near, loose: true, cancellation);
        }

        end = end == SearchEnd.Converged ? Again(mostIterations, near, loose: false, cancellation) : end;
        if (!near)
            _rod.Contacts.LeaveInterior(TouchingForce);

        return end;
    }

    private SearchEnd Again(int mostIterations, bool near, bool loose, CancellationToken cancellation) => near
        ? _rod.SearchNear(mostIterations, loose, cancellation)
        : _rod.SearchInside(mostIterations, NextAim, restart: false, loose, cancellation);

    // The whole wire slides through the slots: every node keeps its place in space and becomes another point of the wire.
    private void ShiftNodes(double shift)
    {
        _meshBefore.CopyFrom(_rod.Mesh);
        _rod.Mesh.Build(_meshBefore.S, _layout.Rest, shift);
        foreach (ref Station station in _rod.Contacts.Stations)
        {
            station.S += shift;
            station.TurnAt += shift;
        }
    }

    private bool NodesAreOff()
    {
        double least = NodeTracking.LeastShareOfForce * _rod.Contacts.LargestForce();
        ReadOnlySpan<double> s = _rod.Mesh.S;
        foreach (ref readonly ContactRow row in _rod.Contacts.Rows)
        {
            if (row.Kind is not (RowKind.Walls or RowKind.Thread) || Math.Abs(row.Effective) <= least)
                continue;

            ref readonly Station station = ref _rod.Contacts.Stations[row.Station];
            double before = station.S - s[station.Element];
            double after = s[station.Element + 1] - station.S;
            if (Math.Min(before, after) > NodeTolerance)
                return true;
        }

        return false;
    }

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
            PutNode(q, i, point, slope);
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
            PutNode(q, i, _rod.Mesh.RestPosition(i), _rod.Mesh.RestTangent(i));

        foreach (ref Station station in _rod.Contacts.Stations)
            station.S = _layout.Places[station.Slot] + station.U;
        _rod.Contacts.ForgetForces();
    }

    private static void PutNode(Span<double> q, int node, Vector3 point, Vector3 slope)
    {
        Span<double> at = q.Slice(8 * node, 8);
        at[0] = point.X;
        at[1] = point.Y;
        at[2] = point.Z;
        at[3] = slope.X;
        at[4] = slope.Y;
        at[5] = slope.Z;
        at[6] = 0;
        at[7] = 0;
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

    private void BuildMesh()
    {
        _rod.Mesh.Build(_plan.Nodes(Options.ElementsPerGap, Options.ElementsPerSlot, TypicalWidth()), _layout.Rest);
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
        ReadOnlySpan<double> s = _rod.Mesh.S;
        foreach (ref ContactRow row in _rod.Contacts.Rows)
        {
            if (row.Kind is RowKind.Pin)
                _slide.Attach(ref row, s);
            if (row.Kind is not (RowKind.Place or RowKind.Direction or RowKind.Turn))
                continue;

            double place = _layout.Places[row.Slot];
            double wanted = row.EndStop ? place + row.Target : place;
            int nearest = 0;
            for (int i = 1; i < s.Length; i++)
            {
                if (Math.Abs(s[i] - wanted) < Math.Abs(s[nearest] - wanted))
                    nearest = i;
            }

            row.Node = nearest;
            if (row.EndStop)
                row.Target = s[nearest] - place;
        }
    }

    // New nodes at the touching places; the shape is carried over, multipliers and places of contact stay.
    private void MoveNodes()
    {
        double least = NodeTracking.LeastShareOfForce * _rod.Contacts.LargestForce();
        _plan.Clear();
        for (int i = 0; i < _from.Length; i++)
            PlanSlot(i, least);

        int nodes = _rod.Mesh.Nodes;
        _rod.State.CopyTo(_before);
        _meshBefore.CopyFrom(_rod.Mesh);
        ReadOnlySpan<double> places = _plan.Nodes(Options.ElementsPerGap, Options.ElementsPerSlot, TypicalWidth());
        _rod.Mesh.Build(places, _layout.Rest);
        MeshTransfer.Carry(_meshBefore, _before.AsSpan(0, 8 * nodes), places, _rod.State);
        AttachFixedRows();
        foreach (ref Station station in _rod.Contacts.Stations)
            station.Element = 0;
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
            bool contact = row.Kind is RowKind.Walls or RowKind.Thread;
            if (contact && row.Station == station && Math.Abs(row.Effective) > least)
                return true;
        }

        return false;
    }

    private void Save()
    {
        _rod.State.CopyTo(_saved);
        for (int i = 0; i < _rod.Contacts.RowCount; i++)
            _savedMultipliers[i] = _rod.Contacts.Rows[i].Multiplier;
        _savedMesh.CopyFrom(_rod.Mesh);
    }

    private void Restore()
    {
        _rod.Mesh.CopyFrom(_savedMesh);
        AttachFixedRows();
        _saved.AsSpan(0, 8 * _rod.Mesh.Nodes).CopyTo(_rod.State);
        for (int i = 0; i < _rod.Contacts.RowCount; i++)
            _rod.Contacts.Rows[i].Multiplier = _savedMultipliers[i];
        foreach (ref Station station in _rod.Contacts.Stations)
            station.Element = 0;
    }

    private EngagementResult Result(SearchEnd end) =>
        Reading.Of(_rod, _layout, Arrangement, end, _rod.Iterations - _iterationsBefore);
}
