namespace Archwright.Dentition.ArchForms;

/// <summary>The elliptic arch: half of an ellipse whose long or short axis lies between the ends.</summary>
/// <remarks>A conic arc, an old model (from memory). Parameter t: x = (W/2) sin(πt/2), depth = D (1 − cos(πt/2)), so
/// that the upright tangent at the ends does no harm.</remarks>
public sealed record EllipticArch : ArchForm
{
    private readonly double halfWidth;
    private readonly double depth;

    /// <summary>Half of an ellipse.</summary>
    /// <param name="width">Width at the ends of the curve [mm].</param>
    /// <param name="depth">Depth of the ends behind the front point [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not between 10 and 120 mm.</exception>
    public EllipticArch(double width, double depth)
    {
        halfWidth = ArchFigures.Reasonable(width) / 2;
        this.depth = ArchFigures.Reasonable(depth);
    }

    /// <inheritdoc/>
    public override double HalfWidth => halfWidth;

    /// <inheritdoc/>
    public override double DepthAt(double across) => Place(ParameterAt(across)).Backward;

    /// <inheritdoc/>
    protected override (double Across, double Backward) Place(double t)
    {
        (double sin, double cos) = Math.SinCos(Math.PI * t / 2);
        return (halfWidth * sin, depth * (1 - cos));
    }

    /// <inheritdoc/>
    protected override (double Across, double Backward) Rate(double t)
    {
        (double sin, double cos) = Math.SinCos(Math.PI * t / 2);
        return (Math.PI / 2 * halfWidth * cos, Math.PI / 2 * depth * sin);
    }

    /// <inheritdoc/>
    protected override double ParameterAt(double across) =>
        2 / Math.PI * Math.Asin(Math.Clamp(Math.Abs(across) / halfWidth, 0, 1));
}
