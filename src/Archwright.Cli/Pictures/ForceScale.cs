using Archwright.Cli.Units;

namespace Archwright.Cli.Pictures;

/// <summary>How long a force is drawn, the same in all views of a picture.</summary>
/// <param name="PixelsPerNewton">[px/N]</param>
/// <param name="Bar">Force of the scale bar, a round figure in the reader's unit [N].</param>
internal sealed record ForceScale(double PixelsPerNewton, double Bar)
{
    /// <summary>The scale at which the largest force gets the length asked for.</summary>
    /// <param name="largest">[N]</param>
    /// <param name="length">[px]</param>
    /// <param name="unit">Unit in which the bar is a round figure.</param>
    public static ForceScale For(double largest, double length, ForceUnit unit)
    {
        if (!(largest > 1e-6))
            return new ForceScale(0, 0);

        double perNewton = length / largest;
        return new ForceScale(perNewton, RoundDown(unit.Of(largest) * 0.75) / unit.Of(1));
    }

    /// <summary>Largest of 1, 2, 5 times a power of ten that is not above a figure.</summary>
    public static double RoundDown(double figure)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(figure)));
        double first = figure / power;
        return power * (first >= 5 ? 5 : first >= 2 ? 2 : 1);
    }
}
