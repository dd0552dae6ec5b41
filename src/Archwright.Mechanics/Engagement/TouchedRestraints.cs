using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>The restraints that are in the factored tangent of the wire, how their gaps change with their slots, and
/// the wire's answer without the pin.</summary>
/// <remarks>The pin is taken out of the factors again but for a little, ε: with J its derivative, ρ its number and
/// F the factored tangent, x + F⁻¹ Jᵀ (J x)/(1/(ρ − ε) − J F⁻¹ Jᵀ) in place of x (Sherman and Morrison). It stays where
/// the wire rests along the arch as a ball on a hill does, and where what drives it is too little to be felt.</remarks>
internal sealed class TouchedRestraints
{
    // What is left of the pin [N/mm]: far below what teeth oppose along the arch over a week.
    private const double LeastPin = 0.01;

    private int[] _rows = [];
    private double[] _byMotion = [];
    private double[] _ofPin = [];
    private double _byPin;

    /// <summary>How many there are.</summary>
    public int Count { get; private set; }

    /// <summary>Row of restraint a.</summary>
    public int Row(int a) => _rows[a];

    /// <summary>How the gap of restraint a changes by shift and turn of its slot.</summary>
    public Span<double> ByMotion(int a) => _byMotion.AsSpan(6 * a, 6);

    /// <summary>Collects them.</summary>
    /// <param name="rod">Evaluated, its tangent factored.</param>
    public void Collect(Equilibrium rod)
    {
        MakeRoom(rod.Contacts.RowCount, rod.State.Length);
        Count = 0;
        for (int i = 0; i < rod.Contacts.RowCount; i++)
        {
            if (!rod.Contacts.IsActive(i) || rod.Contacts.Rows[i].Kind == RowKind.Pin)
                continue;

            rod.Contacts.GapByMotion(i, rod.State, rod.Frames, ByMotion(Count));
            _rows[Count++] = i;
        }

        TakePinOut(rod);
    }

    /// <summary>The wire's answer to forces on its unknowns, in place.</summary>
    public void Solve(Equilibrium rod, Span<double> x)
    {
        rod.Factor.Solve(x);
        LetSlide(rod, x);
    }

    /// <summary>The wire's answer to a unit of force along a derivative.</summary>
    public void Solve(Equilibrium rod, int element, in ElementVector derivative, Span<double> x)
    {
        SolvePinned(rod, element, derivative, x);
        LetSlide(rod, x);
    }

    private static void SolvePinned(Equilibrium rod, int element, in ElementVector derivative, Span<double> x)
    {
        x.Clear();
        derivative.AddTo(x, element, 1);
        rod.Factor.Solve(x, element);
    }

    /// <summary>Lets an answer of the pinned wire slide.</summary>
    public void LetSlide(Equilibrium rod, Span<double> x)
    {
        if (_byPin == 0)
            return;

        (int element, ElementVector derivative) = rod.Contacts.Derivative(rod.Contacts.RowCount - 1);
        Spans.AddScaled(x, _ofPin.AsSpan(0, x.Length), _byPin * derivative.Dot(x, element));
    }

    private void TakePinOut(Equilibrium rod)
    {
        int pin = rod.Contacts.RowCount - 1;
        _byPin = 0;
        if (pin < 0 || rod.Contacts.Rows[pin].Kind != RowKind.Pin || rod.IsHeldAlong)
            return;

        Span<double> answer = _ofPin.AsSpan(0, rod.State.Length);
        (int element, ElementVector derivative) = rod.Contacts.Derivative(pin);
        SolvePinned(rod, element, derivative, answer);
        double give = 1 / (rod.Contacts.Penalty - LeastPin) - derivative.Dot(answer, element);
        _byPin = give > 0 ? 1 / give : 0;
    }

    private void MakeRoom(int rows, int unknowns)
    {
        if (_rows.Length < rows)
        {
            _rows = new int[rows];
            _byMotion = new double[6 * rows];
        }

        if (_ofPin.Length < unknowns)
            _ofPin = new double[2 * unknowns];
    }
}
