using Archwright.Practice.People;

namespace Archwright.Practice.Audit;

/// <summary>What somebody did.</summary>
public enum AuditAct
{
    /// <summary>Looked at a patient.</summary>
    Read,

    /// <summary>Added something.</summary>
    Added,

    /// <summary>Changed something.</summary>
    Changed,

    /// <summary>Signed a visit.</summary>
    Signed,

    /// <summary>Amended a signed visit.</summary>
    Amended,

    /// <summary>Signed in.</summary>
    SignedIn,

    /// <summary>Failed to sign in.</summary>
    Refused,

    /// <summary>Released a leaflet.</summary>
    Released,

    /// <summary>Took a link back.</summary>
    Revoked,

    /// <summary>Took something out of the program, as on paper.</summary>
    Exported,

    /// <summary>Deleted a record by the practice's rule.</summary>
    Deleted,
}

/// <summary>One line of the trail: who did what, when, to whom. Only ever added.</summary>
public sealed class AuditLine
{
    private AuditLine()
    {
    }

    /// <summary>Identity; rises with time.</summary>
    public Guid Id { get; private set; }

    /// <summary>When.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>Account; null when nobody was signed in.</summary>
    public Guid? StaffId { get; private set; }

    /// <summary>Name of the account at the time.</summary>
    public string StaffName { get; private set; } = "";

    /// <summary>What.</summary>
    public AuditAct Act { get; private set; }

    /// <summary>Patient; null when no patient is concerned.</summary>
    public Guid? PatientId { get; private set; }

    /// <summary>Of what: "visit 2026-03-02".</summary>
    public string Subject { get; private set; } = "";

    /// <summary>A line.</summary>
    public static AuditLine Of(Actor? by, DateTimeOffset at, AuditAct act, Guid? patient, string subject) => new()
    {
        Id = Guid.CreateVersion7(at),
        At = at,
        StaffId = by?.Id,
        StaffName = by?.Name ?? "",
        Act = act,
        PatientId = patient,
        Subject = subject,
    };
}
