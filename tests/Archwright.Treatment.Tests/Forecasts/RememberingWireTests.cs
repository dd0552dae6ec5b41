using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Forecasts;

namespace Archwright.Treatment.Tests.Forecasts;

/// <summary>Forecasts with a wire that transforms; its figures are of the usual size and made up.</summary>
[Trait("basis", "law")]
public sealed class RememberingWireTests
{
    private static readonly Superelastic Alloy = new(new SuperelasticFigures
    {
        Poisson = 0.33,
        ReferenceTemperature = 36,
        YoungAustenite = 50_000,
        YoungMartensite = 30_000,
        TransformationStrain = 0.05,
        ForwardStart = 420,
        ForwardFinish = 480,
        ReverseStart = 250,
        ReverseFinish = 190,
        ClausiusClapeyron = 6.5,
    });

    /// <summary>The unloading branch lies below the loading one, so teeth that came from farther off are pushed
    /// less.</summary>
    [Fact]
    public void A_wire_that_was_fitted_farther_off_pushes_less_today()
    {
        ForecastRequest request = Request();
        ImmutableArray<SlotFrame> farther =
        [
            .. request.Arrangement.Slots.Select((slot, i) =>
            {
                ClinicalAxes axes = ClinicalAxes.For(request.Teeth[i]);
                ClinicalOffset now = axes.Between(slot.Rest, slot.Actual);
                return axes.Displaced(slot.Rest, now.Plus(now));
            }),
        ];

        double fitted = Largest(Forecaster.Run(request));
        double worked = Largest(Forecaster.Run(request with { FittedPlaces = farther }));
        double estimated = Largest(Forecaster.Run(request with { WeeksInPlace = 6 }));

        Assert.True(worked < 0.9 * fitted, $"{worked:0.00} of {fitted:0.00} N");
        Assert.True(estimated < fitted);
    }

    /// <summary>An elastic wire does not remember.</summary>
    [Fact]
    public void Where_an_elastic_wire_was_fitted_does_not_matter()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Front(1, 1.2, 0.8, 1.4, 1), weeks: 1);

        Assert.Equal(
            Largest(Forecaster.Run(request)), Largest(Forecaster.Run(request with { WeeksInPlace = 6 })));
    }

    [Fact]
    public void A_forecast_with_memory_runs_and_repeats_to_the_bit()
    {
        Forecast one = Forecaster.Run(Request());
        Forecast two = Forecaster.Run(Request());

        Assert.True(one.IsWhole, one.Stop?.Reason);
        Assert.True(one.Last.Irregularity < one.Days[0].Irregularity);
        Assert.Equal(
            one.Last.Teeth.Select(tooth => tooth.Offset), two.Last.Teeth.Select(tooth => tooth.Offset));
    }

    private static double Largest(Forecast forecast) => forecast.Days[0].Teeth.Max(tooth => tooth.Clinical.Force);

    private static ForecastRequest Request()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Front(1, 1.2, 0.8, 1.4, 1), weeks: 1);
        return request with
        {
            Arrangement = request.Arrangement with { Wire = request.Arrangement.Wire with { Alloy = Alloy } },
        };
    }
}
