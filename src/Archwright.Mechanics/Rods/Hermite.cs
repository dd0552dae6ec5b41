using System.Runtime.Intrinsics;
using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Rods;

/// <summary>Shape functions of one element at one place: cubic Hermite for the centre line (value and slope at both
/// ends), quadratic Lagrange for the turn of the section (both ends and middle). Derivatives are by length.</summary>
internal readonly struct Hermite
{
    /// <summary>Centre line: value, then slope, at the start, then at the end; N.</summary>
    public readonly double N0, N1, N2, N3;

    /// <summary>First derivatives [1/mm].</summary>
    public readonly double A0, A1, A2, A3;

    /// <summary>Second derivatives [1/mm²].</summary>
    public readonly double B0, B1, B2, B3;

    /// <summary>Turn of the section: start, middle, end.</summary>
    public readonly double M0, Mm, M1;

    /// <summary>Their derivatives [1/mm].</summary>
    public readonly double C0, Cm, C1;

    /// <param name="u">From 0 (start) to 1 (end).</param>
    /// <param name="h">Length of the element [mm].</param>
    public Hermite(double u, double h)
    {
        double v = 1 - u;
        N0 = (1 + 2 * u) * v * v;
        N1 = h * u * v * v;
        N2 = u * u * (3 - 2 * u);
        N3 = -h * u * u * v;
        A0 = -6 * u * v / h;
        A1 = v * (1 - 3 * u);
        A2 = -A0;
        A3 = u * (3 * u - 2);
        B0 = (12 * u - 6) / (h * h);
        B1 = (6 * u - 4) / h;
        B2 = -B0;
        B3 = (6 * u - 2) / h;
        M0 = v * (1 - 2 * u);
        Mm = 4 * u * v;
        M1 = u * (2 * u - 1);
        C0 = (4 * u - 3) / h;
        Cm = (4 - 8 * u) / h;
        C1 = (4 * u - 1) / h;
    }

    /// <summary>Point of the centre line.</summary>
    public Vector3 Point(Vector3 r0, Vector3 t0, Vector3 r1, Vector3 t1) => r0 * N0 + t0 * N1 + r1 * N2 + t1 * N3;

    /// <summary>Its first derivative.</summary>
    public Vector3 Slope(Vector3 r0, Vector3 t0, Vector3 r1, Vector3 t1) => r0 * A0 + t0 * A1 + r1 * A2 + t1 * A3;

    /// <summary>Its second derivative.</summary>
    public Vector3 Bend(Vector3 r0, Vector3 t0, Vector3 r1, Vector3 t1) => r0 * B0 + t0 * B1 + r1 * B2 + t1 * B3;
}

/// <summary>The weights of <see cref="Hermite"/> in the order of a node's eight unknowns (x y z, x′ y′ z′, turn at the
/// node, turn in the middle of the element after it): four rows of eight, first derivative or turn and second
/// derivative or twist, for the start node and for the end node.</summary>
internal static class HermiteWeights
{
    public const int Count = 32;

    public static void Fill(double u, double h, Span<double> w)
    {
        var f = new Hermite(u, h);
        Row(w, f.A0, f.A1, f.M0, f.Mm);
        Row(w[8..], f.B0, f.B1, f.C0, f.Cm);
        Row(w[16..], f.A2, f.A3, f.M1, 0);
        Row(w[24..], f.B2, f.B3, f.C1, 0);
    }

    private static void Row(Span<double> w, double value, double slope, double turn, double middle) =>
        Vector512.Create(value, value, value, slope, slope, slope, turn, middle).CopyTo(w);
}
