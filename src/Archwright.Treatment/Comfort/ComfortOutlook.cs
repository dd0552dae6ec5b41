using System.Collections.Immutable;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Comfort;

/// <summary>How sore it may be at one time after the visit.</summary>
/// <param name="Hour">Hours after the visit.</param>
/// <param name="Low">Low end of the range [of 10].</param>
/// <param name="Mid">Middle [of 10].</param>
/// <param name="High">High end [of 10].</param>
public readonly record struct SorenessAt(double Hour, double Low, double Mid, double High);

/// <summary>How the days after a visit may feel: a range, not a promise.</summary>
/// <remarks>
/// The course over time is the policy's, through published findings: it begins after about 2 hours, is worst after
/// about a day and clearly less by day 3. Its height is scaled by the force on engagement: for a patient who said how
/// the last wire felt, by the ratio of the two comfort indices; for others the index itself stands near the published
/// mean. People differ by more than wires do, so the range is wide.
/// </remarks>
public sealed record ComfortOutlook
{
    private const double Hours = 24;

    /// <summary>Soreness over time, in order.</summary>
    public required ImmutableArray<SorenessAt> Course { get; init; }

    /// <summary>Whether the height rests on what this patient said of the last wire.</summary>
    public required bool IsOfThisPatient { get; init; }

    /// <summary>The worst time.</summary>
    public SorenessAt Peak => Course.MaxBy(point => point.High);

    /// <summary>In words for the clinician.</summary>
    public string Sentence
    {
        get
        {
            SorenessAt peak = Peak;
            SorenessAt third = At(3 * Hours);
            string whose = IsOfThisPatient ? "going by the last wire" : "going by other people";
            return FormattableString.Invariant(
                $"May begin to ache after about 2 hours, worst after about {peak.Hour / Hours:0.#} day ")
                + FormattableString.Invariant(
                    $"({peak.Low:0} to {peak.High:0} of 10, {whose}), clearly less by day 3 ")
                + FormattableString.Invariant($"({third.Low:0} to {third.High:0}).");
        }
    }

    /// <summary>The range at an hour, between the points of the course.</summary>
    public SorenessAt At(double hour)
    {
        int after = Course.IndexOf(Course.FirstOrDefault(point => point.Hour >= hour));
        if (after <= 0)
            return after == 0 ? Course[0] : Course[^1];

        SorenessAt a = Course[after - 1];
        SorenessAt b = Course[after];
        double share = (hour - a.Hour) / (b.Hour - a.Hour);
        return new SorenessAt(
            hour, a.Low + share * (b.Low - a.Low), a.Mid + share * (b.Mid - a.Mid),
            a.High + share * (b.High - a.High));
    }

    /// <summary>The outlook of a wire that goes in today.</summary>
    /// <param name="wire">The wire.</param>
    /// <param name="last">The wire before, as it was when it went in; null when there was none.</param>
    /// <param name="discomfort">Worst discomfort after that one, 0 to 10; null when it was not asked.</param>
    /// <param name="policy">Time course and spread.</param>
    public static ComfortOutlook Of(WireFigures wire, WireFigures? last, double? discomfort, VisitPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(wire);
        ArgumentNullException.ThrowIfNull(policy);
        double index = wire.IsPresent ? ComfortIndex.Of(wire.Loads.Sum(load => load.Force), policy)
            : ComfortIndex.Of(wire, policy);
        double before = last is { FittingForce: > 0 } ? ComfortIndex.Of(last, policy) : 0;
        bool isOwn = discomfort is not null && before > 0;
        double peak = Math.Clamp(isOwn ? discomfort!.Value * index / before : index, 0, ComfortIndex.Worst);
        double spread = policy.SorenessSpread;
        double low = Math.Max(0, peak - spread);
        double high = Math.Min(ComfortIndex.Worst, peak + spread);
        return new ComfortOutlook
        {
            IsOfThisPatient = isOwn,
            Course =
            [
                .. policy.Soreness.Select(point => new SorenessAt(
                    point.Hour, low * point.Share, peak * point.Share, high * point.Share)),
            ],
        };
    }
}
