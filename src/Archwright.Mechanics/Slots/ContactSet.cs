using System.Runtime.CompilerServices;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Slots;

/// <summary>All restraints between one wire and its slots: gaps, multipliers, and their part of energy, gradient and
/// tangent.</summary>
/// <remarks>
/// Augmented Lagrangian: a row c with multiplier λ and the number ρ acts with p = λ + ρ c where that pushes the right
/// way, and adds p²/(2ρ) to the merit function. After a Newton step λ takes the value of p, so at convergence c = 0 to
/// rounding whatever ρ is (docs/decisions/0003; tests change ρ by a factor of a hundred).
/// Second derivatives: with m = ∂c/∂r at the crossing (normal to the wire but for the turn),
/// δ²c = 2 (m·δr′) δs + (m·r″) δs² + f″ δφ² + f′ δ²φ, δs = −e₁·δr/(e₁·r′). Left out: the change of φ's derivatives by
/// sliding, which is the torque times the slide and does not change what Newton converges to.
/// </remarks>
internal sealed partial class ContactSet
{
    private readonly Station[] _stations;
    private readonly ContactRow[] _rows;
    private readonly ElementVector[] _byRow;
    private readonly int[] _elementOfRow;
    private readonly double[] _bySlide;
    private readonly Pull[] _pulls;
    private readonly InteriorSide[] _sides;

    /// <param name="mostStations">Most places across the slots.</param>
    /// <param name="mostRows">Most restraints.</param>
    /// <param name="room">Where its arrays come from; null for the heap.</param>
    public ContactSet(int mostStations, int mostRows, Room? room = null)
    {
        _stations = Room.TakeCleared<Station>(room, mostStations);
        _rows = Room.TakeCleared<ContactRow>(room, mostRows);
        _byRow = Room.TakeCleared<ElementVector>(room, mostRows);
        _elementOfRow = new int[mostRows];
        _bySlide = new double[mostRows];
        _pulls = Room.TakeCleared<Pull>(room, mostStations);
        _sides = Room.TakeCleared<InteriorSide>(room, 2 * mostRows);
    }

    /// <summary>Places across the slots.</summary>
    public Span<Station> Stations => _stations.AsSpan(0, StationCount);

    /// <summary>Restraints.</summary>
    public Span<ContactRow> Rows => _rows.AsSpan(0, RowCount);

    public int StationCount { get; private set; }

    public int RowCount { get; private set; }

    /// <summary>The number ρ [N/mm].</summary>
    public double Penalty { get; set; } = 1e5;

    /// <summary>Force times gap that an interior-point search aims at [N·mm]; zero for walls that are felt on
    /// touch.</summary>
    public double Interior { get; set; }

    /// <summary>The next evaluation sets slacks and forces of an interior-point search anew.</summary>
    public bool Starting { get; set; }

    /// <summary>Stiffness [N/mm] and force [N] too small to matter in the tangent.</summary>
    private const double Unfelt = 1e-5;

    /// <summary>A clearance below this leaves no play at all [mm].</summary>
    private const double NoPlay = 1e-9;

    /// <summary>Index of a slot that the wire does not reach; −1 when it reaches all.</summary>
    public int MissedSlot { get; private set; } = -1;

    public void Clear()
    {
        StationCount = 0;
        RowCount = 0;
    }

    public int Add(in Station station)
    {
        _stations[StationCount] = station;
        return StationCount++;
    }

    public void Add(in ContactRow row) => _rows[RowCount++] = row;

    /// <summary>Finds all crossings.</summary>
    /// <returns>False when the wire does not reach a slot.</returns>
    public bool Locate(RodMesh mesh, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames) =>
        TryCross(mesh, q, frames, turns: true);

    /// <summary>Finds all crossings, without the turns there.</summary>
    /// <returns>False when the wire does not reach a slot.</returns>
    public bool Reaches(RodMesh mesh, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames) =>
        TryCross(mesh, q, frames, turns: false);

    /// <summary>Finds all crossings, and freezes the turns there: the set stands ready to be applied.</summary>
    /// <returns>False when the wire does not reach a slot.</returns>
    public bool LocateAndFreeze(RodMesh mesh, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames)
    {
        bool reaches = TryCross(mesh, q, frames, turns: false);
        Freeze(mesh, q, frames);
        return reaches;
    }

    private bool TryCross(RodMesh mesh, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames, bool turns)
    {
        MissedSlot = -1;
        for (int i = 0; i < StationCount; i++)
        {
            ref Station station = ref _stations[i];
            station.Locate(mesh, q, frames[station.Slot], turns);
            if (!station.Crosses)
            {
                MissedSlot = station.Slot;
                return false;
            }
        }

        return true;
    }

    /// <summary>Takes points and rates of the turns anew; <see cref="Locate"/> comes first.</summary>
    public void Freeze(RodMesh mesh, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames)
    {
        for (int i = 0; i < StationCount; i++)
            _stations[i].Freeze(mesh, q, frames[_stations[i].Slot]);
    }

    /// <summary>Adds the restraints' part of the gradient and the tangent, and returns their part of the merit
    /// function. <see cref="Locate"/> comes first.</summary>
    /// <param name="q">State.</param>
    /// <param name="frames">Slots.</param>
    /// <param name="gradient">Added to, 8 a node.</param>
    /// <param name="tangent">Added to; null, with the walls held, for the gradient alone. Derivatives then stay those
    /// of the last tangent: they go with its factors. Forces and violations are those of this state.</param>
    /// <param name="mesh">Nodes.</param>
    public double Apply(
        ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames, Span<double> gradient, BlockTridiagonal? tangent,
        RodMesh mesh)
    {
        double merit = 0;
        _pulls.AsSpan(0, StationCount).Clear();
        for (int i = 0; i < RowCount; i++)
        {
            ref ContactRow row = ref _rows[i];
            merit += row.Kind switch
            {
                RowKind.Walls => ApplyWalls(ref row, i, frames, gradient, tangent),
                RowKind.Seating => ApplySeating(ref row, i, frames, gradient, tangent),
                RowKind.Thread => ApplyThread(ref row, i, frames, gradient, tangent),
                RowKind.Friction => ApplyFriction(ref row, i, frames, gradient, tangent),
                _ => ApplyFixed(ref row, i, q, frames, gradient, tangent, mesh),
            };
        }

        for (int i = 0; tangent is not null && i < StationCount; i++)
            AddCurvature(_pulls[i], _stations[i], frames[_stations[i].Slot], tangent);

        return merit;
    }

    /// <summary>Multipliers take the values that the augmented Lagrangian sees; the gradient follows.</summary>
    /// <returns>Change of the merit function [N·mm].</returns>
    public double UpdateMultipliers(Span<double> gradient)
    {
        double merit = 0;
        for (int i = 0; i < RowCount; i++)
        {
            ref ContactRow row = ref _rows[i];
            if (row.IsSpring || row.Inside)
                continue;

            double before = row.Effective;
            double after = before + before - row.Multiplier;
            row.Multiplier = before;
            if (before == 0)
                continue;

            // The new effective value is λ + ρ c = p + (p − λ): as far again as the last step went. A wall that would
            // have to pull lets go.
            if (!row.BothWays && after * before < 0)
                after = 0;

            _byRow[i].AddTo(gradient, _elementOfRow[i], after - before);
            merit += (after - before) * (after + before) / (2 * Penalty);
            row.Effective = after;
        }

        return merit;
    }

    /// <summary>Largest violation [mm, rad·mm] of a row.</summary>
    public double LargestViolation()
    {
        double largest = 0;
        for (int i = 0; i < RowCount; i++)
            largest = Math.Max(largest, _rows[i].Violation);

        return largest;
    }

    /// <summary>Multiplies what the restraints hold with; springs answer for themselves.</summary>
    public void ScaleForces(double factor)
    {
        foreach (ref ContactRow row in Rows)
        {
            if (row.IsSpring)
                continue;

            row.Multiplier *= factor;
            row.Effective *= factor;
        }
    }

    /// <summary>Takes over the places and the restraints of another set of the same slots.</summary>
    public void CopyFrom(ContactSet other)
    {
        other.Stations.CopyTo(Stations);
        other.Rows.CopyTo(Rows);
    }

    /// <summary>Another mesh: the elements of the crossings are looked for from its start.</summary>
    public void ForgetElements()
    {
        foreach (ref Station station in Stations)
            station.Element = 0;
    }

    /// <summary>Forgets multipliers and last forces.</summary>
    public void ForgetForces()
    {
        for (int i = 0; i < RowCount; i++)
        {
            _rows[i].Multiplier = 0;
            _rows[i].Effective = 0;
        }
    }

    /// <summary>The wire slides as a whole: every node becomes the point that far along it, in the same
    /// place.</summary>
    /// <param name="shift">[mm]</param>
    public void Slide(double shift)
    {
        foreach (ref Station station in Stations)
        {
            station.S += shift;
            station.TurnAt += shift;
        }

        foreach (ref ContactRow row in Rows)
        {
            if (row.EndStop)
                row.Target += shift;
        }
    }

    /// <summary>Largest multiplier [N].</summary>
    public double LargestForce()
    {
        double largest = 0;
        for (int i = 0; i < RowCount; i++)
        {
            if (_rows[i].Kind != RowKind.Pin)
                largest = Math.Max(largest, Math.Abs(_rows[i].Effective));
        }

        return largest;
    }

    /// <summary>Whether a row acts on the wire now, or would at the least motion.</summary>
    public bool IsActive(int row) => HoldsSet && MayLetGo(_rows[row])
        ? _rows[row].Touched != 0 || _rows[row].BothWays
        : _rows[row].Effective != 0 || _rows[row].BothWays || _rows[row].Kind == RowKind.Pin;

    /// <summary>Stiffness of a row that is a spring of its own [N/mm]; nil for friction that slips.</summary>
    public double SpringOf(int row) => _rows[row].Kind == RowKind.Seating ? _rows[row].Rise
        : _rows[row].Slips ? 0
        : Grip;

    /// <summary>Stiffness with which an active row stands in the tangent [N/mm].</summary>
    public double StiffnessOfRow(int row) => _rows[row].IsSpring ? SpringOf(row) : Penalty;

    /// <summary>Derivative of a row by the unknowns of its element, at the last evaluation.</summary>
    public (int Element, ElementVector Derivative) Derivative(int row) => (_elementOfRow[row], _byRow[row]);

    private double ApplyWalls(
        ref ContactRow row, int index, ReadOnlySpan<SlotFrame> frames, Span<double> gradient, BlockTridiagonal? tangent)
    {
        ref readonly Station at = ref _stations[row.Station];
        ref readonly SlotFrame frame = ref frames[row.Slot];
        Vector3 axis = Axis(frame, row.Axis);
        double place = Vector3.Dot(axis, at.R - frame.Centre);
        bool turns = row.Corner != 0 || row.Across != 0;
        (double sin, double cos) = turns ? (at.Sin, at.Cos) : (0, 1);
        double middle = place + row.Corner * sin;
        double clearance = row.Room - row.Across * cos;
        row.BothWays = row.Upper && row.Lower && row.Room - row.Across <= NoPlay;
        row.Inside = Interior > 0 && !row.BothWays;
        if (row.Inside && tangent is not null)
        {
            return ApplyInterior(ref row, index, at, frame, axis, middle, clearance, gradient, tangent);
        }

        row.Over = middle - clearance;
        row.Under = -middle - clearance;
        double upper = row.Upper ? Math.Max(0, row.Multiplier + Penalty * row.Over) : 0;
        double lower = row.Lower ? Math.Min(0, row.Multiplier - Penalty * row.Under) : 0;
        double p = row.BothWays ? row.Multiplier + Penalty * middle
            : HoldsSet ? HeldForce(row)
            : upper > 0 ? upper : lower;

        Register(ref row, index, at.Element, p, tangent);
        if (HoldsSet ? row.Touched == 0 && !row.BothWays : p == 0 && !row.BothWays)
            return 0;

        bool onUpper = HoldsSet && !row.BothWays ? row.Touched > 0 : p > 0;
        double across = onUpper ? row.Across : -row.Across;
        double first = row.Corner * cos - across * sin;
        double second = -row.Corner * sin - across * cos;
        AddAtStation(index, at, frame, axis, p, row.Multiplier, first, second, gradient, tangent, Penalty);
        return p * p / (2 * Penalty);
    }

    // A spring with a pull from the start: energy F z + k z²/2, z the lift above the seat.
    private double ApplySeating(
        ref ContactRow row, int index, ReadOnlySpan<SlotFrame> frames, Span<double> gradient, BlockTridiagonal? tangent)
    {
        ref readonly Station at = ref _stations[row.Station];
        ref readonly SlotFrame frame = ref frames[row.Slot];
        Vector3 axis = Axis(frame, row.Axis);
        double lift = Vector3.Dot(axis, at.R - frame.Centre) - row.Seat;
        double p = row.Pull + row.Rise * lift;
        row.Effective = p;
        row.Violation = 0;
        AddAtStation(index, at, frame, axis, p, p, 0, 0, gradient, tangent, row.Rise);
        return row.Pull * lift + row.Rise * lift * lift / 2;
    }

    // The wire within a thread's reach R: c = (x² + y²)/(2R) − R/2, which is smooth on the axis too, where the distance
    // itself has a kink; at the reach its slope is one, so that its multiplier is the thread's force.
    private double ApplyThread(
        ref ContactRow row, int index, ReadOnlySpan<SlotFrame> frames, Span<double> gradient, BlockTridiagonal? tangent)
    {
        ref readonly Station at = ref _stations[row.Station];
        ref readonly SlotFrame frame = ref frames[row.Slot];
        double x = Vector3.Dot(frame.Outward, at.R - frame.Centre);
        double y = Vector3.Dot(frame.Third, at.R - frame.Centre);
        row.Inside = Interior > 0;
        row.Over = (x * x + y * y) / (2 * row.Room) - row.Room / 2;
        double p = HoldsSet ? HeldForce(row) : Math.Max(0, row.Multiplier + Penalty * row.Over);
        double stiffness = Penalty;
        double weight = row.Multiplier;
        double merit = p * p / (2 * Penalty);
        Register(ref row, index, at.Element, p, tangent);
        if (row.Inside && tangent is not null)
        {
            ref InteriorSide wall = ref Side(index, 1, -row.Over, out p, out stiffness);
            weight = wall.Force;
            row.Effective = wall.Force;
            row.Violation = Math.Abs(wall.Gap - wall.Slack);
            merit = -Interior * Math.Log(wall.Slack);
        }
        else if (HoldsSet ? row.Touched == 0 : p == 0)
        {
            return 0;
        }

        Vector3 axis = (frame.Outward * x + frame.Third * y) / row.Room;
        AddAtStation(index, at, frame, axis, p, weight, 0, 0, gradient, tangent, stiffness);
        if (tangent is null)
            return merit;

        _sides[2 * index + 1].Derivative = _byRow[index];
        _sides[2 * index + 1].BySlide = 0;
        AddThreadTurning(at, frame, tangent, weight / row.Room);
        return merit;
    }

    // (δx² + δy²)/R, both taken along the wire as the force is.
    private static void AddThreadTurning(in Station at, in SlotFrame frame, BlockTridiagonal tangent, double weight)
    {
        foreach (Vector3 across in (ReadOnlySpan<Vector3>)[frame.Outward, frame.Third])
        {
            ElementVector turning = ElementVector.OfPoint(NormalToWire(across, at, frame, 0), at.Shape);
            ElementVector.AddOuter(tangent, at.Element, turning, turning * weight);
        }
    }

    // Second derivatives take the multiplier, not p: a slot that has just moved makes a p of thousands of newtons,
    // which would spoil the tangent; at the solution the two are equal, so nothing of Newton's speed is lost.
    private void AddAtStation(
        int index, in Station at, in SlotFrame frame, Vector3 axis, double p, double weight, double first,
            double second,
        Span<double> gradient, BlockTridiagonal? tangent, double stiffness)
    {
        Vector3 m = NormalToWire(axis, at, frame, first);
        ElementVector derivative = AtStation(at, m, first);
        if (tangent is null)
        {
            derivative.AddTo(gradient, at.Element, p);
            return;
        }

        _byRow[index] = derivative;
        _elementOfRow[index] = at.Element;
        _bySlide[index] = first * at.TurnBySlide;
        derivative.AddTo(gradient, at.Element, p);

        // A wall far away adds nothing that the tangent would feel.
        if (stiffness < Unfelt && Math.Abs(weight) < Unfelt)
            return;

        ElementVector.AddOuter(tangent, at.Element, derivative, derivative * stiffness);
        _pulls[_rows[index].Station].Add(m, first, second, weight);
    }

    // Second derivatives of all restraints of a station at once: they are linear in the forces.
    private static void AddCurvature(in Pull pull, in Station at, in SlotFrame frame, BlockTridiagonal tangent)
    {
        if (!pull.IsFelt)
            return;

        ElementVector slide = ElementVector.OfPoint(frame.Along * (-1 / at.Advance), at.Shape);
        ElementVector turnAway = ElementVector.OfSlope(pull.OnWire, 0, at.Shape);
        ElementVector.AddOuter(tangent, at.Element, turnAway + slide * Vector3.Dot(pull.OnWire, at.C), slide);
        ElementVector.AddOuter(tangent, at.Element, slide, turnAway);
        if (!pull.Turns)
            return;

        ElementVector turn = ElementVector.OfSlope(at.TurnByP, 1, at.TurnShape) + slide * at.TurnRate;
        ElementVector.AddOuter(tangent, at.Element, turn, turn * pull.ByTurnTwice);
        Span<double> h = stackalloc double[9];
        at.TurnByPByP(frame, h);
        for (int i = 0; i < 3; i++)
        {
            Vector3 unit = new(i == 0 ? 1 : 0, i == 1 ? 1 : 0, i == 2 ? 1 : 0);
            Vector3 row = new(h[3 * i], h[3 * i + 1], h[3 * i + 2]);
            ElementVector.AddOuter(
                tangent, at.Element,
                ElementVector.OfSlope(unit, 0, at.TurnShape),
                ElementVector.OfSlope(row * pull.ByTurn, 0, at.TurnShape));
        }
    }

    // The forces of a station's restraints, each with its derivatives, summed.
    private struct Pull
    {
        public Vector3 OnWire;
        public double ByTurn, ByTurnTwice;

        public readonly bool IsFelt => OnWire != default;

        public readonly bool Turns => ByTurn != 0 || ByTurnTwice != 0;

        public void Add(Vector3 normal, double byTurn, double byTurnTwice, double force)
        {
            OnWire += normal * force;
            ByTurn += byTurn * force;
            ByTurnTwice += byTurnTwice * force;
        }
    }

    /// <summary>∂c/∂r: the axis, less what sliding takes up.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector3 NormalToWire(Vector3 axis, in Station at, in SlotFrame frame, double byTurn)
    {
        double rate = Vector3.Dot(axis, at.P) + byTurn * at.TurnRate;
        return axis - frame.Along * (rate / at.Advance);
    }

    private double ApplyFixed(
        ref ContactRow row, int index, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames,
        Span<double> gradient, BlockTridiagonal? tangent, RodMesh mesh)
    {
        FixedGap(row, q, frames[row.Slot], mesh, out double c, out ElementVector derivative, out int element);
        if (!row.Upper && !row.Lower)
        {
            row.Inside = false;
            row.BothWays = false;
            Register(ref row, index, element, 0, tangent);
            row.Violation = 0;
            return 0;
        }

        row.BothWays = row.Upper && row.Lower;
        row.Inside = Interior > 0 && !row.BothWays;
        if (row.Inside && tangent is not null)
            return ApplyStop(ref row, index, element, c, derivative, gradient, tangent);

        row.Over = c;
        row.Under = -c;
        double p = row.Multiplier + Penalty * c;
        if (!row.BothWays && HoldsSet)
            p = HeldForce(row);
        else if ((!row.Upper && p > 0) || (!row.Lower && p < 0))
            p = 0;

        Register(ref row, index, element, p, tangent);
        if (p == 0 && !row.BothWays && row.Touched == 0)
            return 0;

        derivative.AddTo(gradient, element, p);
        if (tangent is null)
            return 0;

        _byRow[index] = derivative;
        _bySlide[index] = row.EndStop ? -1 : 0;
        ElementVector.AddOuter(tangent, element, derivative, derivative * Penalty);
        return p * p / (2 * Penalty);
    }

    private double ApplyStop(
        ref ContactRow row, int index, int element, double c, in ElementVector derivative,
        Span<double> gradient, BlockTridiagonal tangent)
    {
        int side = row.Upper ? 1 : -1;
        ref InteriorSide wall = ref Side(index, side, -side * c, out double p, out double stiffness);
        wall.Derivative = derivative;
        wall.BySlide = -1;
        Register(ref row, index, element, side * wall.Force, tangent);
        row.Violation = Math.Abs(wall.Gap - wall.Slack);
        derivative.AddTo(gradient, element, side * p);
        ElementVector.AddOuter(tangent, element, derivative, derivative * stiffness);
        return -Interior * Math.Log(wall.Slack);
    }

    private static void FixedGap(
        in ContactRow row, ReadOnlySpan<double> q, in SlotFrame frame, RodMesh mesh,
        out double c, out ElementVector derivative, out int element)
    {
        element = Math.Min(row.Node, mesh.Elements - 1);
        double u = row.Node - element;
        var shape = new Hermite(u, mesh.Length(element));
        Vector3 axis = Axis(frame, row.Axis);
        if (row.Kind == RowKind.Pin)
        {
            axis = row.PinNormal;
            c = Vector3.Dot(axis, RodAssembly.Position(q, row.Node) - row.PinAt);
            derivative = ElementVector.OfPoint(axis, shape);
        }
        else if (row.Kind == RowKind.Place)
        {
            c = Vector3.Dot(axis, RodAssembly.Position(q, row.Node) - frame.Centre) - row.Target;
            derivative = ElementVector.OfPoint(axis, shape);
        }
        else if (row.Kind == RowKind.Direction)
        {
            c = Vector3.Dot(axis, RodAssembly.Slope(q, row.Node));
            derivative = ElementVector.OfSlope(axis, 0, shape);
        }
        else
        {
            // With the tangent held along the slot's axis the turn is the angle between outward and the width.
            Station at = default;
            at.S = mesh.S[row.Node];
            at.TurnAt = at.S;
            at.Element = element;
            at.NeedsTurn = true;
            at.U = Vector3.Dot(frame.Along, RodAssembly.Position(q, row.Node) - frame.Centre);
            at.Locate(mesh, q, frame);
            c = at.Turn;
            derivative = ElementVector.OfSlope(at.TurnByP, 1, shape);
        }

    }

    private void Register(ref ContactRow row, int index, int element, double p, BlockTridiagonal? tangent)
    {
        row.Effective = p;
        row.Violation = Math.Abs(p - row.Multiplier) / Penalty;
        if (tangent is not null)
            _elementOfRow[index] = element;
    }
}
