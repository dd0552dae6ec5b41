using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Rods;
using Archwright.Treatment.Forecasts;

namespace Archwright.Treatment.Tests.Forecasts;

public sealed class ForecasterTests
{
    [Fact, Trait("basis", "law")]
    public void A_passive_arch_stays()
    {
        Forecast forecast = Forecaster.Run(ForecastRequest.Of(Samples.Passive(), weeks: 4));

        Assert.True(forecast.IsWhole);
        Assert.Equal(29, forecast.Days.Length);
        foreach (ToothDay tooth in forecast.Last.Teeth)
        {
            Assert.InRange(Math.Abs(tooth.Offset.Labial), 0, 1e-3);
            Assert.InRange(Math.Abs(tooth.Offset.Occlusal), 0, 1e-3);
            Assert.InRange(Math.Abs(tooth.Offset.Mesial), 0, 1e-3);
        }
    }

    [Fact, Trait("basis", "law")]
    public void A_crowded_arch_grows_more_regular_and_the_wire_loses_energy_every_day()
    {
        Forecast forecast = Forecaster.Run(ForecastRequest.Of(Samples.Crowded(), weeks: 8));

        Assert.True(forecast.IsWhole, forecast.Stop?.Reason);
        Assert.True(forecast.Last.Irregularity < 0.5 * forecast.Days[0].Irregularity);
        foreach ((ForecastDay before, ForecastDay after) in forecast.Days.Zip(forecast.Days.Skip(1)))
            Assert.True(after.StoredEnergy <= before.StoredEnergy + 1e-4, $"day {after.Day}");
    }

    /// <summary>A cinched wire resists as a whole; before, the forecast often stopped on the first day.</summary>
    [Theory, Trait("basis", "law")]
    [InlineData("niti-014")]
    [InlineData("ss-016")]
    public void A_wire_with_cinched_ends_is_followed(string wire)
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(Jaw.Upper, wire), weeks: 2);
        request = request with { Arrangement = request.Arrangement with { Ends = WireEnds.Cinched } };

        Forecast forecast = Forecaster.Run(request);

        Assert.Null(forecast.Stop);
        Assert.True(forecast.Last.Irregularity < forecast.Days[0].Irregularity - 0.5);
    }

    [Fact, Trait("basis", "law")]
    public void The_same_request_gives_the_same_bits_whatever_the_number_of_threads()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(), weeks: 2);
        var settings = new DrawSettings { Draws = 4, Seed = 5, Threads = 1 };

        DrawnForecast one = Forecaster.RunDraws(request, settings);
        DrawnForecast two = Forecaster.RunDraws(request, settings with { Threads = 2 });

        Assert.Equal(Places(one), Places(two));
        Assert.Equal(one.Weeks[2].Irregularity, two.Weeks[2].Irregularity);
    }

    [Fact, Trait("basis", "law")]
    public void It_can_be_given_up()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(
            () => Forecaster.Run(ForecastRequest.Of(Samples.Crowded(), weeks: 4), source.Token));
    }

    [Fact, Trait("basis", "ours")]
    public void A_request_that_does_not_hold_together_is_refused_in_words()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(), weeks: 4);

        Assert.Contains("weeks", Refusal(request with { Weeks = 0 }), StringComparison.Ordinal);
        Assert.Contains("one tooth", Refusal(request with { Teeth = [] }), StringComparison.Ordinal);
        Assert.Contains("no tooth", Refusal(
            request with { Teeth = request.Teeth.SetItem(0, default) }), StringComparison.Ordinal);
        Assert.Contains("load on 41", Refusal(request with
        {
            AppliedLoads = request.AppliedLoads.Add(
                ToothNumber.FromIso(41), new ClinicalLoad(double.NaN, 0, 0, 0, 0, 0)),
        }), StringComparison.Ordinal);
    }

    private static string Refusal(ForecastRequest request) =>
        Assert.Throws<ArgumentException>(() => Forecaster.Run(request)).Message;

    private static IEnumerable<ClinicalOffset> Places(DrawnForecast drawn) =>
        drawn.Draws.SelectMany(draw => draw.Weeks[^1].Teeth);
}
