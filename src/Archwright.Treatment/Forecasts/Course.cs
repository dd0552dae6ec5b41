using System.Collections.Immutable;
using Archwright.Dentition.Positions;

namespace Archwright.Treatment.Forecasts;

/// <summary>A forecast at rate 1, read as that of a faster or slower patient.</summary>
/// <remarks>Time enters the law of movement together with the patient's rate alone: after t days at rate r the teeth
/// are where they are after r·t days at rate 1. Between two days places are interpolated.</remarks>
internal static class Course
{
    /// <summary>The weeks of a patient.</summary>
    /// <param name="forecast">At rate 1, long enough for rate × weeks unless it stopped.</param>
    /// <param name="rate">Factor on the law.</param>
    /// <param name="weeks">How many weeks are asked for.</param>
    public static Draw Of(Forecast forecast, double rate, int weeks)
    {
        int last = forecast.Days.Length - 1;
        var read = ImmutableArray.CreateBuilder<DrawnWeek>();
        for (int week = 0; week <= weeks; week++)
        {
            double day = 7 * week * rate;
            if (day > last + 1e-9 && forecast.Stop is not null)
                break;
            read.Add(At(forecast, Math.Min(day, last)));
        }

        double spent = forecast.SpentOnDay / (7 * rate) ?? double.PositiveInfinity;
        return new Draw(
            rate, read.ToImmutable(), spent <= weeks ? spent : double.PositiveInfinity, read.Count == weeks + 1);
    }

    private static DrawnWeek At(Forecast forecast, double day)
    {
        int before = (int)day;
        ForecastDay low = forecast.Days[before];
        ForecastDay high = forecast.Days[Math.Min(before + 1, forecast.Days.Length - 1)];
        double share = day - before;
        return new DrawnWeek(
            low.Irregularity is double a && high.Irregularity is double b ? Between(a, b, share) : null,
            Between(low.ActivationLeft, high.ActivationLeft, share),
            [.. low.Teeth.Zip(high.Teeth, (one, other) => Between(one.Offset, other.Offset, share))]);
    }

    private static ClinicalOffset Between(ClinicalOffset a, ClinicalOffset b, double share) => new(
        Between(a.Labial, b.Labial, share), Between(a.Occlusal, b.Occlusal, share), Between(a.Mesial, b.Mesial, share),
        Between(a.Rotation, b.Rotation, share), Between(a.Tip, b.Tip, share), Between(a.Torque, b.Torque, share));

    private static double Between(double a, double b, double share) => a + share * (b - a);
}
