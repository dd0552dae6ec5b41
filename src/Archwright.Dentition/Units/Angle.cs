namespace Archwright.Dentition.Units;

/// <summary>Angles as people say them and as the computation wants them.</summary>
public static class Angle
{
    /// <summary>An angle given in degrees [rad].</summary>
    public static double FromDegrees(double degrees) => degrees * (Math.PI / 180);

    /// <summary>An angle given in radians, in degrees.</summary>
    public static double ToDegrees(double radians) => radians * (180 / Math.PI);
}
