using System.Collections.Immutable;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Decisions;

/// <summary>What a wire is expected to do until the next visit.</summary>
/// <remarks>
/// With d_i the distance of crown i from its planned place (<see cref="ArchToday.Distance"/>), needed is Σ d_i today
/// and delivered share 1 − Σ d_i(t)/Σ d_i(0): a tooth that is pushed off its place counts against; crowns without a
/// bracket are left out, since no wire can deliver them. The range is that of slow and quick patients, since time
/// enters the law of movement together with the rate alone: one forecast read at three rates.
/// </remarks>
public sealed record Delivery
{
    /// <summary>Weeks looked ahead.</summary>
    public required int Weeks { get; init; }

    /// <summary>Sum of what the crowns are off today [mm].</summary>
    public required double Needed { get; init; }

    /// <summary>Share of it delivered by then: for a slow, a usual and a quick patient.</summary>
    public required Percentiles Share { get; init; }

    /// <summary>Speed of the fastest tooth today, once its ligament has given, usual patient [mm/week].</summary>
    public required double FastestNow { get; init; }

    /// <summary>Index of that tooth.</summary>
    public required int FastestSlot { get; init; }

    /// <summary>Weeks until no tooth moves faster than the law's least speed, for a quick, a usual and a slow patient;
    /// infinite where it still works as far as it was followed.</summary>
    public required Percentiles SpentInWeeks { get; init; }

    /// <summary>The forecast itself.</summary>
    public required Forecast Forecast { get; init; }

    /// <summary>Whether the alloy was followed by its first modulus alone, since its whole law found no way: the
    /// movement is then an upper bound.</summary>
    public bool IsUpperBound { get; init; }

    internal static Delivery Of(
        ArchToday arch, Forecast forecast, ImmutableArray<ToothDay> given, PatientRate rate, int weeks,
        bool isUpperBound)
    {
        int[] bonded = [.. arch.Bonded];
        double[] needed = [.. forecast.Days.Select(day => bonded.Sum(
            i => ArchToday.Distance(day.Teeth[i].Tooth, day.Teeth[i].Offset)))];
        ImmutableArray<ToothMovement> now =
            [.. (given.IsEmpty ? forecast.Days[0].Teeth : given).Select(tooth => tooth.Movement)];
        double patient = given.IsEmpty ? 1 : rate.Median; // given is read at rate 1
        int fastest = Enumerable.Range(0, arch.Teeth.Length).MaxBy(i => now[i].Speed);
        double slow = rate.At(-Ninetieth) / rate.Median;
        double quick = rate.At(Ninetieth) / rate.Median;
        return new Delivery
        {
            Weeks = weeks,
            Needed = needed[0],
            Share = Ordered(At(slow), At(1), At(quick)),
            FastestNow = 7 * patient * now[fastest].Speed,
            FastestSlot = fastest,
            SpentInWeeks = new Percentiles(Spent(quick), Spent(1), Spent(slow)),
            Forecast = forecast,
            IsUpperBound = isUpperBound,
        };

        double At(double factor)
        {
            if (needed[0] < Nothing)
                return 0;

            double day = Math.Min(7 * weeks * factor, needed.Length - 1);
            int before = (int)day;
            int after = Math.Min(before + 1, needed.Length - 1);
            double left = needed[before] + (day - before) * (needed[after] - needed[before]);
            return 1 - left / needed[0];
        }

        double Spent(double factor)
        {
            if (now[fastest].Stress < MovementLaw.LeastStress)
                return 0;
            return forecast.SpentOnDay is { } day ? day / (7 * factor) : double.PositiveInfinity;
        }
    }

    /// <summary>Ninetieth percentile of the normal distribution, in standard deviations.</summary>
    internal const double Ninetieth = 1.2815515655446004;

    private const double Nothing = 1e-6;

    // A wire that pushes a tooth away may do more harm in a quick patient: the range is then turned round.
    private static Percentiles Ordered(double slow, double usual, double quick)
    {
        double[] sorted = [slow, usual, quick];
        Array.Sort(sorted);
        return new Percentiles(sorted[0], sorted[1], sorted[2]);
    }
}
