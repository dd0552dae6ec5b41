using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Movement;

namespace Archwright.Treatment.Forecasts;

/// <summary>Where the teeth will be: one entry a day from today on.</summary>
public sealed record Forecast
{
    /// <summary>Day 0 (today's places, the wire just engaged) to the last day reached.</summary>
    public required ImmutableArray<ForecastDay> Days { get; init; }

    /// <summary>Why it ends before the time asked for; null when it does not. The days before it stand.</summary>
    public ForecastStop? Stop { get; init; }

    /// <summary>First day on which the wire moves no tooth faster than the law's least speed (about a tenth of a
    /// millimetre a week); null when it still works at the end.</summary>
    public int? SpentOnDay { get; init; }

    /// <summary>Time steps taken, for judging cost.</summary>
    public int Steps { get; init; }

    /// <summary>Engagements solved, for judging cost.</summary>
    public int Engagements { get; init; }

    /// <summary>Whether the whole time asked for is covered.</summary>
    public bool IsWhole => Stop is null;

    /// <summary>The last day reached.</summary>
    public ForecastDay Last => Days[^1];

    /// <summary>This forecast, made at rate 1, read as that of a faster or slower patient.</summary>
    /// <param name="rate">Factor on the law.</param>
    /// <param name="weeks">How far; needs rate × weeks of forecast, unless it stopped.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not positive, or the forecast too short.</exception>
    public Draw ReadAt(double rate, int weeks)
    {
        if (!(rate is > 0 and < 100))
            throw new ArgumentOutOfRangeException(nameof(rate), rate, "It is positive and below 100.");
        if (IsWhole && 7 * weeks * rate > Days.Length - 1 + 1e-6)
            throw new ArgumentOutOfRangeException(nameof(weeks), weeks, "The forecast is not long enough.");

        return Course.Of(this, rate, weeks);
    }

    /// <summary>The day that ends a week; null when the forecast stops before.</summary>
    /// <param name="week">0 for today.</param>
    public ForecastDay? AtWeek(int week) => 7 * week < Days.Length && week >= 0 ? Days[7 * week] : null;
}

/// <summary>Why a forecast stopped.</summary>
/// <param name="Day">Time reached [days].</param>
/// <param name="Tooth">At which tooth; null when it is the whole wire.</param>
/// <param name="Reason">In words of the trade.</param>
public sealed record ForecastStop(double Day, ToothNumber? Tooth, string Reason);

/// <summary>The arch on one day.</summary>
/// <param name="Day">Days from today.</param>
/// <param name="Irregularity">Index of the six front teeth [mm]; null when one has no slot.</param>
/// <param name="ActivationLeft">Share of the wire's activation left: square root of the elastic energy it stores,
/// over that on engagement. For an elastic wire that is the share of its deflection. Zero for a wire that was
/// passive.</param>
/// <param name="StoredEnergy">[N·mm]</param>
/// <param name="Teeth">One a slot, from the patient's right to the left.</param>
public sealed record ForecastDay(
    int Day,
    double? Irregularity,
    double ActivationLeft,
    double StoredEnergy,
    ImmutableArray<ToothDay> Teeth);

/// <summary>One tooth on one day.</summary>
/// <param name="Tooth">Which.</param>
/// <param name="Slot">Where its slot is.</param>
/// <param name="Offset">The same against its planned place, in clinical words.</param>
/// <param name="FromWire">Load of the wire on the tooth, moment about the slot centre, frame of the case.</param>
/// <param name="Clinical">The same in clinical words.</param>
/// <param name="AtResistance">Load of wire, neighbours, lips and applied loads together, about the centre of
/// resistance.</param>
/// <param name="Movement">What it means.</param>
public sealed record ToothDay(
    ToothNumber Tooth,
    SlotFrame Slot,
    ClinicalOffset Offset,
    Wrench FromWire,
    ClinicalLoad Clinical,
    Wrench AtResistance,
    ToothMovement Movement)
{
    /// <summary>What lip, cheek and tongue together push the crown outward with; negative inward [N].</summary>
    public double SoftTissueForce { get; init; }
}
