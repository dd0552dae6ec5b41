namespace Archwright.Practice.People;

/// <summary>What somebody may do in the practice.</summary>
public enum StaffRole
{
    /// <summary>Decides and signs.</summary>
    Orthodontist,

    /// <summary>Prepares visits, notes what is seen, keeps the stock; signs nothing.</summary>
    Assistant,

    /// <summary>Keeps the diary; does not see the chair.</summary>
    Reception,
}

/// <summary>Somebody of the practice who does something: stands in signatures, amendments and audit lines.</summary>
/// <param name="Id">Identity of the account.</param>
/// <param name="Name">As shown.</param>
/// <param name="Role">At the time of the act.</param>
public sealed record Actor(Guid Id, string Name, StaffRole Role);

/// <summary>Words of the roles.</summary>
public static class StaffRoles
{
    /// <summary>All roles.</summary>
    public static IReadOnlyList<StaffRole> All { get; } = Enum.GetValues<StaffRole>();

    /// <summary>As people say it: "orthodontist".</summary>
    public static string Word(this StaffRole role) => role switch
    {
        StaffRole.Orthodontist => "orthodontist",
        StaffRole.Assistant => "assistant",
        StaffRole.Reception => "reception",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "No such role."),
    };
}
