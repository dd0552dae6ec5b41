using System.Collections.Concurrent;
using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Patients;

namespace Archwright.Treatment.Decisions;

/// <summary>Finds the figures of one wire on one arch: engaged today, with its history if it is in place, and followed
/// to the next visit. Judges nothing. One evaluator serves one arch; it may be shared by threads.</summary>
/// <remarks>Alloys that differ only beyond their elastic part answer alike within it, so elastic answers are kept by
/// modulus and section, found once, and followed once.</remarks>
public sealed class WireEvaluator
{
    private const double SetWorthKnowing = 3;

    private readonly ArchToday _arch;
    private readonly ImmutableArray<ClinicalAxes> _axes;
    private readonly WireJudge _judge;
    private readonly ConcurrentDictionary<(double, double, Section), Lazy<EngagementResult>> _elastic = new();
    private readonly ConcurrentDictionary<(double, double, Section, double?), Lazy<ImmutableArray<ToothDay>>> _given
        = new();
    private readonly ConcurrentDictionary<(double, double, Section, double?, PatientRate, int), Lazy<Delivery>>
        _followed = new();

    private readonly ConcurrentDictionary<(double, double, Section, double?), Lazy<Forecast>> _weeks = new();

    /// <summary>An evaluator of an arch.</summary>
    public WireEvaluator(ArchToday arch)
    {
        ArgumentNullException.ThrowIfNull(arch);
        _arch = arch;
        _axes = arch.Axes;
        _judge = new WireJudge(arch.Arrangement, _axes, ForceCeilings.None);
    }

    /// <summary>The figures of a wire that is fitted today: on tying in, and once the ligament has given.</summary>
    /// <param name="wire">Which.</param>
    /// <param name="cancellation">Gives up inside the engagement.</param>
    /// <exception cref="ArgumentException">The arch is impossible for any wire.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public WireFigures Fitted(CatalogueWire wire, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(wire);
        (WireFigures figures, bool isWhole) = TiedIn(wire, cancellation);
        return Given(figures, isWhole ? FirstInstant(wire, wire.WholeWire) : null, cancellation);
    }

    // Also tells whether the loads are those of the whole law, be it of an alloy that transforms or one that yields.
    private (WireFigures Figures, bool IsWhole) TiedIn(CatalogueWire wire, CancellationToken cancellation)
    {
        if (_judge.TooThick(wire) is { } reason)
            return (new WireFigures { Wire = wire, Engaged = false, WhyNot = reason }, false);

        EngagementResult elastic = Elastic(wire, cancellation);
        if (!elastic.Converged || elastic.Obstacle is not null)
            return (NotEngaged(wire, elastic), false);

        bool yields = elastic.LargestStrain > wire.ElasticStrainLimit && !wire.InitialModulusOnly;
        bool transforms = WireComparison.Transforms(wire, elastic.LargestStrain, _arch.Arrangement.Temperature);
        WireFigures figures = Read(wire, elastic) with { Set = yields ? null : 0 };
        bool isFarBeyond = elastic.LargestStrain > SetWorthKnowing * wire.ElasticStrainLimit;
        if ((!yields || isFarBeyond) && !transforms)
            return (figures, false);

        EngagementResult whole = Engage(wire.WholeWire, cancellation);
        return !whole.Converged || whole.Obstacle is not null
            ? (figures with { IsUpperBound = transforms }, false)
            : (Read(wire, whole) with { IsWholeLaw = transforms, Set = yields ? whole.Set : 0 }, true);
    }

    // With the whole law where that is asked for and finds a rest, else with the first, elastic part, which loads teeth
    // more. A wire that stays bent beyond what was computed goes in nowhere: no sustained load is worth finding.
    private WireFigures Given(WireFigures figures, ForecastRequest? whole, CancellationToken cancellation)
    {
        if (!figures.Engaged || figures.Set is null)
            return figures;

        figures = figures with { FirstWeek = FirstWeek(figures.Wire, cancellation) };
        if (whole is not null && GivenLigament.Of(whole, cancellation) is { } teeth)
            return figures with { Given = teeth };

        return figures with
        {
            Given = ElasticGiven(figures.Wire, cancellation),
            IsUpperBound = figures.IsUpperBound || figures.IsWholeLaw,
        };
    }

    private ImmutableArray<ToothDay> ElasticGiven(CatalogueWire wire, CancellationToken cancellation)
    {
        Alloy alloy = wire.Wire.Alloy;
        return _given.GetOrAdd(
            (alloy.Young, alloy.Shear, wire.Section, _arch.FrictionOf(wire)),
            _ => new Lazy<ImmutableArray<ToothDay>>(
                () => GivenLigament.Of(FirstInstant(wire, wire.Wire), cancellation) ?? [])).Value;
    }

    // Finer steps would not tell more of whether a load is gone within days.
    private Lazy<Forecast> FirstWeek(CatalogueWire wire, CancellationToken cancellation)
    {
        const double StepTolerance = 0.05;
        Alloy alloy = wire.Wire.Alloy;
        return _weeks.GetOrAdd(
            (alloy.Young, alloy.Shear, wire.Section, _arch.FrictionOf(wire)),
            _ => new Lazy<Forecast>(() => Week(
                FirstInstant(wire, wire.Wire) with { StepTolerance = StepTolerance }, cancellation)));
    }

    // Where the mesh of forecasts finds no rest on the way, that of a single engagement is tried.
    private static Forecast Week(ForecastRequest request, CancellationToken cancellation)
    {
        Forecast quick = Forecaster.Run(request, cancellation);
        if (quick.IsWhole)
            return quick;

        using var wire = new EngagedWireInPlace(request.Arrangement, fitted: null, EngagementOptions.Default);
        Forecast fine = Forecaster.Run(request, wire, cancellation);
        return fine.Days.Length > quick.Days.Length ? fine : quick;
    }

    // Rate 1: movement under a load is read for the mean of people, and scaled for the patient where it is used.
    private ForecastRequest FirstInstant(CatalogueWire of, Mechanics.Rods.Wire wire) => new()
    {
        Arrangement = _arch.With(of, wire),
        Teeth = _arch.Teeth,
        SoftTissue = _arch.SoftTissue,
        Weeks = 1,
        Rate = new PatientRate(LogMedian: 0, LogSpread: 0),
    };

    /// <summary>The figures of the wire in place, with its history, followed to the next visit.</summary>
    /// <param name="present">Which, and since when; without weeks it is taken as it would engage today.</param>
    /// <param name="rate">What is believed of the patient's rate.</param>
    /// <param name="weeks">To the next visit.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">The arch is impossible for any wire.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public WireFigures InPlace(
        PresentWire present, PatientRate rate, int weeks, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(present);
        (WireFigures today, bool isWhole) = TiedIn(present.Wire, cancellation);
        today = today with { IsPresent = true };
        if (!today.Engaged)
            return today;

        ForecastRequest request = Request(present.Wire, rate, weeks) with
        {
            WeeksInPlace = present.Weeks ?? 0, FittedPlaces = present.FittedPlaces,
        };
        (double force, bool transformed) = WhenFitted(present.Wire, request, today, cancellation);
        ForecastRequest? withHistory = !transformed && !isWhole ? null
            : FirstInstant(present.Wire, present.Wire.WholeWire) with
            {
                WeeksInPlace = request.WeeksInPlace, FittedPlaces = FittedPlaces.Of(request) ?? [],
            };
        today = Given(today with { FittingForce = force }, withHistory, cancellation);
        return Followed(today, request, rate, weeks, transformed || today.IsWholeLaw, cancellation);
    }

    /// <summary>The same figures, followed to the next visit.</summary>
    /// <param name="fitted">Figures of a wire that goes in on this arch.</param>
    /// <param name="rate">What is believed of the patient's rate.</param>
    /// <param name="weeks">To the next visit.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public WireFigures Followed(
        WireFigures fitted, PatientRate rate, int weeks, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(fitted);
        if (!fitted.Engaged)
            return fitted;

        Alloy alloy = fitted.Wire.Wire.Alloy;
        return fitted.IsWholeLaw ? Follow() : fitted with
        {
            Delivery = _followed.GetOrAdd(
                (alloy.Young, alloy.Shear, fitted.Wire.Section, _arch.FrictionOf(fitted.Wire), rate, weeks),
                _ => new Lazy<Delivery>(() => Follow().Delivery!)).Value, // followed: has one
        };

        WireFigures Follow() => Followed(
            fitted, Request(fitted.Wire, rate, weeks), rate, weeks, fitted.IsWholeLaw, cancellation);
    }

    private WireFigures Followed(
        WireFigures figures, ForecastRequest request, PatientRate rate, int weeks, bool wholeLaw,
        CancellationToken cancellation)
    {
        if (wholeLaw)
        {
            Arrangement whole = request.Arrangement with { Wire = figures.Wire.WholeWire };
            Forecast forecast = Forecaster.Run(request with { Arrangement = whole }, cancellation);
            if (forecast.Days.Length > 7 * weeks)
                return WithDelivery(figures, forecast, isUpperBound: false, hasHistory: figures.IsPresent);
        }

        return WithDelivery(
            figures, Forecaster.Run(request, cancellation), isUpperBound: wholeLaw, hasHistory: false);

        WireFigures WithDelivery(WireFigures on, Forecast forecast, bool isUpperBound, bool hasHistory) => on with
        {
            Delivery = Delivery.Of(_arch, forecast, on.Given, rate, weeks, isUpperBound),
            Loads = hasHistory ? [.. forecast.Days[0].Teeth.Select(tooth => tooth.Clinical)] : on.Loads,
        };
    }

    // Long enough to be read for a quick patient as well.
    private ForecastRequest Request(CatalogueWire wire, PatientRate rate, int weeks)
    {
        double quick = rate.At(Delivery.Ninetieth) / rate.Median;
        return new ForecastRequest
        {
            Arrangement = _arch.With(wire, wire.Wire),
            Teeth = _arch.Teeth,
            SoftTissue = _arch.SoftTissue,
            Weeks = Math.Min(ForecastRequest.MostWeeks, (int)Math.Ceiling(weeks * quick)),
            Rate = rate,
        };
    }

    // What the wire pushed with when it went in: for comfort, and to know whether it transformed on the way.
    private (double Force, bool Transformed) WhenFitted(
        CatalogueWire wire, ForecastRequest request, WireFigures today, CancellationToken cancellation)
    {
        if (FittedPlaces.Of(request) is not { } places)
            return (today.FittingForce, false);

        var then = new WireEvaluator(_arch with { Arrangement = _arch.Arrangement.At(places) });
        WireFigures fitted = then.TiedIn(wire, cancellation).Figures;
        return fitted.Engaged ? (fitted.FittingForce, fitted.IsWholeLaw) : (today.FittingForce, false);
    }

    private EngagementResult Elastic(CatalogueWire wire, CancellationToken cancellation)
    {
        Alloy alloy = wire.Wire.Alloy;
        return _elastic.GetOrAdd(
            (alloy.Young, alloy.Shear, wire.Section),
            _ => new Lazy<EngagementResult>(() => Engage(wire.Wire, cancellation))).Value;
    }

    private EngagementResult Engage(Mechanics.Rods.Wire wire, CancellationToken cancellation) =>
        WireComparison.EngageOne(_arch.Arrangement with { Wire = wire }, cancellation);

    private WireFigures Read(CatalogueWire wire, EngagementResult result)
    {
        ImmutableArray<ClinicalLoad> loads =
        [
            .. result.Slots.Select((slot, i) => _axes[i].Resolve(_arch.Arrangement.Slots[i].Actual, slot.OnTooth)),
        ];
        return new WireFigures
        {
            Wire = wire,
            Engaged = true,
            Loads = loads,
            MaxStrain = result.LargestStrain,
            MaxStrainNear = result.LargestStrainNear,
            FittingForce = loads.Sum(load => load.Force),
            TiedAtDistance = [],
        };
    }

    private WireFigures NotEngaged(CatalogueWire wire, EngagementResult result) => new()
    {
        Wire = wire, Engaged = false, WhyNot = _judge.Tried(wire, result).WhyNot, IsUnanswered = !result.Converged,
    };
}
