using System.Runtime.CompilerServices;

namespace Archwright.Dentition.ArchForms;

/// <summary>Checks of the figures that an arch is made from.</summary>
internal static class ArchFigures
{
    /// <summary>A width or depth of a human arch, passed on.</summary>
    public static double Reasonable(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value is >= 10 and <= 120
            ? value
            : throw new ArgumentOutOfRangeException(name, value, "A figure of an arch lies between 10 and 120 mm.");
}
