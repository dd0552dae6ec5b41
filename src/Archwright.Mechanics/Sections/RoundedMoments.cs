namespace Archwright.Mechanics.Sections;

/// <summary>Area and second moments of a rectangle with rounded edges, in closed form.</summary>
/// <remarks>
/// The rectangle less what rounding takes away. One corner that is taken away is a square of side r less a quarter of
/// a circle. With u measured from the centre of the circle along the side a,
/// ∫ dA = r²(1 − π/4), ∫ u dA = r³(1/2 − 1/3), ∫ u² dA = r⁴(1/3 − π/16),
/// and the distance from the middle of the section is a/2 − r + u.
/// </remarks>
internal static class RoundedMoments
{
    /// <summary>Area.</summary>
    public static double Area(double a, double b, double r) => a * b - (4 - Math.PI) * r * r;

    /// <summary>∫ y² dA about the middle, y along the side <paramref name="a"/>.</summary>
    public static double Second(double a, double b, double r)
    {
        double c = a / 2 - r;
        double area = r * r * (1 - Math.PI / 4);
        double first = r * r * r / 6;
        double second = r * r * r * r * (1.0 / 3 - Math.PI / 16);
        return b * a * a * a / 12 - 4 * (c * c * area + 2 * c * first + second);
    }
}
