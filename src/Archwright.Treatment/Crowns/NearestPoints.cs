using Archwright.Mechanics.Numerics;

namespace Archwright.Treatment.Crowns;

/// <summary>Nearest points of two straight lines of finite length, seen from above (x and y alone).</summary>
internal static class NearestPoints
{
    /// <summary>Places t and u on the lines a + t·da and b + u·db, both from −1 to 1, where they come
    /// nearest.</summary>
    public static (double T, double U) Between(Vector3 a, Vector3 da, Vector3 b, Vector3 db)
    {
        double aa = Flat(da, da);
        double bb = Flat(db, db);
        double ab = Flat(da, db);
        Vector3 between = b - a;
        double ga = Flat(da, between);
        double gb = Flat(db, between);
        double determinant = aa * bb - ab * ab;
        double t = determinant > 1e-9 * aa * bb ? Clamp((ga * bb - gb * ab) / determinant) : 0;
        double u = bb > 0 ? Clamp((ab * t - gb) / bb) : 0;
        t = aa > 0 ? Clamp((ab * u + ga) / aa) : 0;
        u = bb > 0 ? Clamp((ab * t - gb) / bb) : 0;
        return (t, u);
    }

    public static double Flat(Vector3 a, Vector3 b) => a.X * b.X + a.Y * b.Y;

    private static double Clamp(double x) => Math.Clamp(x, -1, 1);
}
