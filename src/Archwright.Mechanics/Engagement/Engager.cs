using System.Collections.Immutable;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>Engages one wire in one set of slots. Holds the workspace: one instance a thread.</summary>
/// <remarks>
/// Cold: a guessed shape in the displaced slots, Newton's method, nodes moved to where the wire touches, Newton again.
/// Where that fails, the slots travel from where the wire is passive to where they are, in steps that shorten as
/// needed. Warm (<see cref="Apply"/>): from the last solution.
/// </remarks>
public sealed partial class Engager : IDisposable
{
    private const double FirstAim = 0.05;
    private const double NextAim = 1e-6;
    private const double ReleasedShare = 1e-2;
    private const int ReleaseIterations = 12;
    private const double PolishedForce = 1e-4;
    private const int PolishIterations = 8;
    private const int HeldIterations = 32;
    private const double TouchingForce = 1e-6;
    private const double AimAgain = 1e-3;
    private const int NearIterations = 10;
    private const int DirectIterations = 80;
    private const int StepIterations = 40;
    private const double ShortestStride = 1.0 / 512;
    // A node this far from the touching place [mm] is moved there; with a history or friction, which would be brought
    // along, only from the second on.
    private const double NodeTolerance = 0.003;
    private const double NodeToleranceWithHistory = 0.01;
    private const int MostRemeshes = 3;
    private const double MostHalfWidth = 10;

    // Wire that displaced slots may draw in between them, beyond as much again as lies there at rest [mm]: room for
    // nodes.
    private const double MostDrawn = 80;
    private const int NearIterationsWithMemory = 30;
    // A wire that transforms or yields is not the same after it has slid, so that there is no one place where it rests
    // once it has a history; and friction would hold many times as much. It follows a force along that could be felt
    // [share of the largest], and no farther; as it goes in, it comes to rest.
    private const double FeltLater = 0.02;
    private const double FeltAtFirst = 5e-4;

    // The least of it [N]: a gram-force, far below what a slot with a tie holds by friction.
    private const double LeastFeltLater = 0.01;
    private const int MostSlidesWithMemory = 4;
    private const int MostFirstSlidesWithMemory = 12;

    private readonly Room _room = new();
    private readonly Layout _layout;
    private readonly Equilibrium _rod;
    private readonly MeshPlan _plan;
    private readonly Snapshot _travelled;
    private readonly Snapshot _settled;
    private readonly double[] _before;
    private readonly RodMesh _meshBefore;
    private readonly SlotFrame[] _from;
    private readonly Slide _slide;
    private readonly TouchedStiffness _touched;
    private readonly bool _hasWalls;
    private int _iterationsBefore;
    private bool _isDisposed;
    private double _temperature;
    private double _warmedFrom;
    private double _warmedTo;

    /// <summary>Prepares the wire in its rest shape.</summary>
    /// <exception cref="ArgumentException">The arrangement is impossible: no slot or too many, slots that coincide or
    /// run backwards, a wire thicker than a slot is high or deep.</exception>
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
            + arrangement.Slots.Length * (PerSlot + PerGap)
            + (int)(PerGap * (2 * length + MostDrawn) / MeshPlan.UsualGap);
        int rows = 4 * stations + 6 * arrangement.Slots.Length + 2;
        _plan = new MeshPlan(nodes);
        _rod = new Equilibrium(
            nodes, stations, rows, arrangement.Slots.Length,
            RodLaw.Of(
                arrangement.Wire, arrangement.Temperature, _layout.Places[0] - MeshPlan.Overhang - MostHalfWidth,
                _layout.Places[^1] + MeshPlan.Overhang + MostHalfWidth, nodes, _room),
            _room)
        {
            Rest = _layout.Rest,
        };
        _travelled = new Snapshot(nodes, rows, _room);
        _settled = new Snapshot(nodes, rows, _room);
        _meshBefore = new RodMesh(nodes, _room);
        _before = _room.Take<double>(8 * nodes);
        _from = new SlotFrame[arrangement.Slots.Length];
        _rod.ContactNumber = Options.ContactNumber * ContactNumber.Usual;
        _whole = new Checkpoint(nodes, stations, rows, arrangement.Slots.Length, _room);
        _slide = new Slide(arrangement, _layout, PerGap);
        _rod.Slide = _slide;
        var restraints = new TouchedRestraints();
        _touched = new TouchedStiffness(restraints);
        _giving = new GivingWire(restraints, _touched);
        foreach (Slot slot in arrangement.Slots)
            _hasWalls |= Layout.HasWalls(slot);
    }

    /// <summary>What is engaged.</summary>
    public Arrangement Arrangement { get; private set; }

    /// <summary>How.</summary>
    public EngagementOptions Options { get; }

    internal Equilibrium Rod => _rod;

    internal Layout Layout => _layout;

    /// <summary>Gives its memory back for the next wire; it is not to be used any more. Results stay. One that is never
    /// disposed of costs no more than its memory.</summary>
    public void Dispose()
    {
        _isDisposed = true;
        _room.Dispose();
    }

    /// <summary>Brings the wire from its rest shape into the slots.</summary>
    /// <exception cref="OperationCanceledException">It was asked to stop.</exception>
    /// <exception cref="ObjectDisposedException">It has been disposed of.</exception>
    public EngagementResult Engage(CancellationToken cancellation = default) => EngageNear(elastic: null, cancellation);

    private EngagementResult EngageNear(Engager? elastic, CancellationToken cancellation)
    {
        ForgetForeseen();
        _iterationsBefore = _rod.Iterations;
        _rubs = false;
        _rod.Law.Forget();
        Warm(Arrangement.Temperature);
        Restraints.Fill(_rod.Contacts, Arrangement, _layout.Places);
        var target = new SlotFrame[_from.Length];
        for (int i = 0; i < target.Length; i++)
            target[i] = Arrangement.Slots[i].Actual;

        SearchEnd end = SearchEnd.Stalled;
        if (IsAtRest(target))
        {
            // Nothing has moved: the rest shape is the answer, unless ties or the wire's own form say otherwise.
            StartFromRest();
            end = Settle(NearIterations, near: true, cancellation);
        }

        if (end != SearchEnd.Converged && Options.StartFromGuess)
            end = FromElastic(elastic, target, cancellation);

        if (end != SearchEnd.Converged && Options.StartFromGuess && StartFromGuess(target))
            end = Settle(DirectIterations, near: false, cancellation);

        if (end != SearchEnd.Converged)
        {
            StartFromRest();
            end = Settle(DirectIterations, near: false, cancellation);
            if (end == SearchEnd.Converged)
                end = Travel(target, Arrangement.Temperature, cancellation);
        }
        else
        {
            _rod.Law.Commit(_rod.Mesh, _rod.State);
        }

        BeginFriction();
        return Result(end);
    }

    private bool IsAtRest(SlotFrame[] target)
    {
        for (int i = 0; i < target.Length; i++)
        {
            if (target[i] != Arrangement.Slots[i].Rest)
                return false;
        }

        return true;
    }

    /// <summary>Goes on from the last converged state (history kept): slots move, or the temperature changes.</summary>
    /// <exception cref="InvalidOperationException"><see cref="Engage"/> has not been called.</exception>
    /// <exception cref="ArgumentException">A moved slot does not exist.</exception>
    /// <exception cref="OperationCanceledException">It was asked to stop.</exception>
    public EngagementResult Apply(Step step, CancellationToken cancellation = default) =>
        ApplyNear(step, elastic: null, cancellation);

    private EngagementResult ApplyNear(Step step, Engager? elastic, CancellationToken cancellation)
    {
        if (_rod.Mesh.Nodes == 0)
            throw new InvalidOperationException("Engage the wire first.");

        ForgetForeseen();
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

        Arrangement before = Arrangement;
        Arrangement = before with
        {
            Slots = slots.MoveToImmutable(),
            Temperature = step.Temperature ?? before.Temperature,
        };
        _arrangementBefore = before;
        KeepWhole();
        _rubs = true;
        SearchEnd end = elastic is null ? SearchEnd.Stalled : Jump(elastic, target, cancellation);
        if (end != SearchEnd.Converged)
            end = Travel(target, Arrangement.Temperature, cancellation);
        EngagementResult result = Result(end);
        if (end != SearchEnd.Converged)
            Undo();

        return result;
    }

    /// <summary>Changes what ties pull with; the wire answers in the next <see cref="Apply"/>.</summary>
    /// <param name="ties">One a slot, each of the kind that is there.</param>
    /// <exception cref="ArgumentException">A tie is of another kind, or their number is not that of the
    /// slots.</exception>
    public void Retie(ImmutableArray<Tie> ties)
    {
        ImmutableArray<Slot> slots = Arrangement.Slots;
        if (ties.Length != slots.Length || slots.Zip(ties).Any(pair => pair.First.Tie.Kind != pair.Second.Kind))
            throw new ArgumentException("There is one tie a slot, of the kind that is there.", nameof(ties));

        ForgetForeseen();
        Arrangement = Arrangement with { Slots = [.. slots.Zip(ties, (slot, tie) => slot with { Tie = tie })] };
        foreach (ref ContactRow row in _rod.Contacts.Rows)
        {
            if (row.Kind == RowKind.Seating)
                (row.Pull, row.Rise) = (ties[row.Slot].SeatingForce, ties[row.Slot].Stiffness);
        }
    }

    /// <summary>Condensed tangent stiffness of the engaged wire at its slots: change of the load on the teeth (force,
    /// and moment about the moving slot centre, in the frame of the case) for small motions of the slots (shift, then
    /// turn about the slot's centre), row-major 6n × 6n [N/mm, N/rad, N, N·mm/rad].</summary>
    /// <exception cref="InvalidOperationException">The wire is not engaged.</exception>
    public double[] TangentStiffness()
    {
        if (_rod.Mesh.Nodes == 0)
            throw new InvalidOperationException("Engage the wire first.");

        ForgetForeseen();
        return Condensation.Stiffness(_rod, Arrangement.Slots.Length);
    }

    /// <summary>The same for the walls that are touched now and with the directions of their forces kept: in a fifth of
    /// the time, symmetric, and so that the wire always resists. Meant for searches that move the slots.</summary>
    /// <param name="stiffness">Takes the result, row-major 6n × 6n.</param>
    /// <returns>False when the wire does not stand by itself as it lies.</returns>
    /// <exception cref="InvalidOperationException">The wire is not engaged.</exception>
    public bool TryTouchedStiffness(Span<double> stiffness)
    {
        if (_rod.Mesh.Nodes == 0)
            throw new InvalidOperationException("Engage the wire first.");

        ForgetForeseen();
        return _touched.TryFind(_rod, stiffness);
    }

    // Slots travel from where they are to the target, and the temperature with them; the stride is halved where no
    // equilibrium is found and doubled after a success. A wire with memory takes no longer strides than its history
    // needs.
    private SearchEnd Travel(SlotFrame[] target, double temperature, CancellationToken cancellation)
    {
        SetOut(temperature);
        double done = 0;
        double longest = LongestStride(target);
        double stride = longest;
        var last = SearchEnd.Converged;
        while (done < 1)
        {
            if (_rod.Iterations - _iterationsBefore > MostIterations)
                return SearchEnd.OutOfIterations;

            _travelled.Take(_rod);
            double next = Math.Min(1, done + stride);
            MoveSlots(target, next);
            last = Settle(_rod.Law.Remembers ? NearIterationsWithMemory : NearIterations, near: true, cancellation);
            if (last != SearchEnd.Converged)
            {
                GoBack(target, done);
                MoveSlots(target, next);
                last = Settle(StepIterations, near: false, cancellation);
            }

            if (last == SearchEnd.Converged && _rubs)
                last = SettleFriction(cancellation);

            if (last == SearchEnd.Converged)
            {
                _rod.Law.Commit(_rod.Mesh, _rod.State);
                _rod.Contacts.CommitFriction();
                done = next;
                stride = Math.Min(2 * stride, longest);
                continue;
            }

            GoBack(target, done);
            stride /= 2;
            if (stride < ShortestStride)
                return last;
        }

        return last;
    }

    private void SetOut(double temperature)
    {
        _rod.Frames.CopyTo(_from, 0);
        _warmedFrom = _temperature;
        _warmedTo = temperature;
    }

    private void GoBack(SlotFrame[] target, double share)
    {
        _travelled.PutBack(_rod);
        _rod.Contacts.PutBackBounds();
        AttachFixedRows();
        MoveSlots(target, share, carryWire: false);
    }

    private void MoveSlots(SlotFrame[] target, double share, bool carryWire = true)
    {
        Warm(_warmedFrom + share * (_warmedTo - _warmedFrom));
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

    // Equilibrium; then nodes go to the touching places and the wire slides to where nothing drives it along any more,
    // until both agree.
    private SearchEnd Settle(int mostIterations, bool near, CancellationToken cancellation)
    {
        _slide.Place(_rod);
        _slide.Begin();
        _slide.Hold(_rod, hold: !(_rubs && _rod.Contacts.HasFriction));

        // A node that moves would bring another history to its points in the middle of a search; a new wire has none.
        _rod.NodesFollow = !_rod.Law.HasHistory;
        (_rod.Felt, _rod.LeastFelt) = _rubs ? (FeltLater, LeastFeltLater) : (FeltAtFirst, Equilibrium.Unfelt);
        double aim = _rod.Contacts.LargestForce() > 0 ? AimAgain : FirstAim;
        _rod.Tie = near ? RodAssembly.FineTie : RodAssembly.FirmTie;
        SearchEnd end = near
            ? Near(cancellation)
            : _rod.SearchInside(mostIterations, aim, restart: true, loose: true, cancellation);
        _rod.Tie = RodAssembly.FineTie;
        int remeshes = 0;
        int slides = 0;
        bool exact = false;
        while (end == SearchEnd.Converged)
        {
            // Between walls, nodes are laid anew once at least, by where the wire touches: the mesh does not tell the
            // way it came.
            if (remeshes < MostRemeshes && ((remeshes == 0 && _hasWalls && !_rod.Law.HasHistory) || NodesAreOff()))
            {
                MoveNodes();
                remeshes++;
            }
            else if (slides++ >= MostSlides(near) || !_rod.SlideBetween())
            {
                break;
            }

            exact = TryHeld(loose: false, cancellation);
            if (!exact)
                end = Again(mostIterations, near, loose: true, cancellation);
        }

        if (end == SearchEnd.Converged && (exact || TryHeld(loose: false, cancellation)))
            return end;

        if (end == SearchEnd.Converged)
            end = near && !_rod.Law.Remembers ? SearchEnd.Stalled : Finish(mostIterations, near, cancellation);
        if (!near)
            LeaveInside(end, cancellation);

        return end;
    }

    // A wire without memory slides within a search.
    private int MostSlides(bool near) => !_rod.Law.Remembers ? 0
        : near && _rubs ? MostSlidesWithMemory
        : MostFirstSlidesWithMemory;

    // The walls that were touched before are likely to be touched still. Where that search does not settle, the wire is
    // found faster from afar.
    private SearchEnd Near(CancellationToken cancellation) =>
        TryHeld(loose: true, cancellation) ? SearchEnd.Converged : SearchEnd.Stalled;

    // The touched walls are known, and the wire's place along the arch nearly: a few exact steps settle the rest.
    private bool TryHeld(bool loose, CancellationToken cancellation)
    {
        _settled.Take(_rod);
        _rod.Contacts.HoldTouched();
        if (_rod.SearchHeld(HeldIterations, loose, cancellation) == SearchEnd.Converged)
            return true;

        _settled.PutBack(_rod);
        AttachFixedRows();
        return false;
    }

    // With the touched walls known, a few exact steps take the last traces of the interior point away: walls that are
    // not touched carry nothing at all. Where those steps do not settle, its own answer stands.
    private void LeaveInside(SearchEnd end, CancellationToken cancellation)
    {
        if (end != SearchEnd.Converged)
        {
            _rod.Contacts.LeaveInterior(TouchingForce);
            return;
        }

        double residual = _rod.Residual;
        _rod.State.CopyTo(_before);
        _rod.Contacts.KeepForces();
        _rod.Contacts.LeaveInterior(PolishedForce);
        bool follows = _rod.NodesFollow;
        _rod.NodesFollow = false;
        SearchEnd polished = _rod.SearchNear(PolishIterations, loose: false, cancellation);
        _rod.NodesFollow = follows;
        if (polished == SearchEnd.Converged)
            return;

        _before.AsSpan(0, _rod.State.Length).CopyTo(_rod.State);
        _rod.Contacts.RestoreForces(TouchingForce);
        _rod.Contacts.Locate(_rod.Mesh, _rod.State, _rod.Frames);
        _rod.Contacts.Freeze(_rod.Mesh, _rod.State, _rod.Frames);
        _rod.Stand(residual);
    }

    // The last, exact search lets the pin go: what little force it held, the wire's own grip on its mesh takes up, and
    // the loads on the teeth sum to nil. Where the wire would run away (no rest along the arch), the pin stays, and the
    // residual says with what force. From near by only a wire with memory comes here, whose pin stays.
    private SearchEnd Finish(int mostIterations, bool near, CancellationToken cancellation)
    {
        SearchEnd end = Again(mostIterations, near, loose: false, cancellation);
        double force = Math.Abs(_slide.PinForce(_rod));
        if (end != SearchEnd.Converged || force <= 1e-9 || _rod.Law.Remembers)
            return end;

        bool small = force <= ReleasedShare * _rod.Contacts.LargestForce();
        _rod.State.CopyTo(_before);
        _rod.NodesFollow = false;
        _slide.Hold(_rod, hold: false);
        SearchEnd released = small
            ? Again(ReleaseIterations, near: false, loose: false, cancellation)
            : SearchEnd.Stalled;
        _rod.NodesFollow = !_rod.Law.HasHistory;
        if (released == SearchEnd.Converged)
            return released;

        _slide.Hold(_rod, hold: true);
        _before.AsSpan(0, _rod.State.Length).CopyTo(_rod.State);
        return _rod.SearchInside(mostIterations, AimAgain, restart: true, loose: false, cancellation);
    }

    private SearchEnd Again(int mostIterations, bool near, bool loose, CancellationToken cancellation) => near
        ? loose ? Near(cancellation) : _rod.SearchNear(mostIterations, loose, cancellation)
        : loose && TryHeld(loose: true, cancellation) ? SearchEnd.Converged
        : _rod.SearchInside(mostIterations, NextAim, restart: false, loose, cancellation);

    private EngagementResult Result(SearchEnd end) =>
        Reading.Of(_rod, _layout, Arrangement, end, _rod.Iterations - _iterationsBefore);
}
