namespace Archwright.Dentition.ArchForms;

/// <summary>The beta curve: y = 3.0314·D·(x/W + ½)^0.8·(½ − x/W)^0.8 forward of the line of the second
/// molars.</summary>
/// <remarks>S. Braun, W. P. Hnat, D. E. Fender, H. L. Legan, "The form of the human dental arch", Angle Orthod
/// 1998;68:29–36 (correlation with casts 0.98: found; the formula: from memory, its constant checked: it makes
/// y(0) = D). With the length of average crowns it comes out narrow at the canines, so it is the second choice here.
/// Parameter t: x = (W/2)(1 − (1 − t)⁵), which takes away the vertical tangent at the end.</remarks>
public sealed record BetaArch : ArchForm
{
    private const double Exponent = 0.8;
    private const double Constant = 3.0314;
    private readonly double width;
    private readonly double depth;

    /// <summary>A beta curve.</summary>
    /// <param name="width">W, across the second molars [mm].</param>
    /// <param name="depth">D, from the front to the line of the second molars [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not between 10 and 120 mm.</exception>
    public BetaArch(double width, double depth)
    {
        this.width = ArchFigures.Reasonable(width);
        this.depth = ArchFigures.Reasonable(depth);
    }

    /// <inheritdoc/>
    public override double HalfWidth => width / 2;

    /// <inheritdoc/>
    public override double DepthAt(double across) => Place(ParameterAt(across)).Backward;

    /// <summary>y of the formula: forward of the line of the second molars [mm].</summary>
    public double ForwardAt(double across)
    {
        double u = Math.Min(0.5, Math.Abs(across) / width);
        return Constant * depth * Math.Pow(0.25 - u * u, Exponent);
    }

    /// <inheritdoc/>
    protected override (double Across, double Backward) Place(double t)
    {
        double left = Math.Pow(1 - t, 5);
        return (width / 2 * (1 - left), Front - Forward(left));
    }

    // With s = 1 − t and x = (W/2)(1 − s⁵): ¼ − (x/W)² = s⁵(2 − s⁵)/4, so y = c D (s⁵(2 − s⁵)/4)^0.8
    // = c D 4^−0.8 · s⁴ (2 − s⁵)^0.8, smooth at s = 0.
    /// <inheritdoc/>
    protected override (double Across, double Backward) Rate(double t)
    {
        double s = 1 - t;
        double s5 = Math.Pow(s, 5);
        double rest = 2 - s5;
        double perS = Constant * depth * Math.Pow(4, -Exponent)
            * (4 * s * s * s * Math.Pow(rest, Exponent)
                - Exponent * 5 * Math.Pow(s, 8) * Math.Pow(rest, Exponent - 1));
        return (width / 2 * 5 * Math.Pow(s, 4), perS);
    }

    /// <inheritdoc/>
    protected override double ParameterAt(double across) =>
        1 - Math.Pow(1 - Math.Clamp(Math.Abs(across) / HalfWidth, 0, 1), 0.2);

    private double Front => Forward(1);

    private double Forward(double left) => Constant * depth * Math.Pow(left * (2 - left) / 4, Exponent);
}
