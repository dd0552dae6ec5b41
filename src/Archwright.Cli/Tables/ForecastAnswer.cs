using Archwright.Dentition.Positions;
using Archwright.Exchange.CaseFiles;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Cli.Tables;

/// <summary>What <c>forecast</c> found, for table, JSON and pictures alike.</summary>
/// <param name="Case">The case, with the wire that was asked for.</param>
/// <param name="Request">What was asked.</param>
/// <param name="Forecast">At the median rate.</param>
/// <param name="Drawn">Over what is not known; null without draws.</param>
internal sealed record ForecastAnswer(
    CaseFile Case, ForecastRequest Request, Forecast Forecast, DrawnForecast? Drawn)
{
    /// <summary>Whether the rate was learnt from observed places.</summary>
    public bool IsLearnt { get; init; }

    /// <summary>Whether the whole law of the alloy was asked for, and what came of it.</summary>
    public LawTaken Law { get; init; }

    /// <summary>Weeks that are answered.</summary>
    public int Weeks => Drawn is { Weeks.Length: > 0 }
        ? Math.Min(Drawn.Weeks.Length - 1, WholeWeeks)
        : WholeWeeks;

    /// <summary>The day that ends a week, at the median rate.</summary>
    public ForecastDay At(int week) => Forecast.AtWeek(week)!;

    /// <summary>Index of the front teeth [mm]; null when one has no slot.</summary>
    public Percentiles? Irregularity(int week) => Drawn is { Weeks.Length: > 0 }
        ? Drawn.Weeks[week].Irregularity
        : At(week).Irregularity is double exactly ? Percentiles.Exactly(exactly) : null;

    /// <summary>Share of the wire's activation.</summary>
    public Percentiles ActivationLeft(int week) => Drawn is { Weeks.Length: > 0 }
        ? Drawn.Weeks[week].ActivationLeft
        : Percentiles.Exactly(At(week).ActivationLeft);

    /// <summary>Median place of a tooth.</summary>
    public ClinicalOffset Offset(int week, int tooth) => Drawn is { Weeks.Length: > 0 }
        ? Drawn.Weeks[week].Teeth[tooth]
        : At(week).Teeth[tooth].Offset;

    /// <summary>Weeks until the wire is spent; infinite where it is not.</summary>
    public Percentiles SpentInWeeks => Drawn?.SpentInWeeks
        ?? Percentiles.Exactly(Forecast.SpentOnDay / 7.0 ?? double.PositiveInfinity);

    private int WholeWeeks => (Forecast.Days.Length - 1) / 7;
}

/// <summary>Which law of the alloy a forecast was computed with.</summary>
internal enum LawTaken
{
    /// <summary>That of its first modulus, as usual.</summary>
    First,

    /// <summary>The whole law: loop, unloading and history.</summary>
    Whole,

    /// <summary>The first modulus, since no answer was found with the whole law.</summary>
    FirstForWantOfWhole,
}
