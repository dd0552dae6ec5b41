using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.ArchForms;

/// <summary>A plane arch curve, the same right and left: half of it told by a parameter from 0 at the front to 1 at
/// the end.</summary>
/// <remarks>Across is x (half of a width), backward is the depth behind the front point. In the patient's frame the
/// curve lies in a plane z = const, the front point forward, lengths along it positive toward the patient's right.
/// Lengths come from Gauss quadrature, 20 pieces of 5 points: within 1e-9 mm for the curves here.</remarks>
public abstract record ArchForm
{
    private const int Pieces = 20;

    private static readonly (double Node, double Weight)[] Gauss =
    [
        (-0.90617984593866399, 0.23692688505618909),
        (-0.53846931010568309, 0.47862867049936647),
        (0, 128.0 / 225),
        (0.53846931010568309, 0.47862867049936647),
        (0.90617984593866399, 0.23692688505618909),
    ];

    private protected ArchForm()
    {
    }

    /// <summary>Half of the width at the end of the curve [mm].</summary>
    public abstract double HalfWidth { get; }

    /// <summary>Depth of the end of the curve behind the front point [mm].</summary>
    public double Depth => Place(1).Backward;

    /// <summary>Length of the whole curve, end to end [mm].</summary>
    public double Perimeter => 2 * Length(1);

    /// <summary>Depth behind the front point at a distance from the midline [mm].</summary>
    /// <param name="across">Distance from the midline, 0 to <see cref="HalfWidth"/> [mm].</param>
    public abstract double DepthAt(double across);

    /// <summary>Length along the curve from the front to a distance from the midline [mm].</summary>
    /// <param name="across">0 to <see cref="HalfWidth"/> [mm].</param>
    public double ArcTo(double across) => Length(ParameterAt(across));

    /// <summary>Distance from the midline at a length along the curve from the front [mm].</summary>
    /// <exception cref="ArgumentOutOfRangeException">The curve is shorter.</exception>
    public double AcrossAt(double arc) => Place(ParameterAtArc(Math.Abs(arc))).Across;

    /// <summary>The frame of a slot on the curve or on its parallel: axis tangent to the curve, outward normal to
    /// it in the plane of the arch.</summary>
    /// <param name="arc">Length along the curve from the front, positive to the patient's right [mm].</param>
    /// <param name="offset">How far labially of the curve [mm].</param>
    /// <param name="front">y of the curve's front point in the patient's frame [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">The curve is shorter.</exception>
    public SlotFrame FrameAt(double arc, double offset = 0, double front = 0)
    {
        double t = ParameterAtArc(Math.Abs(arc));
        (double across, double backward) = Place(t);
        (double acrossRate, double backwardRate) = Rate(t);
        int side = arc >= 0 ? 1 : -1;
        // Along runs from the patient's right to the left: on the right forward, on the left backward.
        Vector3 along = new Vector3(-acrossRate, side * backwardRate, 0).Unit();
        var outward = new Vector3(along.Y, -along.X, 0);
        var point = new Vector3(side * across, front - backward, 0);
        return SlotFrame.Create(point + offset * outward, along, outward);
    }

    /// <summary>Place at a parameter [mm].</summary>
    protected abstract (double Across, double Backward) Place(double t);

    /// <summary>Derivative of <see cref="Place"/> by the parameter [mm].</summary>
    protected abstract (double Across, double Backward) Rate(double t);

    /// <summary>Parameter at a distance from the midline.</summary>
    protected abstract double ParameterAt(double across);

    private double Length(double t)
    {
        double sum = 0;
        double half = t / Pieces / 2;
        for (int i = 0; i < Pieces; i++)
        {
            foreach ((double node, double weight) in Gauss)
            {
                (double across, double backward) = Rate((2 * i + 1 + node) * half);
                sum += weight * half * Math.Sqrt(across * across + backward * backward);
            }
        }

        return sum;
    }

    // Newton's method kept between bounds; halving where it leaves them (at the end of a curve whose parameter
    // slows).
    private double ParameterAtArc(double arc)
    {
        double whole = Length(1);
        if (!(arc <= whole + 1e-9))
            throw new ArgumentOutOfRangeException(nameof(arc), arc, $"Half of the arch is only {whole:0.00} mm long.");

        double low = 0;
        double high = 1;
        double t = Math.Min(1, arc / whole);
        for (int i = 0; i < 100 && high - low > 1e-15; i++)
        {
            double excess = Length(t) - arc;
            if (Math.Abs(excess) < 1e-13 * whole)
                break;
            (low, high) = excess < 0 ? (t, high) : (low, t);
            (double across, double backward) = Rate(t);
            double next = t - excess / Math.Sqrt(across * across + backward * backward);
            t = next > low && next < high ? next : (low + high) / 2;
        }

        return t;
    }
}
