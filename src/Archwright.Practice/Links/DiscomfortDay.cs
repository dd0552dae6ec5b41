using Archwright.Practice.Rules;

namespace Archwright.Practice.Links;

/// <summary>How much it hurt on a day, as the patient says: 0 not at all, 10 the worst.</summary>
public sealed class DiscomfortDay
{
    /// <summary>Days back that may still be noted.</summary>
    public const int MostDaysBack = 14;

    private DiscomfortDay()
    {
    }

    /// <summary>Identity.</summary>
    public Guid Id { get; private set; }

    /// <summary>Whose.</summary>
    public Guid PatientId { get; private set; }

    /// <summary>The day.</summary>
    public DateOnly Day { get; private set; }

    /// <summary>0 to 10.</summary>
    public int Score { get; private set; }

    /// <summary>When it was noted last.</summary>
    public DateTimeOffset NotedAt { get; private set; }

    /// <summary>Changes with every save.</summary>
    public Guid Revision { get; private set; }

    /// <summary>Notes a day.</summary>
    /// <exception cref="RuleBrokenException">The score is not 0 to 10, or the day is to come or long ago.</exception>
    public static DiscomfortDay Note(Guid patient, DateOnly day, int score, DateTimeOffset at)
    {
        var noted = new DiscomfortDay { Id = Guid.CreateVersion7(at), PatientId = patient, Day = day };
        noted.Say(score, at);
        return noted;
    }

    /// <summary>Says it anew.</summary>
    /// <exception cref="RuleBrokenException">As for <see cref="Note"/>.</exception>
    public void Say(int score, DateTimeOffset at)
    {
        int back = DateOnly.FromDateTime(at.DateTime).DayNumber - Day.DayNumber;
        PracticeRules.DiscomfortIsZeroToTen.Keep(
            score is >= 0 and <= 10 && back is >= -1 and <= MostDaysBack,
            $"Give 0 to 10, for today or one of the last {MostDaysBack} days.");
        Score = score;
        NotedAt = at;
    }
}
