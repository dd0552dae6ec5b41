namespace Archwright.Dentition.ArchForms;

/// <summary>The polynomial arch: depth behind the front point Y = A·X⁶ + B·X², X from the midline.</summary>
/// <remarks>H. Noroozi, T. Hosseinzadeh Nik, R. Saeeda, "The dental arch form revisited", Angle Orthod
/// 2001;71:386–389 (found): nearest to the beta curve of all A·X^m + B·X^n; A and B from width and depth at the
/// canine and at the second molar. It takes the canine width as given, so it is the default.</remarks>
public sealed record PolynomialArch : ArchForm
{
    private readonly double halfWidth;

    /// <summary>An arch from its two coefficients.</summary>
    /// <param name="a">A [mm⁻⁵].</param>
    /// <param name="b">B [mm⁻¹].</param>
    /// <param name="width">Width at the ends of the curve [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is not between 10 and 120 mm, or the curve does not
    /// run backward all the way.</exception>
    public PolynomialArch(double a, double b, double width)
    {
        halfWidth = ArchFigures.Reasonable(width) / 2;
        A = a;
        B = b;
        // Y′ = 2X (3A X⁴ + B) is positive up to the end when it is at both ends of the factor.
        if (!(double.IsFinite(a) && b > 0 && 3 * a * Math.Pow(halfWidth, 4) + b > 0))
            throw new ArgumentOutOfRangeException(nameof(a), a, "The curve must run backward all the way to its end.");
    }

    /// <summary>Coefficient of the sixth power [mm⁻⁵].</summary>
    public double A { get; }

    /// <summary>Coefficient of the square [mm⁻¹].</summary>
    public double B { get; }

    /// <inheritdoc/>
    public override double HalfWidth => halfWidth;

    /// <summary>An arch through the canines and second molars.</summary>
    /// <param name="canineWidth">Across the canines [mm].</param>
    /// <param name="canineDepth">From the front point back to the canines [mm].</param>
    /// <param name="molarWidth">Across the second molars [mm].</param>
    /// <param name="molarDepth">From the front point back to the second molars [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">The figures are out of range, or no such curve runs backward all
    /// the way.</exception>
    public static PolynomialArch ThroughDepths(
        double canineWidth, double canineDepth, double molarWidth, double molarDepth)
    {
        CheckWidths(canineWidth, molarWidth);
        double c = canineWidth / 2;
        double m = molarWidth / 2;
        // A c⁶ + B c² = canine depth, A m⁶ + B m² = molar depth.
        double determinant = Math.Pow(c * m, 2) * (Math.Pow(c, 4) - Math.Pow(m, 4));
        double a = (canineDepth * m * m - molarDepth * c * c) / determinant;
        double b = (molarDepth * Math.Pow(c, 6) - canineDepth * Math.Pow(m, 6)) / determinant;
        return new PolynomialArch(a, b, molarWidth);
    }

    /// <summary>An arch through the canines and second molars with given lengths along it, as when crowns of known
    /// widths stand side by side.</summary>
    /// <param name="canineWidth">Across the canines [mm].</param>
    /// <param name="canineArc">Length from the front to the canine [mm].</param>
    /// <param name="molarWidth">Across the second molars [mm].</param>
    /// <param name="molarArc">Length from the front to the second molar [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">No such curve: a length is shorter than its half width, or the
    /// two do not go together.</exception>
    public static PolynomialArch WithLengths(double canineWidth, double canineArc, double molarWidth, double molarArc)
    {
        CheckWidths(canineWidth, molarWidth);
        // For a given B the length to the molar grows with A, and along such curves the length to the canine grows
        // with B: two nested searches by halving, each bounded.
        double low = 0;
        double high = 1;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            PolynomialArch? curve = WithMolarLength(middle, molarWidth, molarArc);
            bool tooLong = curve is null || curve.ArcTo(canineWidth / 2) > canineArc;
            (low, high) = tooLong ? (low, middle) : (middle, high);
        }

        PolynomialArch? found = WithMolarLength(low, molarWidth, molarArc);
        return found is not null && Math.Abs(found.ArcTo(canineWidth / 2) - canineArc) < 1e-6
            ? found
            : throw new ArgumentOutOfRangeException(
                nameof(canineArc), canineArc, "No arch of this kind has these widths and lengths together.");
    }

    /// <inheritdoc/>
    public override double DepthAt(double across) => A * Math.Pow(across, 6) + B * across * across;

    /// <inheritdoc/>
    protected override (double Across, double Backward) Place(double t) => (t * halfWidth, DepthAt(t * halfWidth));

    /// <inheritdoc/>
    protected override (double Across, double Backward) Rate(double t)
    {
        double x = t * halfWidth;
        return (halfWidth, halfWidth * (6 * A * Math.Pow(x, 5) + 2 * B * x));
    }

    /// <inheritdoc/>
    protected override double ParameterAt(double across) => Math.Abs(across) / halfWidth;

    // The A that gives the molar its length for this B; null when B alone is already too long or none is found.
    private static PolynomialArch? WithMolarLength(double b, double molarWidth, double molarArc)
    {
        if (b <= 0)
            b = 1e-12;
        double half = molarWidth / 2;
        double low = 0;
        double high = 200 / Math.Pow(half, 6);
        if (new PolynomialArch(low, b, molarWidth).ArcTo(half) > molarArc
            || new PolynomialArch(high, b, molarWidth).ArcTo(half) < molarArc)
        {
            return null;
        }

        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            bool tooLong = new PolynomialArch(middle, b, molarWidth).ArcTo(half) > molarArc;
            (low, high) = tooLong ? (low, middle) : (middle, high);
        }

        return new PolynomialArch(low, b, molarWidth);
    }

    private static void CheckWidths(double canineWidth, double molarWidth)
    {
        ArchFigures.Reasonable(canineWidth);
        ArchFigures.Reasonable(molarWidth);
        if (canineWidth >= molarWidth)
        {
            throw new ArgumentOutOfRangeException(
                nameof(canineWidth), canineWidth, "An arch is narrower at the canines than at the second molars.");
        }
    }
}
