using System.Collections.Immutable;
using System.Runtime.ExceptionServices;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Forecasts;

/// <summary>Runs a forecast many times over what is not known.</summary>
internal static class Draws
{
    public static DrawnForecast Run(
        ForecastRequest request, DrawSettings settings, IProgress<int>? progress, CancellationToken cancellation)
    {
        var draws = new Forecast[settings.Draws];
        int done = 0;
        InParallel(settings, i =>
        {
            draws[i] = Forecaster.Run(Drawn(request, new Chance(settings.Seed, i)), cancellation);
            progress?.Report(Interlocked.Increment(ref done));
        }, cancellation);

        Forecast[] whole = [.. draws.Where(draw => draw.IsWhole)];
        return new DrawnForecast
        {
            Median = Forecaster.Run(request, cancellation),
            Draws = [.. draws],
            Weeks = whole.Length == 0
                ? [] : [.. Enumerable.Range(0, request.Weeks + 1).Select(week => AtWeek(week, whole))],
            SpentInWeeks = whole.Length == 0
                ? null
                : Percentiles.Of(whole.Select(draw => draw.SpentOnDay / 7.0 ?? double.PositiveInfinity)),
        };
    }

    /// <summary>One patient with one wire, by chance.</summary>
    internal static ForecastRequest Drawn(ForecastRequest request, Chance chance)
    {
        double rate = request.Rate.LogMedian + request.Rate.LogSpread * chance.Normal();
        var teeth = ImmutableDictionary.CreateBuilder<ToothNumber, double>();
        foreach (ToothNumber tooth in request.Teeth)
        {
            double own = Math.Exp(PatientRate.ToothSpread * chance.Normal());
            teeth[tooth] = own * request.ToothRates.GetValueOrDefault(tooth, 1);
        }

        return request with { Rate = new PatientRate(rate, 0), ToothRates = teeth.ToImmutable() };
    }

    private static WeekRange AtWeek(int week, Forecast[] draws)
    {
        ForecastDay[] days = [.. draws.Select(draw => draw.AtWeek(week)!)];
        Percentiles? irregularity = days[0].Irregularity is null
            ? null : Percentiles.Of(days.Select(day => day.Irregularity!.Value));
        return new WeekRange(
            week,
            irregularity,
            Percentiles.Of(days.Select(day => day.ActivationLeft)),
            [.. Enumerable.Range(0, days[0].Teeth.Length).Select(i => MedianPlace(days, i))]);
    }

    private static ClinicalOffset MedianPlace(ForecastDay[] days, int tooth)
    {
        double Median(Func<ClinicalOffset, double> part) =>
            Percentiles.Of(days.Select(day => part(day.Teeth[tooth].Offset))).P50;

        return new ClinicalOffset(
            Median(one => one.Labial), Median(one => one.Occlusal), Median(one => one.Mesial),
            Median(one => one.Rotation), Median(one => one.Tip), Median(one => one.Torque));
    }

    // A failure is passed on as it is, not wrapped.
    private static void InParallel(DrawSettings settings, Action<int> work, CancellationToken cancellation)
    {
        try
        {
            var how = new ParallelOptions
            {
                CancellationToken = cancellation, MaxDegreeOfParallelism = settings.Threads ?? -1,
            };
            Parallel.For(0, settings.Draws, how, work);
        }
        catch (AggregateException several)
        {
            cancellation.ThrowIfCancellationRequested();
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }
    }
}
