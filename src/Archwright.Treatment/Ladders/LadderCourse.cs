using System.Collections.Concurrent;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Ladders;

/// <summary>A wire worn from one visit on: one forecast, read for every patient.</summary>
/// <remarks>
/// Time enters the law of movement together with the patient's rate alone, so one forecast at rate 1 serves patients of
/// every rate. Places are read on a grid of days, finer at first, and the same for ever once the wire is spent:
/// patients whose teeth stand within half a step of the grid share what follows.
/// </remarks>
internal sealed class LadderCourse : ILadderCourse
{
    /// <summary>Largest error of one time step [mm at the crown]. Coarser than a forecast for the chair: on the
    /// examples crowns come out within 0.05 mm of it, in half of the time.</summary>
    public const double StepTolerance = 0.1;

    private const int FirstWeeks = 8;
    private const int FineUntil = 21;
    private const int Fine = 3;
    private const int Week = 7;

    private readonly LadderRun _run;
    private readonly LadderArch _arch;
    private readonly LadderFit _fit;
    private readonly ConcurrentDictionary<int, Lazy<LadderArch>> _at = new();
    private readonly Lock _gate = new();
    private Forecast _forecast;

    public LadderCourse(LadderRun run, LadderArch arch, LadderFit fit)
    {
        _run = run;
        _arch = arch;
        _fit = fit;
        _forecast = Followed(Math.Max(FirstWeeks, (int)Math.Ceiling((FirstWeeks - 1) * run.UsualRate)));
        Interval = IntervalOf(fit.Wire, run.Policy, _forecast.SpentOnDay / (Week * run.UsualRate));
    }

    public int Interval { get; }

    /// <summary>The practice's usual interval for the kind of wire, or sooner where the wire is spent before.</summary>
    public static int IntervalOf(CatalogueWire wire, VisitPolicy policy, double? spentInWeeks)
    {
        PolicyInterval usual = policy.Interval(Intervals.KindOf(wire));
        return spentInWeeks is { } weeks
            ? (int)Math.Clamp(Math.Ceiling(weeks), usual.Low, usual.Usual) : usual.Usual;
    }

    public ILadderArch At(int visit, double rate)
    {
        int day = OnGrid(Day(visit, rate));
        return _at.GetOrAdd(day, _ => new Lazy<LadderArch>(() =>
        {
            Forecast reached = Reaching(day);
            return _arch.Moved(reached.Days[Math.Min(day, reached.Days.Length - 1)]);
        })).Value;
    }

    public bool IsLast(int visit, double rate)
    {
        double day = Day(visit, rate);
        Forecast reached = Reaching(OnGrid(day));
        return day >= EndOf(reached);
    }

    private double Day(int visit, double rate) => rate * Week * Interval * visit;

    private int OnGrid(double day)
    {
        Forecast reached = Reaching((int)Math.Ceiling(day));
        double end = EndOf(reached);
        double read = Math.Min(day, end);
        int step = read < FineUntil ? Fine : Week;
        return Math.Max(1, (int)(step * Math.Round(read / step)));
    }

    // A week after it is spent nothing is left to see.
    private static double EndOf(Forecast reached) => reached.Stop is { } stop ? Math.Max(1, Math.Floor(stop.Day))
        : reached.SpentOnDay is { } spent ? spent + Week : double.PositiveInfinity;

    // Longer forecasts begin like shorter ones, so what was read before stays true.
    private Forecast Reaching(int day)
    {
        lock (_gate)
        {
            while (double.IsInfinity(EndOf(_forecast)) && _forecast.Days.Length <= day + Week
                && (_forecast.Days.Length - 1) / Week < ForecastRequest.MostWeeks)
            {
                _forecast = Followed(Math.Min(ForecastRequest.MostWeeks, 2 * (_forecast.Days.Length / Week)));
            }

            return _forecast;
        }
    }

    private Forecast Followed(int weeks)
    {
        ArchToday tied = _arch.Arch.Loosened(_fit.Figures.TiedAtDistance, _fit.Figures.Pull);
        Forecast forecast = Forecaster.Run(
            new ForecastRequest
            {
                Arrangement = tied.With(_fit.Wire, _fit.Wire.Wire),
                Teeth = tied.Teeth,
                SoftTissue = tied.SoftTissue,
                Weeks = Math.Min(weeks, ForecastRequest.MostWeeks),
                Rate = new PatientRate(0, 0),
                StepTolerance = StepTolerance,
                WeeksInPlace = _fit.Figures.IsPresent ? _run.WeeksInPlace * _run.UsualRate : 0,
            },
            _run.Cancellation);
        _run.Followed();
        return forecast;
    }
}
