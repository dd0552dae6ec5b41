using Archwright.Mechanics.Alloys;

namespace Archwright.Mechanics.Tests.Sections;

/// <summary>The flag in one dimension, written a second time and in another way: by bisection on the share, from the
/// words of the law alone. Tension and compression alike.</summary>
internal sealed class UniaxialFlag(Superelastic alloy, double temperature)
{
    private double _share;

    public double Stress(double strain)
    {
        SuperelasticFigures f = alloy.Figures;
        double shift = f.ClausiusClapeyron * (temperature - f.ReferenceTemperature);
        double Elastic(double z) => (strain - z * f.TransformationStrain)
            / ((1 - z) / f.YoungAustenite + z / f.YoungMartensite);
        double Upper(double z) => f.ForwardStart + shift + z * (f.ForwardFinish - f.ForwardStart);
        double Lower(double z) => f.ReverseFinish + shift + z * (f.ReverseStart - f.ReverseFinish);

        if (Elastic(_share) > Upper(_share))
            _share = Root(z => Elastic(z) - Upper(z), _share, 1);
        else if (Elastic(_share) < Lower(_share))
            _share = Root(z => Elastic(z) - Lower(z), 0, _share);

        return Elastic(_share);
    }

    // Falls from left to right; an end where it does not change sign is the answer.
    private static double Root(Func<double, double> f, double low, double high)
    {
        if (f(high) >= 0)
            return high;
        if (f(low) <= 0)
            return low;

        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            if (f(middle) > 0)
                low = middle;
            else
                high = middle;
        }

        return (low + high) / 2;
    }
}
