using System.Collections.Immutable;
using System.Globalization;
using Archwright.Treatment.Policies;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Ladders;

/// <summary>Which answers cannot be told apart.</summary>
/// <remarks>As at a visit: visits and weeks are uncertain by half of their range among people and by the accuracy of
/// the forecast, the comfort index by the accuracy of forces. Two answers tie where they differ by less in all three.
/// Published trials of sequences found hardly any difference (Mandall 2006, Ong 2011), so a tie is the usual
/// outcome.</remarks>
internal static class LadderTies
{
    public static ImmutableArray<LadderAnswer> Marked(ImmutableArray<LadderAnswer> answers, VisitPolicy policy) =>
    [
        .. answers.Select(one => one with
        {
            SameAs = Kinds(answers, other => other.Kind != one.Kind && other.IsSameSequence(one)),
            TiesWith = Kinds(answers, other => other.Kind != one.Kind && IsTie(one, other, policy)),
        }),
    ];

    public static bool IsTie(LadderAnswer one, LadderAnswer other, VisitPolicy policy) => one.IsSameSequence(other)
        || one.Stop is null && other.Stop is null
            && IsAlike(one.Visits, other.Visits, policy) && IsAlike(one.TotalWeeks, other.TotalWeeks, policy)
            && IsAsGentle(one, other, policy);

    /// <summary>How one differs from another, in figures and words.</summary>
    public static LadderDifference Difference(LadderAnswer own, LadderAnswer other, VisitPolicy policy)
    {
        double visits = own.Visits.P50 - other.Visits.P50;
        double weeks = own.TotalWeeks.P50 - other.TotalWeeks.P50;
        double index = own.ComfortIndex - other.ComfortIndex;
        return new LadderDifference(other.Kind, visits, weeks, index, Sentence());

        string Sentence()
        {
            string against = $"Against {other.Kind.Name()}: ";
            if (own.IsSameSequence(other))
                return against + "the same wires.";
            if (own.Stop is { } stop)
                return against + $"does not come to its end. {stop}";

            string text = against + string.Join(", ",
                Part(visits, "0", "visit", "visits", "as many visits", IsAlike(own.Visits, other.Visits, policy)),
                Part(weeks, "0", "week", "weeks", "as many weeks",
                    IsAlike(own.TotalWeeks, other.TotalWeeks, policy)));
            string comfort = Math.Abs(index) < 0.05 ? "the same worst comfort index"
                : $"worst comfort index {Figure(own.ComfortIndex, "0.0")} against "
                    + Figure(other.ComfortIndex, "0.0")
                    + (IsAsGentle(own, other, policy) ? " (within what is known)" : "");
            return $"{text}, {comfort}.";
        }
    }

    private static string Part(
        double difference, string format, string one, string many, string none, bool isAlike)
    {
        if (double.IsNaN(difference) || double.IsInfinity(difference))
            return $"{many} not known for the usual patient";
        if (difference == 0)
            return none;

        string size = Figure(Math.Abs(difference), format);
        string unit = size == "1" ? one : many;
        return $"{size} {unit} {(difference > 0 ? "more" : "fewer")}" + (isAlike ? " (within what is known)" : "");
    }

    private static bool IsAlike(Percentiles a, Percentiles b, VisitPolicy policy) =>
        double.IsInfinity(a.P50) || double.IsInfinity(b.P50) ? double.IsInfinity(a.P50) == double.IsInfinity(b.P50)
        : Math.Abs(a.P50 - b.P50) <= Math.Max(Uncertainty(a, policy), Uncertainty(b, policy));

    private static double Uncertainty(Percentiles range, VisitPolicy policy) =>
        (range.P90 - range.P10) / 2 + policy.ForecastAccuracy * range.P50;

    private static bool IsAsGentle(LadderAnswer a, LadderAnswer b, VisitPolicy policy) =>
        Math.Abs(a.ComfortIndex - b.ComfortIndex)
            <= policy.ForceAccuracy * Math.Max(a.ComfortIndex, b.ComfortIndex);

    private static ImmutableArray<LadderKind> Kinds(
        ImmutableArray<LadderAnswer> answers, Func<LadderAnswer, bool> which) =>
        [.. answers.Where(which).Select(one => one.Kind)];

    private static string Figure(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
