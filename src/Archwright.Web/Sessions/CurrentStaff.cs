using System.Security.Claims;
using Archwright.Practice.People;
using Archwright.Web.Hosting;
using Microsoft.AspNetCore.Components.Authorization;

namespace Archwright.Web.Sessions;

/// <summary>Who is signed in on this screen.</summary>
/// <param name="states">What the session says.</param>
public sealed class CurrentStaff(AuthenticationStateProvider states)
{
    /// <summary>The person as signatures and audit lines name them.</summary>
    /// <exception cref="InvalidOperationException">Nobody is signed in: the page should have asked.</exception>
    public async Task<Actor> ActorAsync() =>
        Of((await states.GetAuthenticationStateAsync()).User)
        ?? throw new InvalidOperationException("Nobody is signed in.");

    /// <summary>The person of a session; null when nobody is signed in.</summary>
    public static Actor? Of(ClaimsPrincipal user)
    {
        if (!Guid.TryParse(user.FindFirstValue(ClaimTypes.NameIdentifier), out Guid id))
            return null;

        string word = user.FindFirstValue(ClaimTypes.Role) ?? "";
        StaffRole role = StaffRoles.All.First(one => one.Word() == word);
        return new Actor(id, user.FindFirstValue(StaffClaims.ShownName) ?? "", role);
    }
}
