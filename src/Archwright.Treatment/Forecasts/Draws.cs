using System.Collections.Immutable;
using System.Runtime.ExceptionServices;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Forecasts;

/// <summary>Runs a forecast over what is not known.</summary>
/// <remarks>
/// What differs between draws is of two kinds. The patient's rate only stretches time, so one march answers for any
/// number of patients (<see cref="Course"/>). Teeth with rates of their own, the wire's stiffness and the slots'
/// heights change the march itself: a few mouths are marched through at rate 1, and every draw takes one of them in
/// turn with a rate of its own. The rate makes most of the spread by far.
/// </remarks>
internal static class Draws
{
    /// <summary>Marches at most. With 16 the percentiles of 200 draws on the crowded upper example stand within 0.03 mm
    /// and 0.15 weeks of where they stand with 8.</summary>
    public const int MostMouths = 8;

    // Standard deviations. Wire: two wires of one name differ by a few per cent in stiffness. Slot: measured slots
    // are oversize by 5 to 15 % and vary. Both common practice, no source.
    private const double StiffnessSpread = 0.05;
    private const double SlotSpread = 0.01;

    // Coefficients of friction of one pair of materials differ by half between papers (the catalogue's spreads).
    private const double FrictionSpread = 0.4;

    private const double MostFriction = 1;

    public static DrawnForecast Run(
        ForecastRequest request, DrawSettings settings, IProgress<int>? progress, CancellationToken cancellation)
    {
        int mouths = Math.Min(settings.Draws, MostMouths);
        double[] rates = [.. Enumerable.Range(0, settings.Draws).Select(i => Rate(request, settings, i))];
        var draws = new Draw[settings.Draws];
        int done = 0;
        InParallel(mouths, settings, mouth =>
        {
            int[] mine = [.. Enumerable.Range(0, settings.Draws).Where(i => i % mouths == mouth)];
            double fastest = mine.Max(i => rates[i]);
            ForecastRequest drawn = Mouth(request, new Chance(settings.Seed, -1 - mouth)) with
            {
                Weeks = (int)Math.Clamp(Math.Ceiling(fastest * request.Weeks), 1, ForecastRequest.MostWeeks),
            };
            Forecast march = Forecaster.Run(drawn, cancellation);
            foreach (int i in mine)
            {
                draws[i] = Course.Of(march, rates[i], request.Weeks);
                progress?.Report(Interlocked.Increment(ref done));
            }
        }, cancellation);

        Draw[] whole = [.. draws.Where(draw => draw.IsWhole)];
        return new DrawnForecast
        {
            Median = Forecaster.Run(request, cancellation),
            Draws = [.. draws],
            Weeks = whole.Length == 0
                ? [] : [.. Enumerable.Range(0, request.Weeks + 1).Select(week => AtWeek(week, whole))],
            SpentInWeeks = whole.Length == 0 ? null : Percentiles.Of(whole.Select(draw => draw.SpentInWeeks)),
        };
    }

    private static double Rate(ForecastRequest request, DrawSettings settings, int draw) =>
        request.Rate.At(new Chance(settings.Seed, draw).Normal());

    // Teeth, wire and slots by chance; the patient's rate is taken out, save what the request says of the movement.
    private static ForecastRequest Mouth(ForecastRequest request, Chance chance)
    {
        var teeth = ImmutableDictionary.CreateBuilder<ToothNumber, double>();
        foreach (ToothNumber tooth in request.Teeth)
        {
            double own = Math.Exp(PatientRate.ToothSpread * chance.Normal());
            teeth[tooth] = own * request.ToothRates.GetValueOrDefault(tooth, 1);
        }

        double stiffness = Math.Exp(StiffnessSpread * chance.Normal());
        double height = Math.Exp(SlotSpread * chance.Normal());
        double friction = Math.Exp(FrictionSpread * chance.Normal());
        Arrangement arrangement = request.Arrangement;
        return request with
        {
            Rate = new PatientRate(0, 0),
            ToothRates = teeth.ToImmutable(),
            Arrangement = arrangement with
            {
                Wire = Scattered(arrangement.Wire, stiffness),
                Slots = [.. arrangement.Slots.Select(slot => slot with
                {
                    Height = Math.Max(slot.Height * height, arrangement.Wire.Section.Thickness),
                    Friction = Math.Min(slot.Friction * friction, MostFriction),
                })],
            },
        };
    }

    private static Wire Scattered(Wire wire, double stiffness) => wire.Alloy is LinearElastic elastic
        ? wire with { Alloy = LinearElastic.WithShear(elastic.Young * stiffness, elastic.Shear * stiffness) }
        : wire;

    private static WeekRange AtWeek(int week, Draw[] draws)
    {
        DrawnWeek[] weeks = [.. draws.Select(draw => draw.Weeks[week])];
        Percentiles? irregularity = weeks[0].Irregularity is null
            ? null : Percentiles.Of(weeks.Select(one => one.Irregularity!.Value));
        return new WeekRange(
            week,
            irregularity,
            Percentiles.Of(weeks.Select(one => one.ActivationLeft)),
            [.. Enumerable.Range(0, weeks[0].Teeth.Length).Select(i => MedianPlace(weeks, i))]);
    }

    private static ClinicalOffset MedianPlace(DrawnWeek[] weeks, int tooth)
    {
        double Median(Func<ClinicalOffset, double> part) =>
            Percentiles.Of(weeks.Select(week => part(week.Teeth[tooth]))).P50;

        return new ClinicalOffset(
            Median(one => one.Labial), Median(one => one.Occlusal), Median(one => one.Mesial),
            Median(one => one.Rotation), Median(one => one.Tip), Median(one => one.Torque));
    }

    // A failure is passed on as it is, not wrapped.
    private static void InParallel(int count, DrawSettings settings, Action<int> work, CancellationToken cancellation)
    {
        try
        {
            var how = new ParallelOptions
            {
                CancellationToken = cancellation, MaxDegreeOfParallelism = settings.Threads ?? -1,
            };
            Parallel.For(0, count, how, work);
        }
        catch (AggregateException several)
        {
            cancellation.ThrowIfCancellationRequested();
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }
    }
}
