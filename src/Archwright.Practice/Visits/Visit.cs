using Archwright.Dentition.Teeth;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Values;

namespace Archwright.Practice.Visits;

/// <summary>Why somebody comes.</summary>
public enum VisitKind
{
    /// <summary>The appliance goes on.</summary>
    Bonding,

    /// <summary>The usual visit.</summary>
    Adjustment,

    /// <summary>Something broke or hurts.</summary>
    Emergency,

    /// <summary>Progress is looked at as a whole.</summary>
    Review,

    /// <summary>The appliance comes off.</summary>
    Debonding,
}

/// <summary>Where a visit stands.</summary>
public enum VisitState
{
    /// <summary>In the diary.</summary>
    Booked,

    /// <summary>Something has been noted.</summary>
    Begun,

    /// <summary>Signed; from then on amended only.</summary>
    Signed,
}

/// <summary>Who signed, and when.</summary>
/// <param name="StaffId">Identity of the account.</param>
/// <param name="Name">As it was.</param>
/// <param name="At">When.</param>
public sealed record Signature(Guid StaffId, string Name, DateTimeOffset At);

/// <summary>A later entry to a signed visit.</summary>
/// <param name="StaffId">Identity of the account.</param>
/// <param name="Name">As it was.</param>
/// <param name="At">When.</param>
/// <param name="Text">What is added or put right.</param>
/// <param name="Why">Why it was not so from the start.</param>
public sealed record Amendment(Guid StaffId, string Name, DateTimeOffset At, string Text, string Why);

/// <summary>A visit in the diary and what is noted at it.</summary>
public sealed class Visit
{
    private Visit()
    {
    }

    /// <summary>Identity.</summary>
    public Guid Id { get; private set; }

    /// <summary>Who comes.</summary>
    public Guid PatientId { get; private set; }

    /// <summary>The day.</summary>
    public DateOnly Day { get; private set; }

    /// <summary>The time, local.</summary>
    public TimeOnly Starts { get; private set; }

    /// <summary>How long it is planned.</summary>
    public int Minutes { get; private set; }

    /// <summary>Why.</summary>
    public VisitKind Kind { get; private set; }

    /// <summary>The question of the day in a sentence; empty when none was noted.</summary>
    public string Question { get; private set; } = "";

    /// <summary>Where it stands.</summary>
    public VisitState State { get; private set; }

    /// <summary>What is noted.</summary>
    public VisitContent Content { get; private set; } = VisitContent.Blank;

    /// <summary>Name of the one who noted last; empty before.</summary>
    public string NotedBy { get; private set; } = "";

    /// <summary>Who signed; null before.</summary>
    public Signature? Signed { get; private set; }

    /// <summary>Later entries, oldest first.</summary>
    public Listing<Amendment> Amendments { get; private set; } = Listing<Amendment>.Empty;

    /// <summary>Changes with every save; tells two people who edit at once.</summary>
    public Guid Revision { get; private set; }

    /// <summary>Puts a visit into the diary.</summary>
    public static Visit Book(
        Guid patient, DateOnly day, TimeOnly starts, int minutes, VisitKind kind, string question = "") => new()
        {
            Id = Guid.CreateVersion7(),
            PatientId = patient,
            Day = day,
            Starts = starts,
            Minutes = minutes,
            Kind = kind,
            Question = question,
        };

    /// <summary>A visit from records kept elsewhere before this program: signed there, and read only here. What those
    /// records do not hold stays empty.</summary>
    /// <param name="patient">Whose.</param>
    /// <param name="day">When.</param>
    /// <param name="starts">At what time.</param>
    /// <param name="kind">Why.</param>
    /// <param name="content">What they hold.</param>
    /// <param name="by">Who signed it there.</param>
    public static Visit FromEarlierRecords(
        Guid patient, DateOnly day, TimeOnly starts, VisitKind kind, VisitContent content, string by)
    {
        Visit visit = Book(patient, day, starts, 0, kind);
        visit.Content = content;
        visit.State = VisitState.Signed;
        visit.Signed = new Signature(
            Guid.Empty, $"{by} (earlier records)", new DateTimeOffset(day.ToDateTime(starts), TimeSpan.Zero));
        return visit;
    }

    /// <summary>Notes something: replaces what was noted before.</summary>
    /// <exception cref="RuleBrokenException">The visit is signed, or a position or tooth cannot be.</exception>
    public void Note(VisitContent content, Actor by)
    {
        PracticeRules.ASignedVisitIsAmendedNeverChanged.Keep(
            State != VisitState.Signed, "This visit is signed. Add an amendment; what was signed stays readable.");
        foreach (Jaw jaw in Enum.GetValues<Jaw>())
        {
            if (content.Arch(jaw) is not { } arch)
                continue;
            if (arch.Seen is { } seen)
                ArchTreatment.CheckPositions(jaw, seen.Positions);
            ArchTreatment.CheckTeeth(jaw, arch.Ties.Teeth);
            ArchTreatment.CheckTeeth(jaw, arch.Bare?.Teeth ?? []);
        }

        Content = content;
        NotedBy = by.Name;
        State = VisitState.Begun;
    }

    /// <summary>Signs the visit as it is noted.</summary>
    /// <param name="by">Who; an orthodontist.</param>
    /// <param name="at">When.</param>
    /// <param name="patient">Whose visit it is, for the alerts of the day.</param>
    /// <param name="treatments">The arches that carry an appliance.</param>
    /// <exception cref="RuleBrokenException">Something needed is not noted; the message says what.</exception>
    public void Sign(Actor by, DateTimeOffset at, Patient patient, IReadOnlyCollection<ArchTreatment> treatments)
    {
        PracticeRules.OnlyAnOrthodontistSigns.Keep(
            by.Role == StaffRole.Orthodontist, $"{by.Name} may prepare the visit; an orthodontist signs it.");
        PracticeRules.ASignedVisitIsAmendedNeverChanged.Keep(
            State != VisitState.Signed, "This visit is signed already.");
        SigningChecks.All(Day, Content, patient, treatments);
        Signed = new Signature(by.Id, by.Name, at);
        State = VisitState.Signed;
    }

    /// <summary>Adds an entry to a signed visit.</summary>
    /// <exception cref="RuleBrokenException">The visit is not signed yet, or text or reason is missing.</exception>
    public void Amend(Actor by, DateTimeOffset at, string text, string why)
    {
        PracticeRules.ASignedVisitIsAmendedNeverChanged.Keep(
            State == VisitState.Signed, "This visit is not signed yet: write it into the visit itself.");
        PracticeRules.AnAmendmentSaysWhy.Keep(
            text.Trim().Length > 0 && why.Trim().Length > 0, "Say what is added or put right, and why.");
        Amendments = Amendments.With(new Amendment(by.Id, by.Name, at, text.Trim(), why.Trim()));
    }
}
