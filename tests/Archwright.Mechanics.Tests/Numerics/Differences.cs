namespace Archwright.Mechanics.Tests.Numerics;

/// <summary>Derivatives by differences, to check derivatives by formula against.</summary>
internal static class Differences
{
    /// <summary>Derivative at zero by five points; errs by h⁴ f⁽⁵⁾/30 and by rounding of f over h.</summary>
    public static double Of(Func<double, double> f, double h) =>
        (8 * (f(h) - f(-h)) - (f(2 * h) - f(-2 * h))) / (12 * h);

    /// <summary>The same of a vector, added up in place: f fills what it is given.</summary>
    public static double[] Of(Action<double, double[]> f, int size, double h)
    {
        double[] at = new double[size];
        double[] sum = new double[size];
        foreach ((double step, double weight) in (ReadOnlySpan<(double, double)>)[(1, 8), (-1, -8), (2, -1), (-2, 1)])
        {
            f(step * h, at);
            for (int i = 0; i < size; i++)
                sum[i] += weight * at[i] / (12 * h);
        }

        return sum;
    }
}
