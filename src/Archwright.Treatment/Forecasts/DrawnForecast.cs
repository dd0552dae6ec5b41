using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Forecasts;

/// <summary>A forecast with its uncertainty: many patients, teeth and wires as they may be.</summary>
public sealed record DrawnForecast
{
    /// <summary>The forecast at the median rate, without chance.</summary>
    public required Forecast Median { get; init; }

    /// <summary>Week 0 to the last week that is asked for; empty when no draw got through.</summary>
    public required ImmutableArray<WeekRange> Weeks { get; init; }

    /// <summary>Weeks until the wire is spent; infinite where it is not within the time asked; null when no draw got
    /// through.</summary>
    public required Percentiles? SpentInWeeks { get; init; }

    /// <summary>The draws, in order.</summary>
    public required ImmutableArray<Draw> Draws { get; init; }

    /// <summary>Draws that stopped early; they are left out of the ranges.</summary>
    public int Stopped => Draws.Count(draw => !draw.IsWhole);
}

/// <summary>One draw at the ends of the weeks.</summary>
/// <param name="Rate">Factor on the law of this patient.</param>
/// <param name="Weeks">Week 0 to the last week reached.</param>
/// <param name="SpentInWeeks">When the wire is spent; infinite when it is not within the time asked.</param>
/// <param name="IsWhole">Whether the whole time is covered.</param>
public sealed record Draw(double Rate, ImmutableArray<DrawnWeek> Weeks, double SpentInWeeks, bool IsWhole);

/// <summary>One draw at the end of a week.</summary>
/// <param name="Irregularity">[mm]; null when a front tooth has no slot.</param>
/// <param name="ActivationLeft">Share of the activation.</param>
/// <param name="Teeth">Places against the planned ones, one a slot.</param>
public sealed record DrawnWeek(double? Irregularity, double ActivationLeft, ImmutableArray<ClinicalOffset> Teeth);

/// <summary>The arch at the end of a week, with its ranges.</summary>
/// <param name="Week">0 for today.</param>
/// <param name="Irregularity">[mm]; null when a front tooth has no slot.</param>
/// <param name="ActivationLeft">Share of the activation.</param>
/// <param name="Teeth">Median places, part by part, one a slot.</param>
public sealed record WeekRange(
    int Week, Percentiles? Irregularity, Percentiles ActivationLeft, ImmutableArray<ClinicalOffset> Teeth);
