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

    /// <summary>Saint-Venant torsion constant J; not the polar moment, which is larger but for a round wire [mm⁴].
    /// Its relative error is below 5e-9 for the wires of the trade and below 1e-7 for any other.</summary>
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
                nameof(edgeRadius), edgeRadius,
                $"It must be at least 0 and below half of the shorter side, {half} mm.");
        }

        return new Section
        {
            Thickness = thickness,
            Width = width,
            EdgeRadius = edgeRadius,
            Area = RoundedMoments.Area(thickness, width, edgeRadius),
            BendingOverThickness = RoundedMoments.Second(thickness, width, edgeRadius),
            BendingOverWidth = RoundedMoments.Second(width, thickness, edgeRadius),
            Torsion = RectangleTorsion.Constant(thickness, width, edgeRadius),
        };
    }

    /// <summary>Half of the height that the section needs in a slot when it is turned by
    /// <paramref name="twist"/> about its own axis [mm].</summary>
    /// <param name="twist">[rad]</param>
    /// <remarks>(h/2 − r)·|cos φ| + (w/2 − r)·|sin φ| + r: the support function of a rectangle with rounded edges;
    /// half the diameter for a round wire.</remarks>
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

    /// <summary>Largest strain of any fibre of the section.</summary>
    /// <param name="axial">Strain of the centre line.</param>
    /// <param name="curvatureOverThickness">Change of curvature about the outward director, which strains the thickness
    /// [1/mm].</param>
    /// <param name="curvatureOverWidth">Change of curvature about the third director, which strains the width
    /// [1/mm].</param>
    /// <returns>The largest magnitude, in tension or in compression.</returns>
    /// <remarks>Plane sections: a fibre at (x, y) strains by axial ± κw·x ± κt·y. The section is its own point
    /// mirror, so the largest magnitude is |axial| plus the support function of the outline in the direction (κw, κt):
    /// (h/2 − r)|κt| + (w/2 − r)|κw| + r√(κt² + κw²); for a round wire r√(κt² + κw²) with r = d/2.
    /// The shear of torsion is not in it.</remarks>
    public double LargestFibreStrain(double axial, double curvatureOverThickness, double curvatureOverWidth)
    {
        double flat = IsRound
            ? 0
            : (Thickness / 2 - EdgeRadius) * Math.Abs(curvatureOverThickness)
              + (Width / 2 - EdgeRadius) * Math.Abs(curvatureOverWidth);
        double curvature = Math.Sqrt(
            curvatureOverThickness * curvatureOverThickness + curvatureOverWidth * curvatureOverWidth);
        return Math.Abs(axial) + flat + EdgeRadius * curvature;
    }

    /// <summary>Torque play: the twist, one way, at which two edges touch the walls of a slot [rad].
    /// Positive infinity when the wire never locks: it is round, or its diagonal passes the slot.</summary>
    /// <param name="slotHeight">Occlusogingival opening of the slot [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">The slot is lower than the wire is thick.</exception>
    /// <remarks>Smallest root of h cos φ + w sin φ = c with h, w the half sides and c the half slot, each less the edge
    /// radius. With t = tan(φ/2) it is a quadratic; its smaller root is t = (c − h)/(w + √(w² + h² − c²)), which has no
    /// cancellation and is 0 exactly for a wire that fills the slot. There is no root, and no lock, when c² exceeds
    /// h² + w². The slot is taken as deep enough for the turned wire; see <see cref="HalfDepth"/>.</remarks>
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
        double clearance = (slotHeight - Thickness) / 2;
        double discriminant = w * w - clearance * (2 * h + clearance);   // w² + h² − c²,  c = h + clearance
        return discriminant < 0
            ? double.PositiveInfinity
            : 2 * Math.Atan(clearance / (w + Math.Sqrt(discriminant)));
    }
}
