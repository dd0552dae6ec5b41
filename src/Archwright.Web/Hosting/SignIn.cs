using System.Security.Claims;
using Archwright.Practice.People;
using Archwright.Practice.Settings;
using Archwright.Storage.Model;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace Archwright.Web.Hosting;

/// <summary>Accounts, roles, lock-out and the end of a session.</summary>
internal static class SignIn
{
    /// <summary>Who may see the chair and the records: not the reception.</summary>
    public const string AtTheChair = "AtTheChair";

    /// <summary>Who may change settings and accounts: orthodontists.</summary>
    public const string OwnsThePractice = "OwnsThePractice";

    /// <summary>Wrong passwords after which an account rests.</summary>
    public const int MostFailures = 5;

    /// <summary>Minutes for which it rests.</summary>
    public const int RestMinutes = 10;

    public static void AddTo(IServiceCollection services)
    {
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddIdentityCookies();
        services.AddAuthorizationBuilder()
            .AddPolicy(AtTheChair, policy => policy.RequireRole(
                StaffRole.Orthodontist.Word(), StaffRole.Assistant.Word()))
            .AddPolicy(OwnsThePractice, policy => policy.RequireRole(StaffRole.Orthodontist.Word()));
        services.AddIdentityCore<StaffAccount>(options =>
            {
                options.Stores.SchemaVersion = IdentitySchemaVersions.Version3;
                options.Password.RequiredLength = 12;
                options.Password.RequireDigit = false;
                options.Password.RequireLowercase = false;
                options.Password.RequireUppercase = false;
                options.Password.RequireNonAlphanumeric = false;
                options.Lockout.MaxFailedAccessAttempts = MostFailures;
                options.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(RestMinutes);
            })
            .AddEntityFrameworkStores<PracticeContext>()
            .AddSignInManager()
            .AddClaimsPrincipalFactory<StaffClaims>();
        services.Configure<CookieAuthenticationOptions>(IdentityConstants.ApplicationScheme, options =>
        {
            options.Cookie.Name = "archwright";
            options.Cookie.SameSite = SameSiteMode.Strict;
            options.Events.OnSigningIn = SetEnd;
            options.SlidingExpiration = true;
            options.LoginPath = "/sign-in";
            options.AccessDeniedPath = "/not-allowed";
        });
    }

    // The length of a session is what is settled at the moment of signing in.
    private static Task SetEnd(CookieSigningInContext context)
    {
        PracticeSettings settled = context.HttpContext.RequestServices.GetRequiredService<PracticeSettings>();
        var clock = context.HttpContext.RequestServices.GetRequiredService<TimeProvider>();
        context.Properties.IssuedUtc = clock.GetUtcNow();
        context.Properties.ExpiresUtc = clock.GetUtcNow().AddMinutes(settled.SessionMinutes);
        return Task.CompletedTask;
    }
}

/// <summary>What a session knows of its account: identity, name as shown, role.</summary>
internal sealed class StaffClaims(UserManager<StaffAccount> users, IOptions<IdentityOptions> options)
    : UserClaimsPrincipalFactory<StaffAccount>(users, options)
{
    public const string ShownName = "shown_name";

    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(StaffAccount user)
    {
        ClaimsIdentity identity = await base.GenerateClaimsAsync(user);
        identity.AddClaim(new Claim(ShownName, user.Name));
        identity.AddClaim(new Claim(identity.RoleClaimType, user.Role.Word()));
        return identity;
    }
}
