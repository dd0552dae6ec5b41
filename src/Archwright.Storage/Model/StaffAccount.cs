using Archwright.Practice.People;
using Microsoft.AspNetCore.Identity;

namespace Archwright.Storage.Model;

/// <summary>A sign-in of somebody of the practice. The user name is what is typed; the name is what is shown.</summary>
public sealed class StaffAccount : IdentityUser<Guid>
{
    /// <summary>Name as shown and signed.</summary>
    public string Name { get; set; } = "";

    /// <summary>What this person may do.</summary>
    public StaffRole Role { get; set; }

    /// <summary>The person as signatures and audit lines name them.</summary>
    public Actor ToActor() => new(Id, Name, Role);
}
