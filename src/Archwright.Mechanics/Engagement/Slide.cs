using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>The one soft motion of a wire with free ends: sliding as a whole through its slots.</summary>
/// <remarks>
/// All other slides are as stiff as the wire is long-wise; this one is driven only by the change of rest curvature
/// along the wire, and by ends that are stopped. While contacts are settled, a pin holds one point of the wire in a
/// plane in the middle of the arch; then the wire is let slide until the force on the pin is nil, by a secant method on
/// that one number. A straight wire puts no force on the pin: it may be held anywhere. Starting from the middle keeps a
/// symmetric case symmetric.
/// </remarks>
internal sealed class Slide
{
    private const double LongestStep = 0.3;
    private const double FarthestSlide = 3;
    private const int MostSteps = 60;
    private const int MostHalvings = 2;
    private const double ForceShare = 2e-6;
    private const double LeastForce = 1e-6;
    private const double LastShare = 1e-8;
    private const double LeastShift = 1e-6;
    private const double SmallForce = 3e-4;
    private const double UsualLeastStep = 0.03;
    private const int UsualElements = 4;

    private readonly bool _exists;
    private readonly double _leastStep;
    private readonly int _first = -1;
    private readonly int _second = -1;
    private readonly double _restPlace;
    private readonly double _restAhead;
    private Vector3 _middle;
    private Vector3 _normal;
    private double _shift;
    private double _ahead;
    private int _steps;
    private double _drivenOn;
    private double _drivenBack;
    private bool _wentBack;
    private int _halvings;
    private (double Shift, double Ahead) _kept;
    private bool _held = true;
    private bool _neutral;
    private bool _nearRest;

    public Slide(Arrangement arrangement, Layout layout, int elementsPerGap)
    {
        // A finer mesh is asked for more exactness, here too.
        double finer = (double)UsualElements / elementsPerGap;
        _leastStep = UsualLeastStep * finer * finer;
        _exists = Restraints.SlidesFreely(arrangement);
        var held = new List<int>();
        for (int i = 0; i < arrangement.Slots.Length; i++)
        {
            if (Layout.TakesIn(arrangement.Slots[i]))
                held.Add(i);
        }

        if (held.Count == 0)
            held.AddRange(Enumerable.Range(0, arrangement.Slots.Length).Where(i =>
                Layout.Restrains(arrangement.Slots[i])));

        _first = held[(held.Count - 1) / 2];
        _second = held[held.Count / 2];
        _restPlace = (layout.Places[_first] + layout.Places[_second]) / 2;
        SlotFrame first = arrangement.Slots[_first].Rest;
        SlotFrame second = arrangement.Slots[_second].Rest;
        _restAhead = Vector3.Dot(
            layout.Rest.At(_restPlace).Point - (first.Centre + second.Centre) * 0.5, (first.Along
                + second.Along).Unit());
    }

    /// <summary>The point of the wire that is pinned [mm].</summary>
    public double PinPlace => _restPlace + _shift;

    /// <summary>How far the wire has slid [mm].</summary>
    public double Shift => _shift;

    /// <summary>Whether the pinned point lies in the gap just before this slot.</summary>
    public bool IsBefore(int slot) => _exists && slot == _second && _first != _second;

    /// <summary>Back to the middle.</summary>
    public void Reset()
    {
        _shift = 0;
        _ahead = 0;
    }

    /// <summary>Keeps where the pin is, for <see cref="PutBack"/>.</summary>
    public void Keep() => _kept = (_shift, _ahead);

    /// <summary>Puts the pin back where it was kept.</summary>
    public void PutBack() => (_shift, _ahead) = _kept;

    /// <summary>Stands where another one does.</summary>
    public void StandAs(Slide other) => (_shift, _ahead) = (other._shift, other._ahead);

    /// <summary>Lets the pin stand where the wire is now: a guessed shape is not pulled along before it has
    /// settled.</summary>
    public void StandAt(Equilibrium rod)
    {
        if (!_exists)
            return;

        Place(rod);
        ref ContactRow pin = ref PinOf(rod);
        _ahead = Vector3.Dot(_normal, RodAssembly.Position(rod.State, pin.Node) - pin.PinAt);
        Place(rod);
    }

    /// <summary>Force on the pin [N]; nil where there is none.</summary>
    public double PinForce(Equilibrium rod) => _exists ? PinOf(rod).Effective : 0;

    /// <summary>Lets the pin go, or puts it back.</summary>
    public void Hold(Equilibrium rod, bool hold)
    {
        if (!_exists)
            return;

        ref ContactRow pin = ref PinOf(rod);
        _held = hold;
        pin.Upper = hold;
        pin.Lower = hold;
        pin.Multiplier = 0;
        pin.Effective = 0;
    }

    /// <summary>Starts counting anew.</summary>
    public void Begin()
    {
        _steps = 0;
        _neutral = false;
        _nearRest = false;
        _held = true;
        (_drivenOn, _drivenBack, _halvings) = (double.NegativeInfinity, double.PositiveInfinity, 0);
    }

    /// <summary>Whether the wire may still slide.</summary>
    public bool Moves => _exists && _held && !_neutral && _steps < MostSteps;

    /// <summary>Whether a force on the pin drives the wire nowhere.</summary>
    /// <param name="force">Force on the pin [N].</param>
    /// <param name="largestForce">Largest contact force [N].</param>
    /// <param name="exact">To the last digits.</param>
    public bool IsHeldByNothing(double force, double largestForce, bool exact)
    {
        _nearRest = false;
        return exact ? IsGone(force, 0.1 * largestForce) : IsNil(force, largestForce);
    }

    /// <summary>How far the wire slides next [mm]; asked after <see cref="IsHeldByNothing"/>.</summary>
    /// <param name="force">Force on the pin after the step that is planned [N].</param>
    /// <param name="rate">Its change for a slide of one [N/mm].</param>
    /// <param name="largestForce">Largest contact force [N].</param>
    /// <param name="exact">To the last digits; otherwise a wire that is nearly at rest is left there.</param>
    /// <param name="settled">The wire has settled where it is, so that the force can be trusted.</param>
    public double Step(double force, double rate, double largestForce, bool exact, bool settled)
    {
        // The energy rises by the pin's force a unit of shift; where it curves down, go down by a bounded step.
        double step = -force / Math.Max(Math.Abs(rate), 1e-12);
        bool small = Math.Abs(force) < SmallForce * _leastStep / UsualLeastStep * largestForce;
        if (!exact && small && Math.Abs(step) < _leastStep)
        {
            _nearRest = true;
            return 0;
        }

        // A wire without friction may find no rest at all along the arch; a real one is held by friction long before it
        // has slid that far.
        step = Math.Clamp(step, -LongestStep, LongestStep);
        step = Math.Clamp(_shift + step, -FarthestSlide, FarthestSlide) - _shift;
        if (settled)
            step = Between(step, force);
        _steps++;
        return !exact && Math.Abs(step) < LeastShift ? 0 : step;
    }

    // Between a place that the wire slid on from and one that it slid back from lies a rest: not to be run past again.
    // Where halving goes on to one side, walls have changed since, and the other place says nothing any more.
    private double Between(double step, double force)
    {
        bool back = force > 0;
        _halvings = back == _wentBack ? _halvings : 0;
        _wentBack = back;
        if (back)
            _drivenBack = _shift;
        else
            _drivenOn = _shift;
        if (_halvings == MostHalvings)
        {
            _halvings = 0;
            if (back)
                _drivenOn = double.NegativeInfinity;
            else
                _drivenBack = double.PositiveInfinity;
        }

        double next = _shift + step;
        bool isKnown = _drivenOn < _drivenBack && double.IsFinite(_drivenBack - _drivenOn);
        if (!isKnown || (next > _drivenOn && next < _drivenBack))
            return step;

        _halvings++;
        return (_drivenOn + _drivenBack) / 2 - _shift;
    }

    /// <summary>The wire is alike all along: it may be held anywhere.</summary>
    public void IsNeutral() => _neutral = true;

    /// <summary>The wire has slid [mm].</summary>
    public void Take(double shift) => _shift += shift;

    /// <summary>Whether the wire rests as it is.</summary>
    public bool Rests(double force, double largestForce) =>
        !Moves || _nearRest || IsNil(force, largestForce)
        || Math.Abs(_shift - Math.Sign(force) * LeastShift) > FarthestSlide;

    /// <summary>Whether what is left on the pin is nothing.</summary>
    public static bool IsGone(double force, double largestForce) =>
        Math.Abs(force) <= Math.Max(LeastForce, LastShare * largestForce);

    private static bool IsNil(double force, double largestForce) =>
        Math.Abs(force) <= Math.Max(LeastForce, ForceShare * largestForce);

    /// <summary>Puts the pin's plane where the slots in the middle are now; at rest, through the point where it
    /// rests.</summary>
    public void Place(Equilibrium rod)
    {
        if (!_exists)
            return;

        _normal = (rod.Frames[_first].Along + rod.Frames[_second].Along).Unit();
        _middle = (rod.Frames[_first].Centre + rod.Frames[_second].Centre) * 0.5 + _normal * (_restAhead + _ahead);
        Attach(ref PinOf(rod), rod.Mesh);
    }

    /// <summary>Puts the pin on the node nearest to the pinned point.</summary>
    public void Attach(ref ContactRow pin, RodMesh mesh)
    {
        int nearest = mesh.NearestNode(PinPlace);
        pin.Node = nearest;
        pin.PinNormal = _normal;
        pin.PinAt = _middle + _normal * (mesh.S[nearest] - PinPlace);
    }

    private static ref ContactRow PinOf(Equilibrium rod)
    {
        Span<ContactRow> rows = rod.Contacts.Rows;
        return ref rows[rows.Length - 1];
    }
}
