using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Values;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Practice.Advice;

/// <summary>What a wire is expected to do over the weeks: positions as people write them, irregularity with its
/// range.</summary>
/// <param name="Weeks">Week 0 (today) to the last one reached.</param>
/// <param name="WhyItStops">Why it ends early; null when it does not.</param>
public sealed record Outlook(ImmutableArray<OutlookWeek> Weeks, string? WhyItStops)
{
    private const double DaysOfAWeek = 7;

    // Ninetieth percentile of the normal distribution, in standard deviations.
    private const double Ninetieth = 1.2815515655446004;

    /// <summary>The most likely course, without a range: quick enough for a slider.</summary>
    /// <param name="inputs">The arch.</param>
    /// <param name="wireId">The wire.</param>
    /// <param name="weeks">How far.</param>
    /// <param name="ageYears">Age of the patient.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">The inputs do not hold together.</exception>
    public static Outlook Median(
        AdviceInputs inputs, string wireId, int weeks, double ageYears, CancellationToken cancellation = default)
    {
        Forecast forecast = Forecaster.Run(Request(inputs, wireId, weeks, ageYears), cancellation);
        ImmutableArray<OutlookWeek> reached =
        [
            .. Enumerable.Range(0, weeks + 1)
                .Select(week => (Week: week, Day: forecast.AtWeek(week)))
                .Where(one => one.Day is not null)
                .Select(one => new OutlookWeek(
                    one.Week,
                    one.Day!.Irregularity is { } mm ? Percentiles.Exactly(mm) : null,
                    Positions(one.Day.Teeth.Select(tooth => (tooth.Tooth, tooth.Offset))))),
        ];
        return new Outlook(reached, Words(forecast.Stop));
    }

    /// <summary>The course with its range: for a slow, a usual and a quick patient of this age (the tenth, the fiftieth
    /// and the ninetieth of a hundred). That single teeth differ from their owner's others is not in it.</summary>
    /// <param name="inputs">The arch.</param>
    /// <param name="wireId">The wire.</param>
    /// <param name="weeks">How far.</param>
    /// <param name="ageYears">Age of the patient.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">The inputs do not hold together.</exception>
    public static Outlook Band(
        AdviceInputs inputs, string wireId, int weeks, double ageYears, CancellationToken cancellation = default)
    {
        ForecastRequest request = Request(inputs, wireId, weeks, ageYears);
        Forecast usual = Forecaster.Run(request, cancellation);
        if (usual.AtWeek(1) is null)
            return new Outlook([], Words(usual.Stop));

        // At the same time: neither needs the other. A failure is passed on as it is.
        Task<Forecast> slower = Task.Run(
            () => Forecaster.Run(request with { Rate = Known(request.Rate, -Ninetieth) }, cancellation), cancellation);
        Forecast quick = Forecaster.Run(request with { Rate = Known(request.Rate, Ninetieth) }, cancellation);
        Forecast slow = slower.GetAwaiter().GetResult();
        return new Outlook(
            [
                .. Enumerable.Range(0, weeks + 1)
                    .Where(week => new[] { slow, usual, quick }.All(one => one.AtWeek(week) is not null))
                    .Select(week => Between(week, quick.AtWeek(week)!, usual.AtWeek(week)!, slow.AtWeek(week)!)),
            ],
            Words(usual.Stop ?? slow.Stop ?? quick.Stop));
    }

    private static OutlookWeek Between(int week, ForecastDay quick, ForecastDay usual, ForecastDay slow)
    {
        double[] sorted = [.. new[] { quick, usual, slow }.Select(day => day.Irregularity).OfType<double>().Order()];
        return new OutlookWeek(
            week,
            sorted.Length == 3 ? new Percentiles(sorted[0], sorted[1], sorted[2]) : null,
            Positions(usual.Teeth.Select(tooth => (tooth.Tooth, tooth.Offset))));
    }

    private static PatientRate Known(PatientRate rate, double deviation) =>
        new(Math.Log(rate.At(deviation)), LogSpread: 0);

    /// <summary>The positions after some days, for a patient whose rate is known: how the demo practice
    /// grows.</summary>
    /// <returns>Null when the wire cannot be followed so far.</returns>
    internal static ToothMap<ToothOffset>? After(AdviceInputs inputs, string wireId, int days, PatientRate rate)
    {
        int weeks = (int)Math.Ceiling(days / DaysOfAWeek);
        Forecast forecast = Forecaster.Run(Request(inputs, wireId, weeks, null) with { Rate = rate });
        return days < forecast.Days.Length
            ? Positions(forecast.Days[days].Teeth.Select(tooth => (tooth.Tooth, tooth.Offset)))
            : null;
    }

    private static ForecastRequest Request(AdviceInputs inputs, string wireId, int weeks, double? ageYears) =>
        ForecastRequest.Of(ArchModel.Build(inputs, wireId), weeks) with { Rate = PatientRate.ForAge(ageYears) };

    private static ToothMap<ToothOffset> Positions(IEnumerable<(ToothNumber Tooth, ClinicalOffset Offset)> teeth) =>
        ToothMap<ToothOffset>.Of(
            teeth.Select(one => KeyValuePair.Create(one.Tooth, ToothOffset.From(one.Offset))));

    private static string? Words(ForecastStop? stop) => stop is null
        ? null
        : $"The forecast stops after {stop.Day / DaysOfAWeek:0} weeks: {stop.Reason}";
}

/// <summary>The arch at the end of a week.</summary>
/// <param name="Week">0 for today.</param>
/// <param name="Irregularity">Of the front teeth [mm]; null when one of the six is not there.</param>
/// <param name="Positions">Where the teeth are expected.</param>
public sealed record OutlookWeek(int Week, Percentiles? Irregularity, ToothMap<ToothOffset> Positions);
