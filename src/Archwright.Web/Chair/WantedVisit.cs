using Archwright.Practice.Visits;

namespace Archwright.Web.Chair;

/// <summary>A visit that is to go into the diary.</summary>
/// <param name="Day">When.</param>
/// <param name="Starts">At what time, local.</param>
/// <param name="Minutes">How long.</param>
/// <param name="Kind">Why.</param>
/// <param name="Question">The question of the day; empty when there is none.</param>
public sealed record WantedVisit(DateOnly Day, TimeOnly Starts, int Minutes, VisitKind Kind, string Question)
{
    /// <summary>Lengths offered [min]; common practice, no source.</summary>
    public static IReadOnlyList<int> UsualLengths { get; } = [10, 20, 30, 45, 60, 90];

    /// <summary>As a visit of somebody.</summary>
    public Visit Of(Guid patient) => Visit.Book(patient, Day, Starts, Minutes, Kind, Question.Trim());
}
