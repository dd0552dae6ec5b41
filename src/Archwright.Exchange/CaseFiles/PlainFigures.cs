using Archwright.Dentition.Units;
using Archwright.Mechanics.Alloys;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Finds the figure that a person would have written for one that the computation holds: 20 degrees, and not
/// 20.000000000000004, whenever the short figure gives exactly the same double again.</summary>
internal static class PlainFigures
{
    private const int MostDigits = 15;

    /// <summary>Degrees of an angle [rad].</summary>
    public static double Degrees(double radians) =>
        Shortest(Angle.ToDegrees(radians), degrees => Angle.FromDegrees(degrees).Equals(radians));

    /// <summary>Poisson's ratio that gives these moduli.</summary>
    /// <exception cref="ArgumentException">There is none from 0 to 0.5: a case file has no words for such an
    /// alloy.</exception>
    public static double Poisson(LinearElastic alloy)
    {
        double ratio = alloy.Young / (2 * alloy.Shear) - 1;
        double plain = Shortest(
            ratio, nu => nu is >= 0 and <= 0.5 && new LinearElastic(alloy.Young, nu).Shear.Equals(alloy.Shear));
        return plain is >= 0 and <= 0.5
            ? plain
            : throw new ArgumentException(
                $"The alloy has a shear modulus of {alloy.Shear} MPa beside a Young's modulus of {alloy.Young} MPa, "
                + $"a Poisson's ratio of {ratio:0.000}; a case file can give it by its catalogue id alone.",
                nameof(alloy));
    }

    private static double Shortest(double value, Func<double, bool> isSame)
    {
        for (int digits = 0; digits <= MostDigits; digits++)
        {
            double rounded = Math.Round(value, digits);
            if (isSame(rounded))
                return rounded;
        }

        // The last bit may be lost on the way there and back: try the neighbours.
        foreach (double neighbour in new[] { value, Math.BitIncrement(value), Math.BitDecrement(value) })
        {
            if (isSame(neighbour))
                return neighbour;
        }

        return value;
    }
}
