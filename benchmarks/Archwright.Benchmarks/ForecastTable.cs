using System.Globalization;
using Archwright.Mechanics.Alloys;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Patients;

namespace Archwright.Benchmarks;

/// <summary>Times of forecasts, and where they go.</summary>
internal static class ForecastTable
{
    private const double ForecastTarget = 60;
    private const double DrawsTarget = 8;

    private static readonly Superelastic Transforming = new(new SuperelasticFigures
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

    /// <summary>Prints them.</summary>
    public static void Print(TextWriter output)
    {
        output.WriteLine();
        output.WriteLine(
            $"Forecasts, one thread. Target: {ForecastTarget} ms for 12 weeks of a wire that transforms.");
        output.WriteLine($"{"0.014 in, full arch",-34}{"ms",9}{"steps",7}{"engagements",13}{"ms each",9}");
        ForecastRequest moderate = ForecastRequest.Of(Problems.CrowdedFront, weeks: 12);
        ForecastRequest severe = new CrowdedArch().Request(weeks: 12);
        Row(output, "moderate, elastic, 6 weeks", moderate with { Weeks = 6 });
        Row(output, "moderate, elastic, 12 weeks", moderate);
        Row(output, "moderate, elastic, 24 weeks", moderate with { Weeks = 24 });
        Row(output, "severe, elastic, 12 weeks", severe);
        Row(output, "moderate, transforming, 12 weeks", WithMemory(moderate));
        Row(output, "severe, transforming, 12 weeks", WithMemory(severe));
        foreach (int draws in new[] { 50, 100, 200 })
        {
            DrawnForecast? drawn = null;
            double seconds = Timing.Once(() => drawn = Forecaster.RunDraws(
                moderate with { Weeks = 8 }, new DrawSettings { Draws = draws, Threads = 2 })) / 1000;
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{draws} draws of 8 weeks on two threads: {seconds:0.0} s, {drawn!.Stopped} stopped. "
                + $"Target for 200: {DrawsTarget} s."));
        }
    }

    /// <summary>The same with a wire that transforms.</summary>
    internal static ForecastRequest WithMemory(ForecastRequest request) => request with
    {
        Arrangement = request.Arrangement with
        {
            Wire = request.Arrangement.Wire with { Alloy = Transforming },
        },
    };

    private static void Row(TextWriter output, string name, ForecastRequest request)
    {
        Forecast? forecast = null;
        Action run = () => forecast = Forecaster.Run(request);
        double[] times = [.. Enumerable.Range(0, 3).Select(_ => Timing.Once(run)).Order()];
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name,-34}{times[1],9:0}{forecast!.Steps,7}{forecast.Engagements,13}"
            + $"{times[1] / forecast.Engagements,9:0.0}{(forecast.Stop is { } stop ? "  " + stop.Reason : "")}"));
    }
}
