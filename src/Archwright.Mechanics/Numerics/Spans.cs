using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Archwright.Mechanics.Numerics;

/// <summary>Sums over spans.</summary>
internal static class Spans
{
    /// <summary>Scalar product; both are of one length.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        int lanes = Vector256<double>.Count;
        ref double left = ref MemoryMarshal.GetReference(a);
        ref double right = ref MemoryMarshal.GetReference(b[..a.Length]);
        Vector256<double> sums = Vector256<double>.Zero;
        int i = 0;
        for (; i <= a.Length - lanes; i += lanes)
            sums += Vector256.LoadUnsafe(ref left, (nuint)i) * Vector256.LoadUnsafe(ref right, (nuint)i);

        double sum = Vector256.Sum(sums);
        for (; i < a.Length; i++)
            sum += a[i] * b[i];

        return sum;
    }

    /// <summary>x += factor · y; y is as long as x at least.</summary>
    public static void AddScaled(Span<double> x, ReadOnlySpan<double> y, double factor)
    {
        int lanes = Vector256<double>.Count;
        ref double to = ref MemoryMarshal.GetReference(x);
        ref double from = ref MemoryMarshal.GetReference(y[..x.Length]);
        int i = 0;
        for (; i <= x.Length - lanes; i += lanes)
        {
            (Vector256.LoadUnsafe(ref to, (nuint)i) + Vector256.LoadUnsafe(ref from, (nuint)i) * factor)
                .StoreUnsafe(ref to, (nuint)i);
        }

        for (; i < x.Length; i++)
            x[i] += factor * y[i];
    }
}
