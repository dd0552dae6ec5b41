using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Outlines;

/// <summary>A root as rings from the neck to its apex. Coordinates as those of the crown.</summary>
internal sealed class RootLoft
{
    /// <summary>Rings from the neck to just before the apex.</summary>
    public const int Rings = 14;

    // Roots of one tooth part this far from the neck, as a share of the length; common practice, no source.
    private const double Trunk = 0.3;

    private readonly double length;
    private readonly (double Mesial, double Labial) neck;
    private readonly (double Mesial, double Labial) half;
    private readonly (double Mesial, double Labial) middle;

    private RootLoft(
        double length, (double, double) neck, (double, double) half, (double, double) middle)
    {
        this.length = length;
        this.neck = neck;
        this.half = half;
        this.middle = middle;
    }

    /// <summary>The apex: a little distal of straight below, as most apices are.</summary>
    public (double Mesial, double Labial, double Occlusal) Apex => Centre(1);

    /// <summary>The roots of a tooth: three of upper molars, two of lower molars and of the upper first premolar, one
    /// of the others.</summary>
    public static IEnumerable<RootLoft> Of(ToothNumber tooth, Anatomy anatomy)
    {
        double whole = anatomy.RootLength.Value;
        (double m, double l) = (anatomy.NeckWidth.Value / 2, anatomy.NeckDepth.Value / 2);
        return (tooth.IsUpper, tooth.Position) switch
        {
            (true, >= 6) =>
            [
                new RootLoft(whole, (m, l), (0.42 * m, 0.5 * l), (0.55 * m, 0.5 * l)),
                new RootLoft(0.95 * whole, (m, l), (0.38 * m, 0.46 * l), (-0.55 * m, 0.5 * l)),
                new RootLoft(1.06 * whole, (m, l), (0.6 * m, 0.44 * l), (0, -0.7 * l)),
            ],
            (false, >= 6) =>
            [
                new RootLoft(whole, (m, l), (0.36 * m, 0.86 * l), (0.55 * m, 0)),
                new RootLoft(0.96 * whole, (m, l), (0.36 * m, 0.78 * l), (-0.55 * m, 0)),
            ],
            (true, 4) =>
            [
                new RootLoft(whole, (m, l), (0.7 * m, 0.42 * l), (0, 0.48 * l)),
                new RootLoft(0.97 * whole, (m, l), (0.68 * m, 0.4 * l), (0, -0.5 * l)),
            ],
            _ => [new RootLoft(whole, (m, l), (m, l), (0, 0))],
        };
    }

    /// <summary>A point of a ring.</summary>
    public (double Mesial, double Labial, double Occlusal) At(int ring, double angle)
    {
        double share = (double)ring / Rings;
        double parted = Math.Clamp(share / Trunk, 0, 1);
        double narrowed = Math.Sqrt(1 - Math.Pow(share, 2.2)) * (1 - 0.18 * share);
        (double mesial, double labial, double occlusal) = Centre(share);
        (double sin, double cos) = Math.SinCos(angle);
        return (
            mesial + narrowed * cos * (neck.Mesial + parted * (half.Mesial - neck.Mesial)),
            labial + narrowed * sin * (neck.Labial + parted * (half.Labial - neck.Labial)),
            occlusal);
    }

    private (double, double, double) Centre(double share)
    {
        double parted = Math.Clamp(share / Trunk, 0, 1) + 0.25 * Math.Sin(Math.PI * share);
        return (middle.Mesial * parted - 0.05 * length * share * share, middle.Labial * parted, -length * share);
    }
}
