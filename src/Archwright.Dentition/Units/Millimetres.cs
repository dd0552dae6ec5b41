namespace Archwright.Dentition.Units;

/// <summary>Lengths of the trade in millimetres.</summary>
public static class Millimetres
{
    /// <summary>Millimetres of one inch, exactly.</summary>
    public const double PerInch = 25.4;

    /// <summary>A length given in inches [mm].</summary>
    /// <param name="inches">Such as 0.019.</param>
    public static double FromInches(double inches) => inches * PerInch;
}
