using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Decisions;

/// <summary>What one wire does on one arch: figures alone, before anything is judged.</summary>
public sealed record WireFigures
{
    /// <summary>The wire.</summary>
    public required CatalogueWire Wire { get; init; }

    /// <summary>Whether it is the one in place, with its history.</summary>
    public bool IsPresent { get; init; }

    /// <summary>Whether it goes into every slot that is to hold it.</summary>
    public required bool Engaged { get; init; }

    /// <summary>Why it does not; null when it does.</summary>
    public string? WhyNot { get; init; }

    /// <summary>Whether the computation found no resting shape, which says nothing of whether it goes in.</summary>
    public bool IsUnanswered { get; init; }

    /// <summary>Id of a thinner wire of the same alloy that was refused already, for which reason this one was not
    /// computed; null when it was.</summary>
    public string? ThickerThan { get; init; }

    /// <summary>Load on each tooth on tying in, as if teeth were rigid, in order; empty when the wire is not engaged.
    /// </summary>
    public ImmutableArray<ClinicalLoad> Loads { get; init; } = [];

    /// <summary>Each tooth and its load once the ligament has given, in order, for a patient of rate 1: wire, teeth on
    /// their initial mobility and crowns that touch at rest together. Empty where that was not computed, or not found.
    /// </summary>
    public ImmutableArray<ToothDay> Given { get; init; } = [];

    /// <summary>The first week with it, by its first modulus, for a patient of rate 1; found when it is first asked
    /// for. Null where there is none.</summary>
    internal Lazy<Forecast>? FirstWeek { get; init; }

    /// <summary>Load of the wire on each tooth after some days, in order, or when it could be followed no farther,
    /// but for one day at least; null where that is not known.</summary>
    internal ImmutableArray<ClinicalLoad>? After(int days)
    {
        if (FirstWeek?.Value is not { } week)
            return null;

        int day = Math.Min(days, week.Days.Length - 1);
        return day >= 1 ? [.. week.Days[day].Teeth.Select(tooth => tooth.Clinical)] : null;
    }

    /// <summary>Load of the wire on each tooth, in order, that a policy holds ceilings against. Where the load once the
    /// ligament has given is wanted and not known, that on tying in stands for it.</summary>
    public ImmutableArray<ClinicalLoad> JudgedLoads(VisitPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(policy);
        return IsJudgedOnceGiven(policy) ? [.. Given.Select(tooth => tooth.Clinical)] : Loads;
    }

    /// <summary>Whether ceilings are held against loads once the ligament has given.</summary>
    internal bool IsJudgedOnceGiven(VisitPolicy policy) =>
        policy.JudgedLoad == JudgedLoad.OnceGiven && !Given.IsEmpty;

    /// <summary>Largest fibre strain.</summary>
    public double MaxStrain { get; init; }

    /// <summary>Index of the slot nearest to it.</summary>
    public int MaxStrainNear { get; init; } = -1;

    /// <summary>Permanent set after release [mm]; null where it was not computed, since the wire is far beyond its
    /// elastic range.</summary>
    public double? Set { get; init; }

    /// <summary>Whether the loads are those of the alloy's whole law; otherwise those of its first, elastic part.
    /// </summary>
    public bool IsWholeLaw { get; init; }

    /// <summary>Whether the elastic loads are an upper bound: the alloy transforms here, and its whole law found no
    /// answer.</summary>
    public bool IsUpperBound { get; init; }

    /// <summary>Indices of slots in which it is tied at a distance so that it may go in.</summary>
    public ImmutableArray<int> TiedAtDistance { get; init; } = [];

    /// <summary>How far those ties pull the wire toward their teeth [mm].</summary>
    public double Pull { get; init; }

    /// <summary>Sum of the forces on the teeth when it is fitted: today, or for the wire in place when it was [N].
    /// </summary>
    public double FittingForce { get; init; }

    /// <summary>What it does until the next visit; null where that was not computed.</summary>
    public Delivery? Delivery { get; init; }

    /// <summary>Index of the tooth that bears the largest force on tying in; −1 when not engaged.</summary>
    public int LargestForceSlot => IndexOfLargest(Loads);

    /// <summary>Largest force on a tooth on tying in [N]; zero when not engaged.</summary>
    public double LargestForce => Loads.IsEmpty ? 0 : Loads[LargestForceSlot].Force;

    /// <summary>Index of the tooth that bears the largest force once the ligament has given; −1 where that is not
    /// known.</summary>
    public int LargestGivenSlot => Given.IsEmpty ? -1 : IndexOfLargest([.. Given.Select(tooth => tooth.Clinical)]);

    /// <summary>Largest force on a tooth once the ligament has given [N]; null where that is not known.</summary>
    public double? LargestGiven => Given.IsEmpty ? null : Given[LargestGivenSlot].Clinical.Force;

    private static int IndexOfLargest(ImmutableArray<ClinicalLoad> loads) => loads.IsEmpty ? -1
        : Enumerable.Range(0, loads.Length).MaxBy(i => loads[i].Force);
}
