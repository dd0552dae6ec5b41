using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Patients;

namespace Archwright.Treatment.Tests.Forecasts;

/// <summary>Teeth that stand still at first, because their ligament is pressed beyond the law's range.</summary>
public sealed class WaitingTests
{
    private static readonly PatientRate Mean = new(0, 0);

    /// <summary>Up to 78 kPa none (Nickel et al. 2014); three weeks with heavy forces (Iwasaki et al. 2000).</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(4, 0)]
    [InlineData(78, 0)]
    [InlineData(150, 21)]
    public void Only_overloaded_teeth_wait(double stress, double days) =>
        Assert.Equal(days, MovementLaw.LagOf(stress));

    [Fact, Trait("basis", "law")]
    public void An_overloaded_tooth_stands_for_three_weeks_and_then_moves()
    {
        ToothNumber tooth = ToothNumber.FromIso(31);
        var heavy = new ClinicalLoad(4, 0, 0, 0, 0, 0);

        Assert.Equal(0, LoneTooth.Moved(tooth, heavy, days: 21).Labial, 1e-12);
        Assert.True(LoneTooth.Moved(tooth, heavy, days: 28).Labial > 0.3);
        Assert.Equal(0, LoneTooth.Moved(tooth, heavy, days: 42, rate: 0.5).Labial, 1e-12);
        Assert.True(LoneTooth.Moved(tooth, new ClinicalLoad(0.5, 0, 0, 0, 0, 0), days: 7).Labial > 0.2);
    }

    [Fact, Trait("basis", "law")]
    public void In_an_arch_the_overloaded_wait_and_the_others_go_on()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(contacts: [0, 0, 2.5, 0, 0]), weeks: 6) with
        {
            Rate = Mean, CrownsTouch = false,
        };

        Forecast forecast = WithSprings(request);

        int heavy = Heaviest(forecast.Days[1]);
        Assert.True(forecast.Days[1].Teeth[heavy].Movement.Stress > 100);
        Assert.Equal(0, forecast.Days[1].Teeth[heavy].Movement.Speed);
        Assert.Equal(0, Way(forecast, heavy, 1, 20), 0.02);
        Assert.True(Way(forecast, heavy, 22, 35) > 0.3);
        Assert.Contains(forecast.Days[1].Teeth, tooth => tooth.Movement.Speed > 0);
    }

    [Fact, Trait("basis", "law")]
    public void A_wire_that_has_been_in_place_has_waited_already_and_the_wait_can_be_left_out()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(contacts: [0, 0, 2.5, 0, 0]), weeks: 2) with
        {
            Rate = Mean, CrownsTouch = false,
        };

        Forecast after = WithSprings(request with { WeeksInPlace = 4 });
        Forecast without = WithSprings(request with { OverloadedTeethWait = false });

        int heavy = Heaviest(after.Days[1]);
        Assert.True(Way(after, heavy, 1, 14) > 0.3);
        Assert.Equal(Way(without, heavy, 1, 14), Way(after, heavy, 1, 14), 1e-9);
    }

    /// <summary>Lag and speed share the rate, so that one march answers for every patient.</summary>
    [Fact, Trait("basis", "law")]
    public void A_patient_of_half_the_rate_waits_twice_as_long()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(contacts: [0, 0, 2.5, 0, 0]), weeks: 4) with
        {
            Rate = Mean, CrownsTouch = false, StepTolerance = 0.005,
        };

        Forecast usual = WithSprings(request);
        Forecast slow = WithSprings(request with { Weeks = 8, Rate = new PatientRate(Math.Log(0.5), 0) });

        Assert.Equal(usual.Last.Irregularity!.Value, slow.Last.Irregularity!.Value, 0.03);
        Assert.Equal(0, Way(slow, Heaviest(slow.Days[1]), 1, 41), 0.02);
    }

    /// <summary>A forecast engages the wire on a coarser mesh than <c>solve</c>.</summary>
    [Fact, Trait("basis", "law")]
    public void A_finer_mesh_of_the_wire_changes_the_result_by_less_than_one_percent()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(), weeks: 2);

        Forecast coarse = Forecaster.Run(request);
        Forecast fine = Forecaster.Run(
            request, new EngagedWireInPlace(request.Arrangement, null, EngagementOptions.Default), default);

        double way = Math.Abs(fine.Days[0].Irregularity!.Value - fine.Last.Irregularity!.Value);
        Assert.True(way > 1);
        Assert.Equal(fine.Last.Irregularity!.Value, coarse.Last.Irregularity!.Value, 0.01 * way);
    }

    private static int Heaviest(ForecastDay day) =>
        day.Teeth.Index().MaxBy(tooth => tooth.Item.Movement.Stress).Index;

    private static double Way(Forecast forecast, int tooth, int from, int to) =>
        (forecast.Days[to].Teeth[tooth].Slot.Centre - forecast.Days[from].Teeth[tooth].Slot.Centre).Length;

    private static Forecast WithSprings(ForecastRequest request) =>
        Forecaster.Run(request, new SpringWire(request.Arrangement, 2, 20), CancellationToken.None);
}
