using System.Security.Claims;
using Archwright.Storage.Model;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace Archwright.Web.Sessions;

/// <summary>Asks every few minutes whether the account behind an open screen still stands.</summary>
internal sealed class StaffStateProvider(
    ILoggerFactory loggers, IServiceScopeFactory scopes, IOptions<IdentityOptions> options)
    : RevalidatingServerAuthenticationStateProvider(loggers)
{
    protected override TimeSpan RevalidationInterval => TimeSpan.FromMinutes(5);

    protected override async Task<bool> ValidateAuthenticationStateAsync(
        AuthenticationState authenticationState, CancellationToken cancellationToken)
    {
        await using AsyncServiceScope scope = scopes.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<StaffAccount>>();
        StaffAccount? account = await users.GetUserAsync(authenticationState.User);
        return account is not null && await users.GetSecurityStampAsync(account)
            == authenticationState.User.FindFirstValue(options.Value.ClaimsIdentity.SecurityStampClaimType);
    }
}
