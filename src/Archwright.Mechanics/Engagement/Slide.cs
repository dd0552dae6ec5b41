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
    private const double LongestStep = 1.5;
    private const double FarthestSlide = 3;
    private const int MostSteps = 24;
    private const double ForceShare = 2e-6;
    private const double LeastForce = 1e-6;
    private const double LeastStiffness = 1e-6;
    private const double StoppedStiffness = 5;
    private const double LeastShift = 1e-6;
    private const double SmallForce = 3e-4;
    private const double UsualLeastStep = 0.03;
    private const int UsualElements = 4;

    private readonly bool _exists;
    private readonly bool _free;
    private readonly double _leastStep;
    private readonly int _first = -1;
    private readonly int _second = -1;
    private readonly double _restPlace;
    private readonly double _restAhead;
    private Vector3 _middle;
    private Vector3 _normal;
    private double _shift;
    private double _ahead;
    private double _stiffness;
    private bool _measured;
    private int _steps;
    private double _lastForce;
    private double _lastStep;
    private (double Shift, double Ahead, double Stiffness, bool Measured) _kept;

    public Slide(Arrangement arrangement, Layout layout, int elementsPerGap)
    {
        // A finer mesh is asked for more exactness, here too.
        double finer = (double)UsualElements / elementsPerGap;
        _leastStep = UsualLeastStep * finer * finer;
        _free = arrangement.Ends == WireEnds.Free;
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

    /// <summary>Whether the pinned point lies in the gap just before this slot.</summary>
    public bool IsBefore(int slot) => _exists && slot == _second && _first != _second;

    /// <summary>Back to the middle.</summary>
    public void Reset()
    {
        _shift = 0;
        _stiffness = 0;
        _ahead = 0;
        _measured = false;
    }

    /// <summary>Keeps where the pin is, for <see cref="PutBack"/>.</summary>
    public void Keep() => _kept = (_shift, _ahead, _stiffness, _measured);

    /// <summary>Puts the pin back where it was kept.</summary>
    public void PutBack() => (_shift, _ahead, _stiffness, _measured) = _kept;

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
        pin.Upper = hold;
        pin.Lower = hold;
        pin.Multiplier = 0;
        pin.Effective = 0;
    }

    /// <summary>Starts counting anew.</summary>
    public void Begin()
    {
        _steps = 0;
        _lastStep = 0;
    }

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

    /// <summary>Whether the wire still wants to slide, and how far.</summary>
    public bool Wants(Equilibrium rod, out double shift)
    {
        shift = 0;
        if (!_exists)
            return false;

        double force = PinOf(rod).Effective;
        if (_steps >= MostSteps || Math.Abs(force) <= Math.Max(LeastForce, ForceShare * rod.Contacts.LargestForce()))
            return false;

        // A wire that is alike all along may be held anywhere: what force its pin feels comes from the mesh.
        double held = FixedShapeStiffness(rod);
        if (_free && held < LeastStiffness * rod.Contacts.LargestForce())
            return false;

        // Stopped ends press back as hard as the wire is long-wise.
        if (!_free)
            held += StoppedStiffness;

        if (Math.Abs(_lastStep) > LeastShift)
        {
            _stiffness = (force - _lastForce) / _lastStep;
            _measured = true;
        }
        else if (_stiffness == 0)
        {
            _stiffness = held;
        }

        // The energy rises by the pin's force a unit of shift; where it curves down, go down by a bounded step.
        double step = _stiffness > 0 ? -force / _stiffness : -Math.Sign(force) * LongestStep;
        bool small = Math.Abs(force) < SmallForce * _leastStep / UsualLeastStep * rod.Contacts.LargestForce();
        if (_measured && small && Math.Abs(step) < _leastStep)
            return false;

        // A wire without friction may find no rest at all along the arch; a real one is held by friction long before it
        // has slid that far.
        shift = Math.Clamp(step, -LongestStep, LongestStep);
        shift = Math.Clamp(_shift + shift, -FarthestSlide, FarthestSlide) - _shift;
        if (Math.Abs(shift) < LeastShift)
            return false;

        _lastForce = force;
        _lastStep = shift;
        _shift += shift;
        _steps++;
        return true;
    }

    // Stiffness against sliding with the shape held: ∫ B (dκ⁰/ds)² ds. The wire that may settle is softer, so the first
    // step is on the safe side.
    private static double FixedShapeStiffness(Equilibrium rod)
    {
        double sum = 0;
        ReadOnlySpan<RestPoint> rest = rod.Mesh.Rest;
        for (int e = 1; e + 1 < rod.Mesh.Elements; e++)
        {
            double between = rod.Mesh.Length(e) / Math.Sqrt(3);
            RestPoint a = rest[RodMesh.Points * e];
            RestPoint b = rest[RodMesh.Points * e + 1];
            var change = new SectionStrain(0, b.OverThickness - a.OverThickness, b.OverWidth - a.OverWidth,
                b.Twist - a.Twist);
            sum += 2 * rod.Law.Initial.Energy(0, change) * rod.Mesh.Length(e) / (between * between);
        }

        return sum;
    }

    private static ref ContactRow PinOf(Equilibrium rod)
    {
        Span<ContactRow> rows = rod.Contacts.Rows;
        return ref rows[rows.Length - 1];
    }
}
