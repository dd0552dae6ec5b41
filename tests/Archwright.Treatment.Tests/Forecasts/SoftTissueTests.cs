using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Tests.Forecasts;

/// <summary>Forecasts with lips and cheeks that resist.</summary>
[Trait("basis", "law")]
public sealed class SoftTissueTests
{
    [Fact]
    public void Teeth_in_balance_stay_where_they_are()
    {
        Forecast forecast = Forecaster.Run(
            ForecastRequest.Of(Samples.Passive(), weeks: 4) with { SoftTissue = new SoftTissue(10) });

        Assert.True(forecast.IsWhole, forecast.Stop?.Reason);
        Assert.All(forecast.Days[0].Teeth, tooth => Assert.Equal(0, tooth.SoftTissueForce, tolerance: 1e-12));
        Assert.All(forecast.Last.Teeth, tooth => Assert.InRange(Math.Abs(tooth.Offset.Labial), 0, 1e-3));
    }

    /// <summary>With a real wire, crowns that touch, and the front teeth as a whole.</summary>
    [Fact]
    public void Firmer_lips_never_let_the_front_teeth_come_farther_out()
    {
        ForecastRequest request = new CrowdedArch { Seed = 3, Number = 0 }.Request(weeks: 8);

        double[] ways =
        [
            .. new[] { 0.0, 1, 5, 20 }.Select(factor => Outward(Forecaster.Run(
                request with { SoftTissue = new SoftTissue(factor) }))),
        ];

        Assert.True(ways[0] > 0.2, $"{ways[0]:0.00} mm: nothing comes out here");
        Assert.All(ways.Zip(ways.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 0.001));
        Assert.True(ways[3] < ways[0] - 0.01, $"{ways[0]:0.000} {ways[3]:0.000}");
    }

    [Fact]
    public void Without_neighbours_no_crown_at_all_comes_farther_out()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(), weeks: 6) with { CrownsTouch = false };

        Forecast free = WithSprings(request);
        Forecast held = WithSprings(request with { SoftTissue = new SoftTissue(20) });

        foreach ((ToothDay one, ToothDay other) in free.Last.Teeth.Zip(held.Last.Teeth))
        {
            ToothDay from = free.Days[0].Teeth.Single(tooth => tooth.Tooth == one.Tooth);
            double freely = one.Offset.Labial - from.Offset.Labial;
            double against = other.Offset.Labial - from.Offset.Labial;
            Assert.True(Math.Abs(against) <= Math.Abs(freely) + 1e-3, $"{one.Tooth}: {freely} {against}");
        }
    }

    [Fact]
    public void Left_and_right_are_alike()
    {
        ArchSetup arch = Samples.Passive();
        ImmutableArray<ToothNumber> teeth = arch.Teeth;

        for (int i = 0; i < teeth.Length; i++)
            Assert.Equal(LipPressure.Of(teeth[i]), LipPressure.Of(teeth[teeth.Length - 1 - i]));

        ForecastRequest request = ForecastRequest.Of(
            Samples.Crowded(contacts: [0.4, 0.9, 0.5, 1.1, 0.2]), weeks: 3) with { SoftTissue = new SoftTissue(5) };
        ImmutableArray<ToothDay> there = WithSprings(request).Last.Teeth;
        ImmutableArray<ToothDay> mirrored = WithSprings(ForecastLawTests.Mirrored(request)).Last.Teeth;
        Assert.Contains(there, tooth => Math.Abs(tooth.SoftTissueForce) > 0.01);
        foreach ((ToothDay one, ToothDay other) in there.Zip(mirrored.Reverse()))
            Assert.Equal(one.SoftTissueForce, other.SoftTissueForce, tolerance: 1e-6);
    }

    /// <summary>Closed form: a spring to its home at h and a lip that rises by k from balance at 0 rest at
    /// h c/(c + k), c the spring; inward, once the lip has left the crown, at h + A p₀/c.</summary>
    [Theory]
    [Trait("basis", "independent")]
    [InlineData(-1, 1.0)]
    [InlineData(4, 3.0)]
    public void A_tooth_comes_to_rest_where_spring_and_lip_balance(double standing, double stiffness)
    {
        const double Factor = 20;
        ArchSetup arch = ArchBuilder.Build(new ArchRequest
        {
            Jaw = Jaw.Lower, Slot = SlotSize.In022, WireId = "niti-014",
            Positions = ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty.Add(
                ToothNumber.FromIso(41), ClinicalOffset.FromDegrees(standing, 0, 0, 0, 0, 0)),
        });
        ForecastRequest request = ForecastRequest.Of(arch, weeks: 60) with
        {
            CrownsTouch = false, SoftTissue = new SoftTissue(Factor), OverloadedTeethWait = false,
        };
        LipPressure lip = LipPressure.Of(ToothNumber.FromIso(41));

        Forecast forecast = Forecaster.Run(
            request, new SpringWire(arch.Arrangement, stiffness, 10), CancellationToken.None);

        double moved = forecast.Last.Teeth.Single(tooth => tooth.Tooth.Iso == 41).Offset.Labial - standing;
        double home = -standing;
        double balance = home > 0
            ? home * stiffness / (stiffness + Factor * lip.Face * lip.Rise)
            : home + Factor * lip.RestingForce / stiffness;
        Assert.True(home > 0 || lip.Resting + lip.Rise * balance < 0, "the lip has left the crown");
        Assert.Equal(balance, moved, tolerance: 0.005);
    }

    /// <summary>What was pushed out comes back when nothing holds it: no adaptation was seen in months (Ingervall and
    /// Thüer 1998; Halazonetis et al. 1994).</summary>
    [Fact]
    public void Teeth_that_stand_farther_out_than_in_balance_are_pressed_in_from_the_first_day()
    {
        ArchSetup arch = Samples.Passive();
        ForecastRequest request = ForecastRequest.Of(arch, weeks: 1) with
        {
            SoftTissue = new SoftTissue(1)
            {
                Balanced =
                [
                    .. arch.Slots.Select(slot => slot.Actual.Moved(-slot.Actual.Outward, default)),
                ],
            },
        };

        Forecast forecast = Forecaster.Run(request);

        Assert.All(forecast.Days[0].Teeth, tooth => Assert.True(tooth.SoftTissueForce < 0));
    }

    /// <summary>0.02 ± 0.02 N of the upper lip at rest on the upper right central incisor of 28 adults, sensor on the
    /// tooth: Evaluation of the force applied by the tongue and lip on the maxillary central incisor tooth, CoDAS 2014
    /// (abstract found). The pressure that we take is from another laboratory and another kind of sensor.</summary>
    [Fact]
    [Trait("basis", "published")]
    public void The_lip_at_rest_presses_on_an_upper_central_incisor_as_measured() =>
        Assert.InRange(LipPressure.Of(ToothNumber.FromIso(11)).RestingForce, 0.001, 0.04);

    [Theory]
    [InlineData(-0.1)]
    [InlineData(21)]
    [InlineData(double.NaN)]
    public void A_firmness_that_makes_no_sense_is_refused(double factor) => Assert.Throws<ArgumentException>(
        () => Forecaster.Run(
            ForecastRequest.Of(Samples.Passive(), weeks: 1) with { SoftTissue = new SoftTissue(factor) }));

    private static double Outward(Forecast forecast)
    {
        Assert.True(forecast.IsWhole, forecast.Stop?.Reason);
        return forecast.Last.Teeth.Zip(forecast.Days[0].Teeth)
            .Where(pair => pair.First.Tooth.Position <= 2)
            .Average(pair => pair.First.Offset.Labial - pair.Second.Offset.Labial);
    }

    private static Forecast WithSprings(ForecastRequest request) =>
        Forecaster.Run(request, new SpringWire(request.Arrangement), CancellationToken.None);
}
