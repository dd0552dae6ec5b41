using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Tests.Uncertainty;

public sealed class PercentilesTests
{
    /// <summary>0 to 100: the percentiles are the numbers themselves.</summary>
    [Fact, Trait("basis", "independent")]
    public void Percentiles_of_a_ruler_are_its_marks() =>
        Assert.Equal(new Percentiles(10, 50, 90), Percentiles.Of(Enumerable.Range(0, 101).Select(i => (double)i)));

    [Fact, Trait("basis", "law")]
    public void What_mostly_never_happens_has_an_infinite_median()
    {
        Percentiles range = Percentiles.Of(
            [1, 2, 3, .. Enumerable.Repeat(double.PositiveInfinity, 7)]);
        Assert.True(double.IsFinite(range.P10));
        Assert.Equal(double.PositiveInfinity, range.P50);
        Assert.Equal(double.PositiveInfinity, range.P90);
    }

    [Fact, Trait("basis", "independent")]
    public void Normal_numbers_have_mean_nil_and_spread_one()
    {
        var chance = new Chance(1, 2);
        double[] numbers = [.. Enumerable.Range(0, 100_000).Select(_ => chance.Normal())];
        double mean = numbers.Average();
        Assert.Equal(0, mean, tolerance: 0.015);
        Assert.Equal(1, numbers.Average(x => (x - mean) * (x - mean)), tolerance: 0.02);
        Assert.Equal(0.1, numbers.Count(x => x > 1.2815515655) / 100_000.0, tolerance: 0.005);
    }

    [Fact, Trait("basis", "law")]
    public void Streams_of_one_seed_differ_and_repeat()
    {
        Assert.Equal(new Chance(4, 1).Uniform(), new Chance(4, 1).Uniform());
        Assert.NotEqual(new Chance(4, 1).Uniform(), new Chance(4, 2).Uniform());
        Assert.NotEqual(new Chance(4, 1).Uniform(), new Chance(5, 1).Uniform());
    }
}
