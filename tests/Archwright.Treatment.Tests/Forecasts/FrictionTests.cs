using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Patients;

namespace Archwright.Treatment.Tests.Forecasts;

/// <summary>Forecasts with friction between wire and slots.</summary>
[Trait("basis", "law")]
public sealed class FrictionTests
{
    private const double Wet = 0.29;

    /// <summary>As in a trial, a wire that sticks gives crowded teeth less length; what is left after eight weeks is
    /// more.</summary>
    [Fact]
    public void Crowded_teeth_align_more_slowly_when_the_wire_sticks()
    {
        ForecastRequest request = new CrowdedArch { Seed = 3, Number = 0 }.Request(weeks: 10);

        Forecast free = Forecaster.Run(request);
        Forecast rubs = Forecaster.Run(request.WithFriction(Wet));

        Assert.True(free.IsWhole, free.Stop?.Reason);
        Assert.True(rubs.IsWhole, rubs.Stop?.Reason);
        Assert.True(rubs.Last.Irregularity > free.Last.Irregularity);
    }

    [Fact]
    public void A_passive_arch_stays_with_friction_too()
    {
        Forecast forecast = Forecaster.Run(ForecastRequest.Of(Samples.Passive(), weeks: 2).WithFriction(Wet));

        Assert.True(forecast.IsWhole, forecast.Stop?.Reason);
        Assert.All(forecast.Last.Teeth, tooth => Assert.InRange(Math.Abs(tooth.Offset.Labial), 0, 1e-3));
    }

    [Fact]
    public void No_friction_is_the_same_as_a_coefficient_of_nil()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(), weeks: 2);

        Vector3[] Centres(ForecastRequest of) => [.. Forecaster.Run(of).Last.Teeth.Select(tooth => tooth.Slot.Centre)];

        Assert.Equal(Centres(request), Centres(request.WithFriction(0)));
    }

    /// <summary>An elastic tie that fades lets go of a tooth that it drew into its slot.</summary>
    [Fact]
    public void Teeth_come_less_far_under_ties_that_fade()
    {
        ForecastRequest With(double loss)
        {
            ForecastRequest request = ForecastRequest.Of(Samples.Crowded(), weeks: 3);
            Tie tie = Tie.Seating(TieKind.Elastic, 2, 1).Losing(loss);
            return request with
            {
                Arrangement = request.Arrangement with
                {
                    Slots = [.. request.Arrangement.Slots.Select(slot => slot with { Tie = tie })],
                },
            };
        }

        Forecast firm = Forecaster.Run(With(0));
        Forecast fades = Forecaster.Run(With(0.75));

        Assert.True(firm.IsWhole, firm.Stop?.Reason);
        Assert.True(fades.IsWhole, fades.Stop?.Reason);
        Assert.True(fades.Last.Irregularity > firm.Last.Irregularity);
    }

    [Fact]
    public void Draws_scatter_the_coefficient_and_give_the_same_ranges_again()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(), weeks: 1).WithFriction(Wet);
        var settings = new DrawSettings { Draws = 4, Seed = 7 };

        DrawnForecast one = Forecaster.RunDraws(request, settings);
        DrawnForecast two = Forecaster.RunDraws(request, settings with { Threads = 1 });

        Assert.Equal(one.Weeks[1].Irregularity, two.Weeks[1].Irregularity);
    }
}
