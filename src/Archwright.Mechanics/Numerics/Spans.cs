namespace Archwright.Mechanics.Numerics;

/// <summary>Sums over spans.</summary>
internal static class Spans
{
    /// <summary>Scalar product; both are of one length.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
            sum += a[i] * b[i];

        return sum;
    }
}
