using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>The one soft motion of a wire with free ends: sliding as a whole through its slots.</summary>
/// <remarks>
/// All other slides are as stiff as the wire is long-wise; this one is driven only by the change of rest curvature along the
/// wire, and by ends that are stopped. While contacts are settled, a pin holds one point of the wire in a plane in the middle of
/// the arch; then the wire is let slide until the force on the pin is nil, by a secant method on that one number. A
/// straight wire puts no force on the pin: it may be held anywhere. Starting from the middle keeps a symmetric case symmetric.
/// </remarks>
internal sealed class Slide
{
    private const double LongestStep = 0.6;
    private const int MostSteps = 12;
    private const double ForceShare = 2e-5;
    private const double LeastForce = 1e-5;

    private readonly bool _exists;
    private readonly int _first = -1;
    private readonly int _second = -1;
    private readonly double _restPlace;
    private readonly Layout _layout;
    private Vector3 _middle;
    private Vector3 _normal;
    private double _shift;
    private double _stiffness;
    private int _steps;
    private double _lastForce;
    private double _lastStep;

    public Slide(Arrangement arrangement, Layout layout)
    {
        _layout = layout;
        _exists = Restraints.SlidesFreely(arrangement);
        var held = new List<int>();
        for (int i = 0; i < arrangement.Slots.Length; i++)
        {
            if (Layout.Restrains(arrangement.Slots[i]))
                held.Add(i);
        }

        _first = held[(held.Count - 1) / 2];
        _second = held[held.Count / 2];
        _restPlace = (layout.Places[_first] + layout.Places[_second]) / 2;
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
    }

    /// <summary>Starts counting anew.</summary>
    public void Begin()
    {
        _steps = 0;
        _lastStep = 0;
    }

    /// <summary>Puts the pin's plane where the slots in the middle are now.</summary>
    public void Place(Equilibrium<ElasticSection> rod)
    {
        if (!_exists)
            return;

        _middle = (rod.Frames[_first].Centre + rod.Frames[_second].Centre) * 0.5;
        _normal = (rod.Frames[_first].Along + rod.Frames[_second].Along).Unit();
        Attach(ref PinOf(rod), rod.Mesh.S);
    }

    /// <summary>Puts the pin on the node nearest to the pinned point.</summary>
    public void Attach(ref ContactRow pin, ReadOnlySpan<double> s)
    {
        int nearest = 0;
        for (int i = 1; i < s.Length; i++)
        {
            if (Math.Abs(s[i] - PinPlace) < Math.Abs(s[nearest] - PinPlace))
                nearest = i;
        }

        pin.Node = nearest;
        pin.PinNormal = _normal;
        pin.PinAt = _middle + _normal * (s[nearest] - PinPlace);
    }

    /// <summary>Whether the wire still wants to slide, and how far.</summary>
    public bool Wants(Equilibrium<ElasticSection> rod, RodMesh scratch, out double shift)
    {
        shift = 0;
        if (!_exists)
            return false;

        double force = PinOf(rod).Effective;
        if (Math.Abs(force) <= Math.Max(LeastForce, ForceShare * rod.Contacts.LargestForce()) || _steps >= MostSteps)
            return false;

        if (_lastStep != 0)
            _stiffness = (force - _lastForce) / _lastStep;
        else if (_stiffness == 0)
            _stiffness = FixedShapeStiffness(rod, scratch);

        // The energy rises by the pin's force a unit of shift; where it curves down, go down by a bounded step.
        double step = _stiffness > 0 ? -force / _stiffness : -Math.Sign(force) * LongestStep;
        shift = Math.Clamp(step, -LongestStep, LongestStep);
        _lastForce = force;
        _lastStep = shift;
        _shift += shift;
        _steps++;
        return true;
    }

    // Second difference of the energy by the shift, the wire's shape held: stiffer than the wire that may settle, so a safe first step.
    private double FixedShapeStiffness(Equilibrium<ElasticSection> rod, RodMesh scratch)
    {
        const double h = 0.1;
        double Energy(double shift)
        {
            scratch.Build(rod.Mesh.S, _layout.Rest, shift);
            return RodAssembly.Energy(scratch, rod.Law, rod.Stretch, rod.State);
        }

        return Math.Max(1e-6, (Energy(h) - 2 * Energy(0) + Energy(-h)) / (h * h));
    }

    private static ref ContactRow PinOf(Equilibrium<ElasticSection> rod)
    {
        Span<ContactRow> rows = rod.Contacts.Rows;
        return ref rows[rows.Length - 1];
    }
}
