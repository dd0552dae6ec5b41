using System.Runtime.CompilerServices;

namespace Archwright.Mechanics.Numerics;

/// <summary>A point or a free vector in space, double precision. <c>default</c> is the zero vector.</summary>
/// <param name="X">First component.</param>
/// <param name="Y">Second component.</param>
/// <param name="Z">Third component.</param>
public readonly record struct Vector3(double X, double Y, double Z)
{
    /// <summary>Euclidean length.</summary>
    public double Length => Math.Sqrt(Dot(this, this));

    /// <summary>True when no component is NaN or infinite.</summary>
    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y) && double.IsFinite(Z);

    /// <summary>The vector of length one in this direction.</summary>
    /// <exception cref="InvalidOperationException">The vector is zero or not finite.</exception>
    public Vector3 Unit()
    {
        double length = Length;
        return length > 0 && double.IsFinite(length)
            ? this / length
            : throw new InvalidOperationException("A zero or infinite vector has no direction.");
    }

    /// <summary>This vector turned by the rotation vector <paramref name="turn"/> (axis times angle [rad]).</summary>
    public Vector3 Turned(Vector3 turn)
    {
        double angle = turn.Length;
        if (angle == 0)
            return this;

        Vector3 axis = turn / angle;
        (double sin, double cos) = Math.SinCos(angle);
        return this * cos + Cross(axis, this) * sin + axis * (Dot(axis, this) * (1 - cos));
    }

    /// <summary>Scalar product.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Dot(Vector3 a, Vector3 b) => a.X * b.X + a.Y * b.Y + a.Z * b.Z;

    /// <summary>Vector product, right-handed.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 Cross(Vector3 a, Vector3 b) =>
        new(a.Y * b.Z - a.Z * b.Y, a.Z * b.X - a.X * b.Z, a.X * b.Y - a.Y * b.X);

    /// <summary>Sum.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 operator +(Vector3 a, Vector3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 operator -(Vector3 a, Vector3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>Opposite.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 operator -(Vector3 a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Multiple.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 operator *(Vector3 a, double b) => new(a.X * b, a.Y * b, a.Z * b);

    /// <summary>Multiple.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 operator *(double b, Vector3 a) => a * b;

    /// <summary>Fraction.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 operator /(Vector3 a, double b) => a * (1 / b);
}
