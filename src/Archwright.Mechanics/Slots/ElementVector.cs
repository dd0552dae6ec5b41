using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Slots;

/// <summary>A vector over the sixteen unknowns of one element: the eight of its start node, the eight of its end
/// node.</summary>
internal readonly struct ElementVector
{
    public readonly Vector512<double> Start, End;

    public ElementVector(Vector512<double> start, Vector512<double> end)
    {
        Start = start;
        End = end;
    }

    /// <summary>Derivative of v·r at a place of the element.</summary>
    public static ElementVector OfPoint(Vector3 v, in Hermite f) => new(
        Vector512.Create(v.X * f.N0, v.Y * f.N0, v.Z * f.N0, v.X * f.N1, v.Y * f.N1, v.Z * f.N1, 0, 0),
        Vector512.Create(v.X * f.N2, v.Y * f.N2, v.Z * f.N2, v.X * f.N3, v.Y * f.N3, v.Z * f.N3, 0, 0));

    /// <summary>Derivative of v·r′ + turn·θ at a place of the element.</summary>
    public static ElementVector OfSlope(Vector3 v, double turn, in Hermite f) => new(
        Vector512.Create(
            v.X * f.A0, v.Y * f.A0, v.Z * f.A0, v.X * f.A1, v.Y * f.A1, v.Z * f.A1, turn * f.M0, turn * f.Mm),
        Vector512.Create(
            v.X * f.A2, v.Y * f.A2, v.Z * f.A2, v.X * f.A3, v.Y * f.A3, v.Z * f.A3, turn * f.M1, 0));

    public static ElementVector operator +(in ElementVector a, in ElementVector b) => new(a.Start + b.Start, a.End
        + b.End);

    public static ElementVector operator *(in ElementVector a, double b) => new(a.Start * b, a.End * b);

    /// <summary>Adds factor × this to a vector of unknowns.</summary>
    public void AddTo(Span<double> x, int element, double factor)
    {
        Span<double> at = x.Slice(8 * element, 16);
        ref double r = ref at[0];
        (Vector512.LoadUnsafe(ref r) + Start * factor).StoreUnsafe(ref r);
        (Vector512.LoadUnsafe(ref r, 8) + End * factor).StoreUnsafe(ref r, 8);
    }

    /// <summary>Product with a vector of unknowns.</summary>
    public double Dot(ReadOnlySpan<double> x, int element)
    {
        ref double r = ref Unsafe.AsRef(in x[8 * element]);
        return Vector512.Sum(Vector512.LoadUnsafe(ref r) * Start + Vector512.LoadUnsafe(ref r, 8) * End);
    }

    /// <summary>Adds x·yᵀ to the matrix. The caller sees to it that the sum of what is added is symmetric.</summary>
    public static void AddOuter(BlockTridiagonal matrix, int element, in ElementVector x, in ElementVector y)
    {
        ref double d = ref matrix.Diagonal(element)[0];
        ref double e = ref matrix.Coupling(element)[0];
        ref double d1 = ref matrix.Diagonal(element + 1)[0];
        for (int i = 0; i < 8; i++)
        {
            nuint at = (nuint)(8 * i);
            double onStart = x.Start.GetElement(i);
            double onEnd = x.End.GetElement(i);
            (Vector512.LoadUnsafe(ref d, at) + y.Start * onStart).StoreUnsafe(ref d, at);
            (Vector512.LoadUnsafe(ref e, at) + y.End * onStart).StoreUnsafe(ref e, at);
            (Vector512.LoadUnsafe(ref d1, at) + y.End * onEnd).StoreUnsafe(ref d1, at);
        }
    }
}
