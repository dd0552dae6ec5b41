namespace Archwright.Dentition.ArchForms;

/// <summary>The catenary arch: depth behind the front point a·(cosh(x/a) − 1), as a hanging chain.</summary>
/// <remarks>The commonest form of 520 people with normal occlusion: 47 % upper, 41 % lower (Jordanian sample, found);
/// the curve itself is an old model (from memory). One width and one depth settle it.</remarks>
public sealed record CatenaryArch : ArchForm
{
    private readonly double halfWidth;
    private readonly double a;

    /// <summary>A catenary.</summary>
    /// <param name="width">Width at the ends of the curve [mm].</param>
    /// <param name="depth">Depth of the ends behind the front point [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not between 10 and 120 mm.</exception>
    public CatenaryArch(double width, double depth)
    {
        halfWidth = ArchFigures.Reasonable(width) / 2;
        a = Parameter(halfWidth, ArchFigures.Reasonable(depth));
    }

    /// <inheritdoc/>
    public override double HalfWidth => halfWidth;

    /// <inheritdoc/>
    public override double DepthAt(double across) => a * (Math.Cosh(across / a) - 1);

    /// <inheritdoc/>
    protected override (double Across, double Backward) Place(double t) => (t * halfWidth, DepthAt(t * halfWidth));

    /// <inheritdoc/>
    protected override (double Across, double Backward) Rate(double t) =>
        (halfWidth, halfWidth * Math.Sinh(t * halfWidth / a));

    /// <inheritdoc/>
    protected override double ParameterAt(double across) => Math.Abs(across) / halfWidth;

    // a (cosh(w/a) − 1) falls with a, from infinity to nil: halving, on the logarithm of a.
    private static double Parameter(double halfWidth, double depth)
    {
        double low = Math.Log(halfWidth / 50);
        double high = Math.Log(halfWidth * 1000);
        for (int i = 0; i < 200; i++)
        {
            double middle = (low + high) / 2;
            double tried = Math.Exp(middle);
            (low, high) = tried * (Math.Cosh(halfWidth / tried) - 1) > depth ? (middle, high) : (low, middle);
        }

        return Math.Exp((low + high) / 2);
    }
}
