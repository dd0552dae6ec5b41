using System.Runtime.CompilerServices;

namespace Archwright.Mechanics.Numerics;

/// <summary>Checks at the public edge: a wrong argument is refused by name, value and allowed range.</summary>
internal static class Require
{
    public static void PositiveLength(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(double.IsFinite(value) && value > 0))
            throw new ArgumentOutOfRangeException(name, value, "A length must be positive and finite, in mm.");
    }

    public static void Positive(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(double.IsFinite(value) && value > 0))
            throw new ArgumentOutOfRangeException(name, value, $"It must be positive and finite, in {unit}.");
    }

    public static void Between(
        double value, double low, double high, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= low && value <= high))
            throw new ArgumentOutOfRangeException(name, value, $"It must lie between {low} and {high} {unit}.");
    }

    public static void Finite(Vector3 value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!value.IsFinite)
            throw new ArgumentOutOfRangeException(name, value, "Every component must be a finite number.");
    }
}
