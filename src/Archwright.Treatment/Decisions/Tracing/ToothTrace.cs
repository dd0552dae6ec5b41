using System.Collections.Immutable;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Policies;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Decisions.Tracing;

/// <summary>One load of a tooth beside its ceiling.</summary>
/// <param name="Kind">Kind of movement.</param>
/// <param name="OnTyingIn">As if teeth were rigid [N or N·mm].</param>
/// <param name="Judged">What the ceiling is held against [N or N·mm].</param>
/// <param name="Ceiling">[N or N·mm]</param>
public sealed record CeilingTrace(LoadKind Kind, double OnTyingIn, double Judged, double Ceiling)
{
    /// <summary>Days after which the judged load is read, where it might be brief; 0 where it is that at
    /// first.</summary>
    public int AfterDays { get; init; }

    /// <summary>The load at first: once the ligament has given, or on tying in, as the policy says [N or
    /// N·mm].</summary>
    public double AtFirst { get; init; }

    /// <summary>Whether it is within.</summary>
    public bool IsWithin => Judged <= Ceiling;
}

/// <summary>What a load at the centre of resistance makes of a tooth.</summary>
/// <param name="Offset">How the tooth is off once its ligament has given.</param>
/// <param name="FromWire">Load of the wire at the slot then.</param>
/// <param name="Force">Force of wire and neighbours at the centre of resistance, along, outward and third axis of the
/// slot [N].</param>
/// <param name="Moment">Their moment there, about the same axes [N·mm].</param>
/// <param name="Arms">Arms of turning about the same axes [mm].</param>
/// <param name="Area">Area that the force is divided by [mm²].</param>
/// <param name="Stress">Mean compressive stress of the ligament [kPa].</param>
/// <param name="MeanSpeed">Speed of the fastest point of the crown in the mean of people [mm/day].</param>
/// <param name="Rate">Factor of this patient, usual value.</param>
/// <param name="WeeklySpeed">Speed of this patient [mm/week].</param>
/// <param name="LagDays">Days that the tooth stands still at first, for this patient.</param>
public sealed record MovementTrace(
    ClinicalOffset Offset, ClinicalLoad FromWire, Vector3 Force, Vector3 Moment, Vector3 Arms, double Area,
    double Stress, double MeanSpeed, double Rate, double WeeklySpeed, double LagDays);

/// <summary>The chain of figures of one tooth under one wire: from its place to the load, from the load to the speed
/// and the place at the next visit, and to the verdict. Each figure follows from those before it:
/// <code>
///     d = √(labial² + occlusal² + mesial² + (w/2)² (rotation² + tip² + torque²)),
///     s = 1000 √(F² + Σ (M_k/T_k)²) / A,
///     v = 0.0129 + 0.0109 ln s mm a day from 1 to 100 kPa, below in proportion to s, above as at 100,
///     speed = 7 · rate · v a week.
/// </code>
/// </summary>
public sealed record ToothTrace
{
    /// <summary>Id of the wire.</summary>
    public required string WireId { get; init; }

    /// <summary>The tooth.</summary>
    public required ToothNumber Tooth { get; init; }

    /// <summary>How it is off its planned place today.</summary>
    public required ClinicalOffset Offset { get; init; }

    /// <summary>Width of its crown, w [mm].</summary>
    public required double CrownWidth { get; init; }

    /// <summary>How far the crown is off, d [mm]; see <see cref="ArchToday.Distance"/>.</summary>
    public required double Distance { get; init; }

    /// <summary>Load of the wire on tying in; null when it does not go in.</summary>
    public ClinicalLoad? OnTyingIn { get; init; }

    /// <summary>Once its ligament has given; null where that is not known.</summary>
    public MovementTrace? Movement { get; init; }

    /// <summary>Weeks to the next visit.</summary>
    public required int Weeks { get; init; }

    /// <summary>How far the crown is expected to be off then, usual patient [mm]; null where the wire was not followed
    /// so far.</summary>
    public double? DistanceThen { get; init; }

    /// <summary>Its loads beside their ceilings; empty where there are none.</summary>
    public ImmutableArray<CeilingTrace> Ceilings { get; init; } = [];

    /// <summary>The chain of a tooth under a wire of an advice.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="option">One of its wires.</param>
    /// <param name="slot">Index of the tooth.</param>
    /// <param name="policy">The policy that was judged by.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such slot.</exception>
    public static ToothTrace Of(VisitAdvice advice, WireOption option, int slot, VisitPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(option);
        ArgumentNullException.ThrowIfNull(policy);
        ArchToday arch = advice.Question.Arch;
        ArgumentOutOfRangeException.ThrowIfNegative(slot);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(slot, arch.Teeth.Length);
        WireFigures wire = option.Figures;
        ClinicalOffset offset = arch.Offsets[slot];
        ToothNumber tooth = arch.Teeth[slot];
        ForecastDay? then = wire.Delivery?.Forecast.AtWeek(advice.Figures.Weeks);
        return new ToothTrace
        {
            WireId = wire.Wire.Id,
            Tooth = tooth,
            Offset = offset,
            CrownWidth = Anatomy.Of(tooth).CrownWidth.Value,
            Distance = ArchToday.Distance(tooth, offset),
            OnTyingIn = wire.Loads.IsEmpty ? null : wire.Loads[slot],
            Movement = wire.Given.IsEmpty ? null : Moved(wire.Given[slot], advice.Question.Rate.Median),
            Weeks = advice.Figures.Weeks,
            DistanceThen = then is null ? null : ArchToday.Distance(tooth, then.Teeth[slot].Offset),
            Ceilings = Held(advice, wire, slot, policy),
        };
    }

    private static MovementTrace Moved(ToothDay given, double rate)
    {
        ToothSupport support = ToothSupport.Of(given.Tooth);
        double lag = MovementLaw.LagOf(given.Movement.Stress);
        return new MovementTrace(
            given.Offset,
            given.Clinical,
            MovingArch.InAxes(given.Slot, given.AtResistance.Force),
            MovingArch.InAxes(given.Slot, given.AtResistance.Moment),
            support.TurningArms,
            support.StressedArea,
            given.Movement.Stress,
            given.Movement.Speed,
            rate,
            7 * rate * given.Movement.Speed,
            lag / rate);
    }

    private static ImmutableArray<CeilingTrace> Held(
        VisitAdvice advice, WireFigures wire, int slot, VisitPolicy policy)
    {
        if (wire.Loads.IsEmpty)
            return [];

        var view = new VisitView(advice.Question, policy, SentenceStyle.Default, advice.Figures.Present);
        return
        [
            .. Rules.WithinCeilings.Held(wire, view).Where(one => one.Load.Slot == slot).Select(one => new CeilingTrace(
                one.Load.Kind, one.Load.Kind.Of(wire.Loads[slot]), one.Load.Figure, one.Load.Ceiling)
            {
                AfterDays = one.Days, AtFirst = one.AtFirst,
            }),
        ];
    }
}
