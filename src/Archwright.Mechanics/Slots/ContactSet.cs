using System.Runtime.CompilerServices;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Slots;

/// <summary>All restraints between one wire and its slots: gaps, multipliers, and their part of energy, gradient and tangent.</summary>
/// <remarks>
/// Augmented Lagrangian: a row c with multiplier λ and the number ρ acts with p = λ + ρ c where that pushes the right way, and
/// adds p²/(2ρ) to the merit function. After a Newton step λ takes the value of p, so at convergence c = 0 to
/// rounding whatever ρ is (docs/decisions/0003; tests change ρ by a factor of a hundred).
/// Second derivatives: with m = ∂c/∂r at the crossing (normal to the wire but for the turn),
/// δ²c = 2 (m·δr′) δs + (m·r″) δs² + f″ δφ² + f′ δ²φ, δs = −e₁·δr/(e₁·r′). Left out: the change of φ's derivatives by sliding,
/// which is the torque times the slide and does not change what Newton converges to.
/// </remarks>
internal sealed class ContactSet
{
    private readonly Station[] _stations;
    private readonly ContactRow[] _rows;
    private readonly ElementVector[] _byRow;
    private readonly int[] _elementOfRow;
    private readonly InteriorSide[] _sides;

    public ContactSet(int mostStations, int mostRows)
    {
        _stations = new Station[mostStations];
        _rows = new ContactRow[mostRows];
        _byRow = new ElementVector[mostRows];
        _elementOfRow = new int[mostRows];
        _sides = new InteriorSide[2 * mostRows];
    }

    /// <summary>Places across the slots.</summary>
    public Span<Station> Stations => _stations.AsSpan(0, StationCount);

    /// <summary>Restraints.</summary>
    public Span<ContactRow> Rows => _rows.AsSpan(0, RowCount);

    public int StationCount { get; private set; }

    public int RowCount { get; private set; }

    /// <summary>The number ρ [N/mm].</summary>
    public double Penalty { get; set; } = 1e5;

    /// <summary>Force times gap that an interior-point search aims at [N·mm]; zero for walls that are felt on touch.</summary>
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
    public bool Locate(RodMesh mesh, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames)
    {
        MissedSlot = -1;
        for (int i = 0; i < StationCount; i++)
        {
            ref Station station = ref _stations[i];
            station.Locate(mesh, q, frames[station.Slot]);
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

    /// <summary>Adds the restraints' part of the gradient and the tangent, and returns their part of the merit function.
    /// <see cref="Locate"/> comes first.</summary>
    public double Apply(
        ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames, Span<double> gradient, BlockTridiagonal tangent, RodMesh mesh)
    {
        double merit = 0;
        for (int i = 0; i < RowCount; i++)
        {
            ref ContactRow row = ref _rows[i];
            merit += row.Kind switch
            {
                RowKind.Walls => ApplyWalls(ref row, i, frames, gradient, tangent),
                RowKind.Seating => ApplySeating(ref row, i, frames, gradient, tangent),
                RowKind.Thread => ApplyThread(ref row, i, frames, gradient, tangent),
                _ => ApplyFixed(ref row, i, q, frames, gradient, tangent, mesh),
            };
        }

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
            if (row.Kind == RowKind.Seating || row.Inside)
                continue;

            double before = row.Effective;
            double after = before + before - row.Multiplier;
            row.Multiplier = before;
            if (before == 0)
                continue;

            // The new effective value is λ + ρ c = p + (p − λ): as far again as the last step went. A wall that would have to pull lets go.
            if (!row.BothWays && after * before < 0)
                after = 0;

            _byRow[i].AddTo(gradient, _elementOfRow[i], after - before);
            merit += (after - before) * (after + before) / (2 * Penalty);
            row.Effective = after;
        }

        return merit;
    }

    /// <summary>Ends an interior-point search: walls that are touched keep their force as multiplier, the others lose what little they
    /// carried.</summary>
    /// <param name="least">Force that counts as touching [N].</param>
    public void LeaveInterior(double least)
    {
        Interior = 0;
        for (int i = 0; i < RowCount; i++)
        {
            ref ContactRow row = ref _rows[i];
            if (row.Kind == RowKind.Seating)
                continue;

            if (row.Inside && Math.Abs(row.Effective) < least)
                row.Effective = 0;

            row.Inside = false;
            row.Multiplier = row.Effective;
        }
    }

    /// <summary>Largest violation [mm, rad·mm] of a row.</summary>
    public double LargestViolation()
    {
        double largest = 0;
        for (int i = 0; i < RowCount; i++)
            largest = Math.Max(largest, _rows[i].Violation);

        return largest;
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

    /// <summary>Derivative of a row by the unknowns of its element, at the last evaluation.</summary>
    public (int Element, ElementVector Derivative) Derivative(int row) => (_elementOfRow[row], _byRow[row]);

    private double ApplyWalls(
        ref ContactRow row, int index, ReadOnlySpan<SlotFrame> frames, Span<double> gradient, BlockTridiagonal tangent)
    {
        ref readonly Station at = ref _stations[row.Station];
        ref readonly SlotFrame frame = ref frames[row.Slot];
        Vector3 axis = Axis(frame, row.Axis);
        double place = Vector3.Dot(axis, at.R - frame.Centre);
        bool turns = row.Corner != 0 || row.Across != 0;
        (double sin, double cos) = turns ? Math.SinCos(at.Turn) : (0, 1);
        double middle = place + row.Corner * sin;
        double clearance = row.Room - row.Across * cos;
        row.BothWays = row.Upper && row.Lower && row.Room - row.Across <= NoPlay;
        row.Inside = Interior > 0 && !row.BothWays;
        if (row.Inside)
        {
            return ApplyInterior(ref row, index, at, frame, axis, middle, clearance, gradient, tangent);
        }

        double upper = row.Upper ? Math.Max(0, row.Multiplier + Penalty * (middle - clearance)) : 0;
        double lower = row.Lower ? Math.Min(0, row.Multiplier + Penalty * (middle + clearance)) : 0;
        double p = upper > 0 ? upper : lower;
        if (row.BothWays)
            p = row.Multiplier + Penalty * middle;

        Register(ref row, index, at.Element, p);
        if (p == 0 && !row.BothWays)
            return 0;

        double across = p > 0 ? row.Across : -row.Across;
        double first = row.Corner * cos - across * sin;
        double second = -row.Corner * sin - across * cos;
        AddAtStation(index, at, frame, axis, p, row.Multiplier, first, second, gradient, tangent, Penalty);
        return p * p / (2 * Penalty);
    }

    // One side of a pair of walls as an interior-point method sees it: slack s, force z, both positive, s·z near μ. With the slack and the
    // force eliminated the side acts with p = μ/s − (z/s)(h − s) and the stiffness z/s.
    private double ApplyInterior(
        ref ContactRow row, int index, in Station at, in SlotFrame frame, Vector3 axis, double middle, double clearance,
        Span<double> gradient, BlockTridiagonal tangent)
    {
        bool turns = row.Corner != 0 || row.Across != 0;
        (double sin, double cos) = turns ? Math.SinCos(at.Turn) : (0, 1);
        double net = 0;
        double worst = 0;
        double merit = 0;
        double bothP = 0;
        double bothStiffness = 0;
        for (int side = -1; side <= 1; side += 2)
        {
            if (side > 0 ? !row.Upper : !row.Lower)
                continue;

            ref InteriorSide wall = ref Side(index, side, clearance - side * middle, out double p, out double stiffness);
            net += side * wall.Force;
            worst = Math.Max(worst, Math.Abs(wall.Gap - wall.Slack));
            merit -= Interior * Math.Log(wall.Slack);
            bothP += side * p;
            bothStiffness += stiffness;
            if (!turns)
                continue;

            double across = side * row.Across;
            AddAtStation(
                index, at, frame, axis, side * p, side * wall.Force, row.Corner * cos - across * sin,
                -row.Corner * sin - across * cos, gradient, tangent, stiffness);
            wall.Derivative = _byRow[index];
        }

        Register(ref row, index, at.Element, net);
        row.Violation = worst;
        if (!turns)
        {
            // Without a turn the two walls push along one and the same line.
            AddAtStation(index, at, frame, axis, bothP, net, 0, 0, gradient, tangent, bothStiffness);
            _sides[2 * index].Derivative = _byRow[index];
            _sides[2 * index + 1].Derivative = _byRow[index];
        }

        return merit;
    }

    private ref InteriorSide Side(int index, int side, double gap, out double acting, out double stiffness)
    {
        ref InteriorSide wall = ref _sides[2 * index + (side > 0 ? 1 : 0)];
        wall.Gap = gap;
        if (Starting)
            wall.Begin(Interior, Math.Max(0, side * _rows[index].Multiplier));

        stiffness = wall.Force / wall.Slack;
        acting = Interior / wall.Slack - stiffness * (gap - wall.Slack);
        wall.Acting = acting;
        return ref wall;
    }

    /// <summary>Steps of slacks and forces that go with a step of the wire, and how much of them keeps both positive.</summary>
    /// <param name="step">Step of the unknowns.</param>
    /// <returns>Shares for slacks (and the wire) and for forces.</returns>
    public (double Slacks, double Forces) InteriorStep(ReadOnlySpan<double> step)
    {
        double slacks = 1;
        double forces = 1;
        for (int i = 0; i < RowCount; i++)
        {
            ref readonly ContactRow row = ref _rows[i];
            if (!row.Inside)
                continue;

            for (int k = 0; k < 2; k++)
            {
                if (k == 1 ? !row.Upper : !row.Lower)
                    continue;

                ref InteriorSide wall = ref _sides[2 * i + k];
                double opening = (k == 1 ? -1 : 1) * wall.Derivative.Dot(step, _elementOfRow[i]);
                wall.Plan(Interior, opening);
                slacks = Math.Min(slacks, InteriorSide.Share(wall.Slack, wall.SlackStep));
                forces = Math.Min(forces, InteriorSide.Share(wall.Force, wall.ForceStep));
            }
        }

        return (slacks, forces);
    }

    /// <summary>Turns a gradient with the eliminated forces into the one with the forces themselves, the true residual of an interior-point
    /// search.</summary>
    public void WithInteriorForces(Span<double> gradient)
    {
        for (int i = 0; i < RowCount; i++)
        {
            ref readonly ContactRow row = ref _rows[i];
            if (!row.Inside)
                continue;

            for (int k = 0; k < 2; k++)
            {
                if (k == 1 ? !row.Upper : !row.Lower)
                    continue;

                ref InteriorSide wall = ref _sides[2 * i + k];
                wall.Derivative.AddTo(gradient, _elementOfRow[i], (k == 1 ? 1 : -1) * (wall.Force - wall.Acting));
            }
        }
    }

    /// <summary>Takes the planned steps of slacks and forces.</summary>
    /// <returns>Mean of slack times force [N·mm].</returns>
    public double TakeInteriorStep(double slacks, double forces)
    {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < RowCount; i++)
        {
            ref readonly ContactRow row = ref _rows[i];
            if (!row.Inside)
                continue;

            for (int k = 0; k < 2; k++)
            {
                if (k == 1 ? !row.Upper : !row.Lower)
                    continue;

                ref InteriorSide wall = ref _sides[2 * i + k];
                wall.Slack += slacks * wall.SlackStep;
                wall.Force += forces * wall.ForceStep;
                sum += wall.Slack * wall.Force;
                count++;
            }
        }

        return count > 0 ? sum / count : 0;
    }

    // A spring with a pull from the start: energy F z + k z²/2, z the lift above the seat.
    private double ApplySeating(
        ref ContactRow row, int index, ReadOnlySpan<SlotFrame> frames, Span<double> gradient, BlockTridiagonal tangent)
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

    private double ApplyThread(
        ref ContactRow row, int index, ReadOnlySpan<SlotFrame> frames, Span<double> gradient, BlockTridiagonal tangent)
    {
        ref readonly Station at = ref _stations[row.Station];
        ref readonly SlotFrame frame = ref frames[row.Slot];
        double x = Vector3.Dot(frame.Outward, at.R - frame.Centre);
        double y = Vector3.Dot(frame.Third, at.R - frame.Centre);
        double distance = Math.Sqrt(x * x + y * y);
        row.Inside = Interior > 0;
        double p = Math.Max(0, row.Multiplier + Penalty * (distance - row.Room));
        double stiffness = Penalty;
        double weight = row.Multiplier;
        double merit = p * p / (2 * Penalty);
        Register(ref row, index, at.Element, p);
        if (row.Inside)
        {
            ref InteriorSide wall = ref Side(index, 1, row.Room - distance, out p, out stiffness);
            weight = wall.Force;
            row.Effective = wall.Force;
            row.Violation = Math.Abs(wall.Gap - wall.Slack);
            merit = -Interior * Math.Log(wall.Slack);
        }
        else if (p == 0)
        {
            return 0;
        }

        double scale = Math.Max(distance, 1e-6);
        Vector3 axis = (frame.Outward * x + frame.Third * y) / scale;
        Vector3 beside = (frame.Third * x - frame.Outward * y) / scale;
        AddAtStation(index, at, frame, axis, p, weight, 0, 0, gradient, tangent, stiffness);
        _sides[2 * index + 1].Derivative = _byRow[index];

        // Curvature of the distance: (δ beside)²/distance, beside taken along the wire as the force is.
        ElementVector turning = ElementVector.OfPoint(NormalToWire(beside, at, frame, 0), at.Shape);
        ElementVector.AddOuter(tangent, at.Element, turning, turning * (weight / scale));
        return merit;
    }

    // Second derivatives take the multiplier, not p: a slot that has just moved makes a p of thousands of newtons, which would spoil the
    // tangent; at the solution the two are equal, so nothing of Newton's speed is lost.
    private void AddAtStation(
        int index, in Station at, in SlotFrame frame, Vector3 axis, double p, double weight, double first, double second,
        Span<double> gradient, BlockTridiagonal tangent, double stiffness)
    {
        Vector3 m = NormalToWire(axis, at, frame, first);
        ElementVector derivative = ElementVector.OfPoint(m, at.Shape);
        if (first != 0)
            derivative += ElementVector.OfSlope(at.TurnByP * first, first, at.TurnShape);

        _byRow[index] = derivative;
        _elementOfRow[index] = at.Element;
        derivative.AddTo(gradient, at.Element, p);

        // A wall far away adds nothing that the tangent would feel.
        if (stiffness < Unfelt && Math.Abs(weight) < Unfelt)
            return;

        ElementVector.AddOuter(tangent, at.Element, derivative, derivative * stiffness);
        if (weight == 0)
            return;

        ElementVector slide = ElementVector.OfPoint(frame.Along * (-1 / at.Advance), at.Shape);
        ElementVector turnAway = ElementVector.OfSlope(m, 0, at.Shape) * weight;
        ElementVector.AddOuter(tangent, at.Element, turnAway + slide * (weight * Vector3.Dot(m, at.C)), slide);
        ElementVector.AddOuter(tangent, at.Element, slide, turnAway);
        if (first != 0 || second != 0)
            AddTurning(at, frame, weight, first, second, slide, tangent);
    }

    private static void AddTurning(
        in Station at, in SlotFrame frame, double p, double first, double second, in ElementVector slide, BlockTridiagonal tangent)
    {
        ElementVector turn = ElementVector.OfSlope(at.TurnByP, 1, at.TurnShape) + slide * at.TurnRate;
        ElementVector.AddOuter(tangent, at.Element, turn, turn * (p * second));
        Span<double> h = stackalloc double[9];
        at.TurnByPByP(frame, h);
        for (int i = 0; i < 3; i++)
        {
            Vector3 unit = new(i == 0 ? 1 : 0, i == 1 ? 1 : 0, i == 2 ? 1 : 0);
            Vector3 row = new(h[3 * i], h[3 * i + 1], h[3 * i + 2]);
            ElementVector.AddOuter(
                tangent, at.Element,
                ElementVector.OfSlope(unit, 0, at.TurnShape), ElementVector.OfSlope(row * (p * first), 0, at.TurnShape));
        }
    }

    /// <summary>Force and moment of the wire on the tooth through one restraint, moment about the slot's centre.</summary>
    public (Vector3 Force, Vector3 Moment) OnTooth(
        int index, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames, RodMesh mesh)
    {
        ref readonly ContactRow row = ref _rows[index];
        ref readonly SlotFrame frame = ref frames[row.Slot];
        double p = row.Effective;
        if (p == 0 || row.Kind == RowKind.Pin)
            return default;

        if (row.Kind is RowKind.Walls or RowKind.Seating or RowKind.Thread)
            return AtStation(row, _stations[row.Station], frame);

        return AtFixedPoint(row, q, frame);
    }

    private static (Vector3 Force, Vector3 Moment) AtFixedPoint(in ContactRow row, ReadOnlySpan<double> q, in SlotFrame frame)
    {
        if (row.Kind == RowKind.Pin)
            return default;

        double p = row.Effective;
        Vector3 axis = Axis(frame, row.Axis);
        Vector3 force = row.Kind == RowKind.Place ? axis * p : default;
        Vector3 arm = RodAssembly.Position(q, row.Node) - frame.Centre;
        Vector3 couple = row.Kind switch
        {
            RowKind.Direction => Vector3.Cross(RodAssembly.Slope(q, row.Node), axis) * p,
            RowKind.Turn => RodAssembly.Slope(q, row.Node).Unit() * p,
            _ => default,
        };
        return (force, Vector3.Cross(arm, force) + couple);
    }

    private static (Vector3 Force, Vector3 Moment) AtStation(in ContactRow row, in Station at, in SlotFrame frame)
    {
        (Vector3 axis, double byTurn, _) = Touched(row, at, frame);
        Vector3 force = NormalToWire(axis, at, frame, byTurn) * row.Effective;
        return (force, Vector3.Cross(at.R - frame.Centre, force) + at.TurnAxis * (row.Effective * byTurn));
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
        Span<double> gradient, BlockTridiagonal tangent, RodMesh mesh)
    {
        FixedGap(row, q, frames[row.Slot], mesh, out double c, out ElementVector derivative, out int element);
        row.BothWays = row.Upper && row.Lower;
        row.Inside = Interior > 0 && !row.BothWays;
        if (row.Inside)
            return ApplyStop(ref row, index, element, c, derivative, gradient, tangent);

        double p = row.Multiplier + Penalty * c;
        if ((!row.Upper && p > 0) || (!row.Lower && p < 0))
            p = 0;

        Register(ref row, index, element, p);
        if (p == 0 && !row.BothWays)
            return 0;

        _byRow[index] = derivative;
        derivative.AddTo(gradient, element, p);
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
        Register(ref row, index, element, side * wall.Force);
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

    private void Register(ref ContactRow row, int index, int element, double p)
    {
        row.Effective = p;
        row.Violation = Math.Abs(p - row.Multiplier) / Penalty;
        _elementOfRow[index] = element;
    }

    /// <summary>A restraint as it would be with its slot elsewhere, the wire unmoved and the same side touching.</summary>
    /// <param name="index">Row; it must be active.</param>
    /// <param name="q">State of the wire.</param>
    /// <param name="frame">Where the slot would be.</param>
    /// <param name="mesh">Nodes.</param>
    /// <param name="value">Gap of the row [mm, rad].</param>
    /// <param name="element">Element that is touched.</param>
    /// <returns>Derivative of the gap by the unknowns of that element.</returns>
    public ElementVector WithSlotAt(
        int index, ReadOnlySpan<double> q, in SlotFrame frame, RodMesh mesh, out double value, out int element)
    {
        ref readonly ContactRow row = ref _rows[index];
        if (row.Kind is RowKind.Place or RowKind.Direction or RowKind.Turn or RowKind.Pin)
        {
            FixedGap(row, q, frame, mesh, out value, out ElementVector fixedDerivative, out element);
            return fixedDerivative;
        }

        Station at = _stations[row.Station];
        at.Locate(mesh, q, frame);
        (Vector3 axis, double first, double gap) = Touched(row, at, frame);
        value = gap;
        element = at.Element;
        ElementVector derivative = ElementVector.OfPoint(NormalToWire(axis, at, frame, first), at.Shape);
        if (first != 0)
            derivative += ElementVector.OfSlope(at.TurnByP * first, first, at.TurnShape);

        return derivative;
    }

    /// <summary>Force and moment on the tooth through one restraint with its slot elsewhere, the wire and the multiplier unmoved.</summary>
    public (Vector3 Force, Vector3 Moment) OnToothAt(int index, ReadOnlySpan<double> q, in SlotFrame frame, RodMesh mesh)
    {
        ref readonly ContactRow row = ref _rows[index];
        if (row.Kind is RowKind.Walls or RowKind.Seating or RowKind.Thread)
        {
            Station at = _stations[row.Station];
            at.Locate(mesh, q, frame);
            return AtStation(row, at, frame);
        }

        return AtFixedPoint(row, q, frame);
    }

    // The side of the row that is touched now: axis, derivative of the gap by the turn, and the gap itself.
    private static (Vector3 Axis, double ByTurn, double Gap) Touched(in ContactRow row, in Station at, in SlotFrame frame)
    {
        Vector3 arm = at.R - frame.Centre;
        if (row.Kind == RowKind.Thread)
        {
            Vector3 out2 = arm - frame.Along * Vector3.Dot(arm, frame.Along);
            return (out2.Unit(), 0, out2.Length - row.Room);
        }

        Vector3 axis = Axis(frame, row.Axis);
        double place = Vector3.Dot(axis, arm);
        if (row.Kind == RowKind.Seating)
            return (axis, 0, place - row.Seat);

        double side = row.Effective >= 0 ? 1 : -1;
        (double sin, double cos) = row.Corner != 0 || row.Across != 0 ? Math.SinCos(at.Turn) : (0, 1);
        double across = side * row.Across;
        return (axis, row.Corner * cos - across * sin, place + row.Corner * sin + across * cos - side * row.Room);
    }

    internal static Vector3 Axis(in SlotFrame frame, int axis) => axis switch
    {
        0 => frame.Along,
        1 => frame.Outward,
        _ => frame.Third,
    };
}
