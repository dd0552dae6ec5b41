using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Sections;

/// <summary>Cross-section of a wire: its outline and the constants that bending and torsion need.</summary>
/// <remarks>
/// Thickness is the occlusogingival side, the one that fills the slot's height; width is the labiolingual side.
/// In the frame of the section the width lies along the second director (outward), the thickness along the third.
/// </remarks>
public sealed record Section
{
    /// <summary>Round or rectangular.</summary>
    public bool IsRound { get; private init; }

    /// <summary>Occlusogingival side; the diameter of a round wire [mm].</summary>
    public double Thickness { get; private init; }

    /// <summary>Labiolingual side; the diameter of a round wire [mm].</summary>
    public double Width { get; private init; }

    /// <summary>Radius of the rounded edges; half the diameter of a round wire [mm].</summary>
    public double EdgeRadius { get; private init; }

    /// <summary>Area [mm²].</summary>
    public double Area { get; private init; }

    /// <summary>Second moment for bending that strains the thickness, as an occlusal step does [mm⁴].</summary>
    public double BendingOverThickness { get; private init; }

    /// <summary>Second moment for bending that strains the width, as a labial step does [mm⁴].</summary>
    public double BendingOverWidth { get; private init; }

    /// <summary>Saint-Venant torsion constant J; not the polar moment, which is larger [mm⁴].</summary>
    public double Torsion { get; private init; }

    private Section()
    {
    }

    /// <summary>A round wire.</summary>
    /// <param name="diameter">[mm]</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not a positive, finite length.</exception>
    public static Section Round(double diameter)
    {
        Require.PositiveLength(diameter);
        double second = Math.PI * Math.Pow(diameter, 4) / 64;

        return new Section
        {
            IsRound = true,
            Thickness = diameter,
            Width = diameter,
            EdgeRadius = diameter / 2,
            Area = Math.PI * diameter * diameter / 4,
            BendingOverThickness = second,
            BendingOverWidth = second,
            Torsion = 2 * second,
        };
    }

    /// <summary>A square or rectangular wire with rounded edges.</summary>
    /// <param name="thickness">Occlusogingival side [mm].</param>
    /// <param name="width">Labiolingual side [mm].</param>
    /// <param name="edgeRadius">Radius of the four edges, 0 for sharp ones [mm]; below half the shorter side.</param>
    /// <exception cref="ArgumentOutOfRangeException">A side is not a positive, finite length, or the radius is
    /// negative or not below half of the shorter side.</exception>
    /// <example><code>var wire = Section.Rectangular(thickness: 0.4318, width: 0.6350); // 17 × 25 mil</code></example>
    public static Section Rectangular(double thickness, double width, double edgeRadius = 0)
    {
        Require.PositiveLength(thickness);
        Require.PositiveLength(width);
        double half = Math.Min(thickness, width) / 2;
        if (!(edgeRadius >= 0 && edgeRadius < half))
        {
            throw new ArgumentOutOfRangeException(
                nameof(edgeRadius), edgeRadius, $"It must be at least 0 and below half of the shorter side, {half} mm.");
        }

        return new Section
        {
            Thickness = thickness,
            Width = width,
            EdgeRadius = edgeRadius,
            Area = thickness * width - (4 - Math.PI) * edgeRadius * edgeRadius,
            BendingOverThickness = RoundedSecondMoment(thickness, width, edgeRadius),
            BendingOverWidth = RoundedSecondMoment(width, thickness, edgeRadius),
            Torsion = RectangleTorsion.Constant(thickness, width, edgeRadius),
        };
    }

    /// <summary>Half of the height that the section needs in a slot when it is turned by
    /// <paramref name="twist"/> about its own axis [mm].</summary>
    /// <param name="twist">[rad]</param>
    /// <remarks>(h/2 − r)·|cos φ| + (w/2 − r)·|sin φ| + r: the support function of a rectangle with rounded edges.</remarks>
    public double HalfHeight(double twist) =>
        IsRound
            ? Thickness / 2
            : (Thickness / 2 - EdgeRadius) * Math.Abs(Math.Cos(twist))
              + (Width / 2 - EdgeRadius) * Math.Abs(Math.Sin(twist)) + EdgeRadius;

    /// <summary>Half of the depth that the section needs in a slot when it is turned by
    /// <paramref name="twist"/> about its own axis [mm].</summary>
    /// <param name="twist">[rad]</param>
    public double HalfDepth(double twist) =>
        IsRound
            ? Width / 2
            : (Width / 2 - EdgeRadius) * Math.Abs(Math.Cos(twist))
              + (Thickness / 2 - EdgeRadius) * Math.Abs(Math.Sin(twist)) + EdgeRadius;

    /// <summary>Torque play: the twist, one way, at which two edges touch the walls of a slot [rad].
    /// Positive infinity when the wire never locks (round, or a slot taller than the section's diagonal).</summary>
    /// <param name="slotHeight">Occlusogingival opening of the slot [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">The slot is lower than the wire is thick.</exception>
    /// <remarks>Smallest root of (h/2 − r) cos φ + (w/2 − r) sin φ + r = H/2, in closed form: with
    /// R = √((h/2−r)² + (w/2−r)²) and δ = atan2(w/2−r, h/2−r) the left side is R cos(φ − δ) + r.</remarks>
    public double TorquePlay(double slotHeight)
    {
        if (!(slotHeight >= Thickness))
        {
            throw new ArgumentOutOfRangeException(
                nameof(slotHeight), slotHeight, $"A wire {Thickness} mm thick does not go into it.");
        }

        if (IsRound)
            return double.PositiveInfinity;

        double h = Thickness / 2 - EdgeRadius;
        double w = Width / 2 - EdgeRadius;
        double reach = Math.Sqrt(h * h + w * w);
        double needed = (slotHeight / 2 - EdgeRadius) / reach;
        return needed > 1 ? double.PositiveInfinity : Math.Max(0, Math.Atan2(w, h) - Math.Acos(needed));
    }

    // ∫ y² over a rectangle (height a along y, breadth b) less what the rounding of four edges removes. One removed
    // corner is a square of side r less a quarter circle; with u measured from the centre of the quarter circle,
    // ∫ dA = r²(1 − π/4), ∫ u dA = r³(1/2 − 1/3), ∫ u² dA = r⁴(1/3 − π/16), and y = a/2 − r + u.
    private static double RoundedSecondMoment(double a, double b, double r)
    {
        double c = a / 2 - r;
        double area = r * r * (1 - Math.PI / 4);
        double first = r * r * r / 6;
        double second = r * r * r * r * (1.0 / 3 - Math.PI / 16);
        return b * a * a * a / 12 - 4 * (c * c * area + 2 * c * first + second);
    }
}
