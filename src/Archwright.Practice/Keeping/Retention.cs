using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Settings;

namespace Archwright.Practice.Keeping;

/// <summary>Somebody whose record the practice's own rule no longer keeps.</summary>
/// <param name="PatientId">Who.</param>
/// <param name="FullName">Given and family names.</param>
/// <param name="BornOn">Birth date.</param>
/// <param name="LastDay">Day of the last entry.</param>
/// <param name="Visits">How many visits would go.</param>
/// <param name="Photographs">How many photographs would go.</param>
/// <param name="IsOpen">True when an appliance was never noted as taken off.</param>
public sealed record DueForDeletion(
    Guid PatientId, string FullName, DateOnly BornOn, DateOnly LastDay, int Visits, int Photographs, bool IsOpen);

/// <summary>How long a practice keeps records: years after the last entry, and in any case until an age is reached.
/// Both are the practice's to set; local law decides.</summary>
/// <param name="Years">Years after the last entry; null: for ever.</param>
/// <param name="UntilAge">Age up to which a record is kept in any case; null for none.</param>
public sealed record Retention(int? Years, int? UntilAge)
{
    /// <summary>What a practice has settled.</summary>
    public static Retention Of(PracticeSettings settings) => new(settings.RetentionYears, settings.RetentionAge);

    /// <summary>True when the rule no longer keeps a record on a day.</summary>
    /// <param name="bornOn">Birth date.</param>
    /// <param name="lastDay">Day of the last entry.</param>
    /// <param name="today">The day.</param>
    public bool IsOver(DateOnly bornOn, DateOnly lastDay, DateOnly today) =>
        Years is { } years && lastDay.AddYears(years) < today
        && (UntilAge is not { } age || bornOn.AddYears(age) < today);

    /// <summary>The rule in words.</summary>
    public string Words => Years is not { } years ? "records are kept for ever"
        : $"records are kept {years} years after the last entry"
            + (UntilAge is { } age ? $", and until the age of {age}" : "");
}

/// <summary>That a record was deleted by the practice's rule: when, by whom and under which rule, and nothing about the
/// patient but an identity that leads nowhere any more. The database lets a signed visit go only where this stands.
/// </summary>
public sealed class Disposal
{
    private Disposal()
    {
    }

    /// <summary>Identity.</summary>
    public Guid Id { get; private set; }

    /// <summary>Whose record.</summary>
    public Guid PatientId { get; private set; }

    /// <summary>When.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>Who confirmed it.</summary>
    public Guid StaffId { get; private set; }

    /// <summary>Their name at the time.</summary>
    public string StaffName { get; private set; } = "";

    /// <summary>The rule in words.</summary>
    public string Rule { get; private set; } = "";

    /// <summary>Confirms a deletion.</summary>
    /// <param name="patient">Whose record.</param>
    /// <param name="lastDay">Day of the last entry.</param>
    /// <param name="retention">The practice's rule.</param>
    /// <param name="by">Who confirms; an orthodontist.</param>
    /// <param name="at">When.</param>
    /// <exception cref="RuleBrokenException">Not an orthodontist, or the rule still keeps the record.</exception>
    public static Disposal Confirm(
        Patient patient, DateOnly lastDay, Retention retention, Actor by, DateTimeOffset at)
    {
        PracticeRules.OnlyAnOrthodontistDeletesByTheRule.Keep(
            by.Role == StaffRole.Orthodontist, $"{by.Name} may look at the list; an orthodontist confirms.");
        PracticeRules.ARecordStaysAsLongAsTheRuleSays.Keep(
            retention.IsOver(patient.BornOn, lastDay, DateOnly.FromDateTime(at.UtcDateTime)),
            $"This record is still kept: {retention.Words}. The last entry is of {lastDay:yyyy-MM-dd}.");
        return new Disposal
        {
            Id = Guid.CreateVersion7(at), PatientId = patient.Id, At = at, StaffId = by.Id, StaffName = by.Name,
            Rule = retention.Words,
        };
    }
}
