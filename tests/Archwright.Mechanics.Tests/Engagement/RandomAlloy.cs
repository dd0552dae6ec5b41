using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>Random alloys of every law for random arches: elastic, one that transforms, one that yields, in turn. The
/// same number gives the same alloy on every machine.</summary>
internal static class RandomAlloy
{
    /// <summary>The arrangement with an alloy of the number, and a temperature of the mouth: 5 to 60 °C.</summary>
    public static Arrangement Into(Arrangement arrangement, int number)
    {
        var random = new Random(7919 * number);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        Alloy alloy = (number % 3) switch
        {
            0 => arrangement.Wire.Alloy,
            1 => Transforming(Between),
            _ => new ElasticPlastic(
                Between(60e3, 200e3), Between(0.28, 0.35), Between(900, 2200), Between(0, 60e3)),
        };
        return arrangement with
        {
            Wire = arrangement.Wire with { Alloy = alloy },
            Temperature = alloy is Superelastic ? Between(5, 60) : 36,
        };
    }

    /// <summary>The law in a word.</summary>
    public static string Name(Alloy alloy) => alloy switch
    {
        Superelastic => "transforms",
        ElasticPlastic => "yields",
        _ => "elastic",
    };

    private static Superelastic Transforming(Func<double, double, double> between)
    {
        double start = between(300, 500);
        double back = between(0.35, 0.65) * start;
        return new Superelastic(new SuperelasticFigures
        {
            Poisson = 0.33,
            ReferenceTemperature = 36,
            YoungAustenite = between(35e3, 70e3),
            YoungMartensite = between(20e3, 35e3),
            TransformationStrain = between(0.03, 0.07),
            ForwardStart = start,
            ForwardFinish = start + between(10, 80),
            ReverseStart = back,
            ReverseFinish = back - between(10, 80),
            ClausiusClapeyron = between(4, 8),
            Asymmetry = between(0, 0.2),
        });
    }
}
