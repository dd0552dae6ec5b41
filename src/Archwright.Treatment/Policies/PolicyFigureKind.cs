using System.Collections.Immutable;

namespace Archwright.Treatment.Policies;

/// <summary>A figure that every policy holds: its name, unit, and the limits outside which it must be a slip.</summary>
/// <param name="Name">Name in the file.</param>
/// <param name="Unit">Unit in the file.</param>
/// <param name="Low">Smallest value that is read.</param>
/// <param name="High">Largest value that is read.</param>
/// <param name="Without">What holds where a policy leaves it out; null where every policy must have it.</param>
internal sealed record PolicyFigureKind(string Name, string Unit, double Low, double High, double? Without = null)
{
    public const string BriefDays = "brief_days";
    public const string BriefIntrusion = "brief_intrusion";
    public const string BriefForce = "brief_force";
    public const string SpentSpeed = "spent_speed";
    public const string KeepShare = "keep_share";
    public const string EarlyWeeks = "early_weeks";
    public const string AlignedWithin = "aligned_within";
    public const string LargestSet = "largest_set";
    public const string LargestStep = "largest_step";
    public const string FirstWireStiffness = "first_wire_stiffness";
    public const string HighDiscomfort = "high_discomfort";
    public const string ComfortHalfForce = "comfort_half_force";
    public const string PeakSoreness = "peak_soreness";
    public const string SorenessSpread = "soreness_spread";
    public const string MostNickel = "most_nickel";
    public const string ReducedSupport = "reduced_support";
    public const string PartialPull = "partial_pull";
    public const string PartialTeeth = "partial_teeth";
    public const string WeightDelivered = "weight_delivered";
    public const string WeightProgress = "weight_progress";
    public const string WeightComfort = "weight_comfort";
    public const string AlikeStiffness = "alike_stiffness";
    public const string ForecastAccuracy = "forecast_accuracy";
    public const string ForceAccuracy = "force_accuracy";
    public const string FollowedWires = "followed_wires";
    public const string LadderVisits = "ladder_visits";
    public const string LadderExtraVisits = "ladder_extra_visits";
    public const string LadderForecasts = "ladder_forecasts";

    public static ImmutableArray<PolicyFigureKind> All { get; } =
    [
        new(SpentSpeed, "mm/week", 0.01, 1),
        new(KeepShare, "1", 0, 1),
        new(EarlyWeeks, "weeks", 0, 12),
        new(AlignedWithin, "mm", 0.05, 1),
        new(LargestSet, "mm", 0, 2),
        new(LargestStep, "1", 1, 100),
        new(FirstWireStiffness, "N·mm²", 5, 5000),
        new(HighDiscomfort, "of 10", 0, 10),
        new(ComfortHalfForce, "N", 0.1, 100),
        new(PeakSoreness, "of 10", 0, 10),
        new(SorenessSpread, "of 10", 0, 10),
        new(MostNickel, "% by weight", 0, 100),
        new(ReducedSupport, "1", 0.05, 1),
        new(PartialPull, "mm", 0, 3),
        new(PartialTeeth, "teeth", 0, 6),
        new(WeightDelivered, "1", 0, 1),
        new(WeightProgress, "1", 0, 1),
        new(WeightComfort, "1", 0, 1),
        new(AlikeStiffness, "1", 1, 20),
        new(ForecastAccuracy, "1", 0, 1),
        new(ForceAccuracy, "1", 0, 1),
        new(FollowedWires, "wires", 1, 1000),
        new(LadderVisits, "visits", 1, 60),
        new(LadderExtraVisits, "visits", 0, 60),
        new(LadderForecasts, "forecasts", 1, 10000),
        new(BriefDays, "days", 1, 7, Without: 7),
        new(BriefIntrusion, "1", 1, 10, Without: 1),
        new(BriefForce, "1", 1, 10, Without: 1),
    ];
}
