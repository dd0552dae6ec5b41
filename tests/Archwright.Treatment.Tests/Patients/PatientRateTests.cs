using Archwright.Treatment.Movement;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Tests.Patients;

public sealed class PatientRateTests
{
    /// <summary>Nickel et al. 2014 (found): growing people 1.6 times as fast as grown; Dudic et al. 2013 part at 16
    /// years.</summary>
    [Fact, Trait("basis", "published")]
    public void The_young_move_faster()
    {
        double ratio = PatientRate.ForAge(13).Median / PatientRate.ForAge(30).Median;
        Assert.Equal(1.6, ratio, tolerance: 1e-12);
        Assert.Equal(PatientRate.ForAge(16), PatientRate.ForAge(45));
        Assert.Equal(PatientRate.Unknown, PatientRate.ForAge(null));
    }

    /// <summary>Giannopoulou et al. 2016 (found): R² 0.78 between two teeth of a person; spread 1.4 on 2.7
    /// mm.</summary>
    [Fact, Trait("basis", "published")]
    public void Teeth_of_one_person_agree_and_people_differ_as_measured()
    {
        double[] first = new double[20_000];
        double[] second = new double[first.Length];
        for (int i = 0; i < first.Length; i++)
        {
            var chance = new Chance(7, i);
            double person = PatientRate.Unknown.At(chance.Normal());
            first[i] = person * Math.Exp(PatientRate.ToothSpread * chance.Normal());
            second[i] = person * Math.Exp(PatientRate.ToothSpread * chance.Normal());
        }

        double mean = first.Average();
        double variance = first.Average(x => (x - mean) * (x - mean));
        double covariance = first.Zip(second).Average(
            pair => (pair.First - mean) * (pair.Second - second.Average()));
        Assert.InRange(covariance / variance, 0.7, 0.95);
        Assert.Equal(1.4 / 2.7, Math.Sqrt(variance) / mean, tolerance: 0.03);
        Assert.Equal(1, mean, tolerance: 0.03);
    }

    [Theory, Trait("basis", "ours")]
    [InlineData(-1)]
    [InlineData(121)]
    [InlineData(double.NaN)]
    public void What_is_no_age_is_refused(double age) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PatientRate.ForAge(age));

    [Fact, Trait("basis", "law")]
    public void Every_constant_names_its_source()
    {
        Assert.NotEmpty(MovementConstants.TurningArm.Source);
        Assert.NotEmpty(MovementConstants.SpaceClosure.How);
    }
}
