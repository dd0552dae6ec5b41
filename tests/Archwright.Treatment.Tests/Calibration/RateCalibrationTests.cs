using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Calibration;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Support;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Tests.Calibration;

public sealed class RateCalibrationTests
{
    private const double EightyPercent = 1.2816;

    /// <summary>Patients made up with the model's own spread of people, teeth and measurement, the wire a spring at
    /// each tooth: the interval that is to hold 80 of 100 true rates holds so many of 300. Binomial: 80 % ± 2.3 %
    /// (one standard deviation); three of them are allowed.</summary>
    [Fact, Trait("basis", "law")]
    public void The_eighty_percent_interval_covers_eighty_percent_of_made_up_patients()
    {
        const int Patients = 300;
        ForecastRequest request = ForecastRequest.Of(Samples.Front(2, 2.5, 2, 3, 2.5), weeks: 6);
        int covered = 0;
        double narrowed = 0;
        for (int i = 0; i < Patients; i++)
        {
            var chance = new Chance(11, i);
            double truth = request.Rate.At(chance.Normal());
            PatientRate found = RateCalibration.Update(
                request, [Observed(request, truth, week: 2, chance)], RateCalibration.UsualError, WithSprings);
            covered += Math.Abs(Math.Log(truth) - found.LogMedian) <= EightyPercent * found.LogSpread ? 1 : 0;
            narrowed += found.LogSpread / request.Rate.LogSpread / Patients;
        }

        Assert.InRange(covered / (double)Patients, 0.73, 0.87);
        Assert.True(narrowed < 0.75, $"{narrowed:0.00}");
    }

    [Fact, Trait("basis", "law")]
    public void A_second_visit_narrows_the_belief_further()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Front(2, 2.5, 2, 3, 2.5), weeks: 6);
        var chance = new Chance(3, 1);
        ObservedArch early = Observed(request, truth: 0.6, week: 1, chance);
        ObservedArch late = Observed(request, truth: 0.6, week: 2, chance);

        PatientRate one = RateCalibration.Update(request, [early], RateCalibration.UsualError, WithSprings);
        PatientRate two = RateCalibration.Update(request, [early, late], RateCalibration.UsualError, WithSprings);

        Assert.True(one.LogSpread < request.Rate.LogSpread);
        Assert.True(two.LogSpread < one.LogSpread);
        Assert.InRange((two.LogMedian - Math.Log(0.6)) / two.LogSpread, -2.5, 2.5);
    }

    [Fact, Trait("basis", "law")]
    public void A_rate_that_is_known_stays()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Front(2, 2.5, 2, 3, 2.5), weeks: 6) with
        {
            Rate = new PatientRate(Math.Log(0.8), 0),
        };
        ObservedArch seen = Observed(request, truth: 2, week: 2, new Chance(1, 1));

        Assert.Equal(request.Rate, RateCalibration.Update(request, [seen], 0.25, WithSprings));
    }

    /// <summary>Time enters the law together with the rate alone, which the calibration builds on.</summary>
    [Fact, Trait("basis", "law")]
    public void Half_the_rate_for_twice_the_time_comes_to_the_same_place()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Front(2, 2.5, 2, 3, 2.5), weeks: 8) with
        {
            StepTolerance = 0.001,
        };
        Forecast slow = WithSprings(request with { Rate = new PatientRate(Math.Log(0.5), 0) });
        Forecast fast = WithSprings(request with { Rate = new PatientRate(0, 0), Weeks = 4 });

        foreach ((ToothDay one, ToothDay other) in slow.AtWeek(4)!.Teeth.Zip(fast.AtWeek(2)!.Teeth))
            Assert.Equal(one.Offset.Labial, other.Offset.Labial, tolerance: 0.01);
    }

    [Fact, Trait("basis", "ours")]
    public void What_cannot_have_been_observed_is_refused()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Front(2, 2.5, 2, 3, 2.5), weeks: 6);
        var places = ImmutableDictionary<ToothNumber, ObservedTooth>.Empty.Add(
            ToothNumber.FromIso(11), new ObservedTooth(Labial: 1));

        Assert.Throws<ArgumentException>(() => RateCalibration.Update(request, []));
        Assert.Contains("no slot", Assert.Throws<ArgumentException>(
            () => RateCalibration.Update(request, [new ObservedArch(2, places)])).Message, StringComparison.Ordinal);
        Assert.Contains("not after the start", Assert.Throws<ArgumentException>(
            () => RateCalibration.Update(request, [new ObservedArch(0, places)])).Message, StringComparison.Ordinal);
    }

    private static Forecast WithSprings(ForecastRequest request) =>
        Forecaster.Run(request, new SpringWire(request.Arrangement), CancellationToken.None);

    // The truth of one patient with teeth of their own, measured with errors, at the start too.
    private static ObservedArch Observed(ForecastRequest request, double truth, int week, Chance chance)
    {
        Forecast real = WithSprings(request with
        {
            Rate = new PatientRate(Math.Log(truth), 0),
            Weeks = week,
            ToothRates = request.Teeth.ToImmutableDictionary(
                tooth => tooth, _ => Math.Exp(PatientRate.ToothSpread * chance.Normal())),
        });
        return new ObservedArch(week, real.Last.Teeth.ToImmutableDictionary(
            tooth => tooth.Tooth, tooth => ObservedTooth.Of(Measured(tooth, chance))));
    }

    private static ClinicalOffset Measured(ToothDay tooth, Chance chance)
    {
        double Error() => Math.Sqrt(2) * RateCalibration.UsualError * chance.Normal();
        ToothSupport support = ToothSupport.Of(tooth.Tooth);
        return tooth.Offset.Plus(new ClinicalOffset(
            Error(), Error(), Error(), Error() / support.TurningArms.Z, Error() / support.TurningArms.Y,
            Error() / support.TurningArms.X));
    }
}
