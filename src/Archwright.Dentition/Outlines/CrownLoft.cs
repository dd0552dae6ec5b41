using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Outlines;

/// <summary>A crown as rings from its neck to its biting surface. Coordinates: mesial, labial, occlusal from the middle
/// of the neck [mm].</summary>
internal sealed class CrownLoft
{
    private const int Walls = 16;
    private const int Caps = 7;

    /// <summary>Rings of the wall and of the biting surface.</summary>
    public const int Rings = Walls + Caps;

    private readonly double width;
    private readonly double height;
    private readonly double depth;
    private readonly double exponent;
    private readonly double taper;
    private readonly double relief;
    private readonly (double At, double Value)[] halfWidth;
    private readonly (double At, double Value)[] labial;
    private readonly (double At, double Value)[] lingual;
    private readonly (double Mesial, double Labial, double Size)[] cusps;

    public CrownLoft(ToothNumber tooth, Anatomy anatomy)
    {
        (width, height, depth) = (anatomy.CrownWidth.Value, anatomy.CrownHeight.Value, anatomy.CrownDepth.Value);
        double neckWidth = anatomy.NeckWidth.Value / width / 2;
        double neckDepth = anatomy.NeckDepth.Value / depth / 2;
        bool upper = tooth.IsUpper;
        (exponent, taper, relief, cusps) = tooth.Position switch
        {
            1 or 2 => (2.4, 0.25, 0.0, []),
            3 => (2.2, 0.3, 0.0, []),
            4 or 5 => (2.4, 0.12, 0.30, new[] { (0.0, 0.52, 1.0), (0.0, -0.5, upper ? 0.9 : 0.6) }),
            _ when upper => (
                2.9, 0.0, 0.26, [(0.5, 0.5, 1), (-0.5, 0.5, 0.95), (0.42, -0.5, 1), (-0.52, -0.5, 0.7)]),
            6 => (
                2.9, 0.04, 0.26,
                [(0.6, 0.5, 1), (-0.05, 0.52, 0.95), (-0.7, 0.4, 0.7), (0.48, -0.5, 1), (-0.48, -0.5, 0.95)]),
            _ => (2.9, 0.04, 0.26, [(0.5, 0.5, 1), (-0.5, 0.5, 0.95), (0.5, -0.5, 1), (-0.5, -0.5, 0.95)]),
        };
        halfWidth = tooth.Position switch
        {
            1 or 2 => [(0, neckWidth), (0.72, 0.5), (1, 0.47)],
            3 => [(0, neckWidth), (0.68, 0.5), (1, 0.42)],
            4 or 5 => [(0, neckWidth), (0.62, 0.5), (1, 0.4)],
            _ => [(0, neckWidth), (0.6, 0.5), (1, 0.44)],
        };
        labial = tooth.Position switch
        {
            1 or 2 => [(0, neckDepth), (0.25, 0.5), (0.6, 0.42), (1, 0.17)],
            3 => [(0, neckDepth), (0.3, 0.5), (0.65, 0.42), (1, 0.14)],
            _ => [(0, neckDepth), (0.3, 0.5), (0.7, 0.45), (1, 0.34)],
        };
        lingual = tooth.Position switch
        {
            1 or 2 => [(0, -neckDepth), (0.2, -0.5), (0.55, -0.2), (0.85, -0.04), (1, 0)],
            3 => [(0, -neckDepth), (0.25, -0.5), (0.6, -0.28), (1, -0.06)],
            _ => [(0, -neckDepth), (0.4, -0.5), (0.72, -0.46), (1, -0.36)],
        };
    }

    /// <summary>The middle of the biting surface.</summary>
    public (double Mesial, double Labial, double Occlusal) Middle => Capped(0, 0);

    /// <summary>The labial face at a share of the height, from the middle of the neck [mm].</summary>
    public double LabialAt(double share) => depth * Curve(labial, share);

    /// <summary>A point of a ring.</summary>
    public (double Mesial, double Labial, double Occlusal) At(int ring, double angle)
    {
        double share = Math.Min(1.0, ring / (Walls - 1.0));
        double power = 2 + (exponent - 2) * share;
        (double sin, double cos) = Math.SinCos(angle);
        double u = Math.CopySign(Math.Pow(Math.Abs(cos), 2 / power), cos);
        double v = Math.CopySign(Math.Pow(Math.Abs(sin), 2 / power), sin);
        if (ring >= Walls)
        {
            double inside = 1 - (ring - Walls + 1.0) / (Caps + 1.0);
            return Capped(inside * u, inside * v);
        }

        double lowered = Smooth((share - 0.55) / 0.45) * Lowered(u, v);
        return (Across(share, u, v), Out(share, v), height * (share - lowered));
    }

    private (double, double, double) Capped(double u, double v) =>
        (Across(1, u, v), Out(1, v), height * (1 - Lowered(u, v)));

    private double Across(double share, double u, double v) =>
        width * Curve(halfWidth, share) * u * (1 - taper * Math.Max(0, -v));

    private double Out(double share, double v)
    {
        double front = Curve(labial, share);
        double back = Curve(lingual, share);
        return depth * ((front + back) / 2 + v * (front - back) / 2);
    }

    // How far below the plane of the cusps, as a share of the height. Incisors: an edge whose distal corner is the
    // rounder one; canines: a tip with two slopes; the others: cusps with grooves between.
    private double Lowered(double u, double v)
    {
        if (cusps.Length == 0)
        {
            return exponent > 2.3
                ? (u > 0 ? 0.03 : 0.07) * Math.Pow(Math.Abs(u), 4)
                : (u > 0 ? 0.2 : 0.26) * Math.Pow(Math.Abs(u), 1.25);
        }

        const double along = 0.2;
        const double across = 0.14;
        double hill = cusps.Sum(cusp => cusp.Size * Math.Exp(
            -(u - cusp.Mesial) * (u - cusp.Mesial) / along - (v - cusp.Labial) * (v - cusp.Labial) / across));
        return relief * (1 - Math.Min(1, hill));
    }

    // Through given points, level at the outer ones.
    private static double Curve((double At, double Value)[] points, double at)
    {
        int i = 1;
        while (i < points.Length - 1 && at > points[i].At)
            i++;
        (double from, double a) = points[i - 1];
        (double to, double b) = points[i];
        return a + (b - a) * Smooth((at - from) / (to - from));
    }

    private static double Smooth(double x)
    {
        double inside = Math.Clamp(x, 0, 1);
        return inside * inside * (3 - 2 * inside);
    }
}
