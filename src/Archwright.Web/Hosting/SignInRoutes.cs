using Archwright.Practice.Audit;
using Archwright.Practice.People;
using Archwright.Storage.Model;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using IdentityResult = Microsoft.AspNetCore.Identity.SignInResult;

namespace Archwright.Web.Hosting;

/// <summary>What the forms of the sign-in pages post to. All forms carry a token against forgery.</summary>
internal static class SignInRoutes
{
    private const string Home = "/";

    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder account = routes.MapGroup("/account").AllowAnonymous();
        account.MapPost("/sign-in", PasswordAsync);
        account.MapPost("/sign-out", SignOutAsync);
        account.MapPost("/first", FirstAsync);
        account.MapPost("/passkey/ask", AskPasskeyAsync);
        account.MapPost("/passkey/sign-in", PasskeyAsync);
        account.MapPost("/passkey/offer", OfferPasskeyAsync).RequireAuthorization();
        account.MapPost("/passkey/add", AddPasskeyAsync).RequireAuthorization();
    }

    private static async Task<IResult> PasswordAsync(
        [FromForm] string user, [FromForm] string password, [FromForm] string? to,
        SignInManager<StaffAccount> signIn, PracticeContext db, TimeProvider clock)
    {
        IdentityResult result = await signIn.PasswordSignInAsync(user, password, false, lockoutOnFailure: true);
        StaffAccount? account = await signIn.UserManager.FindByNameAsync(user);
        await NoteAsync(db, clock, account, result.Succeeded, "password");
        return result.Succeeded ? Results.LocalRedirect(Local(to))
            : Results.LocalRedirect(result.IsLockedOut ? "/sign-in?told=rest" : "/sign-in?told=wrong");
    }

    private static async Task<IResult> SignOutAsync(SignInManager<StaffAccount> signIn, [FromForm] string? told)
    {
        await signIn.SignOutAsync();
        return Results.LocalRedirect(told == "idle" ? "/sign-in?told=idle" : "/sign-in");
    }

    // The first account of a new practice: whoever starts the program owns it. Afterwards this does nothing.
    private static async Task<IResult> FirstAsync(
        [FromForm] string name, [FromForm] string user, [FromForm] string password,
        SignInManager<StaffAccount> signIn, PracticeContext db, TimeProvider clock)
    {
        if (await db.Users.AnyAsync())
            return Results.LocalRedirect("/sign-in");

        var account = new StaffAccount
        {
            Id = Guid.CreateVersion7(), UserName = user.Trim(), Name = name.Trim(), Role = StaffRole.Orthodontist,
        };
        if (account.Name.Length == 0
            || !(await signIn.UserManager.CreateAsync(account, password)).Succeeded)
        {
            return Results.LocalRedirect("/first-account?told=wrong");
        }

        await NoteAsync(db, clock, account, succeeded: true, "first account");
        await signIn.SignInAsync(account, isPersistent: false);
        return Results.LocalRedirect(Home);
    }

    private static async Task<IResult> AskPasskeyAsync([FromForm] string? user, SignInManager<StaffAccount> signIn)
    {
        StaffAccount? account = string.IsNullOrWhiteSpace(user) ? null
            : await signIn.UserManager.FindByNameAsync(user);
        return Results.Content(await signIn.MakePasskeyRequestOptionsAsync(account), "application/json");
    }

    private static async Task<IResult> PasskeyAsync(
        [FromForm] string credential, SignInManager<StaffAccount> signIn, PracticeContext db, TimeProvider clock)
    {
        PasskeyAssertionResult<StaffAccount> assertion = await signIn.PerformPasskeyAssertionAsync(credential);
        if (!assertion.Succeeded || await signIn.UserManager.IsLockedOutAsync(assertion.User))
        {
            await NoteAsync(db, clock, assertion.User, succeeded: false, "passkey");
            return Results.Text("/sign-in?told=passkey");
        }

        await signIn.UserManager.AddOrUpdatePasskeyAsync(assertion.User, assertion.Passkey);
        await signIn.SignInAsync(assertion.User, isPersistent: false);
        await NoteAsync(db, clock, assertion.User, succeeded: true, "passkey");
        return Results.Text(Home);
    }

    private static async Task<IResult> OfferPasskeyAsync(HttpContext context, SignInManager<StaffAccount> signIn)
    {
        if (await signIn.UserManager.GetUserAsync(context.User) is not { } account)
            return Results.Unauthorized();

        string options = await signIn.MakePasskeyCreationOptionsAsync(new PasskeyUserEntity
        {
            Id = account.Id.ToString(), Name = account.UserName ?? account.Name, DisplayName = account.Name,
        });
        return Results.Content(options, "application/json");
    }

    private static async Task<IResult> AddPasskeyAsync(
        [FromForm] string credential, HttpContext context, SignInManager<StaffAccount> signIn)
    {
        PasskeyAttestationResult attestation = await signIn.PerformPasskeyAttestationAsync(credential);
        if (!attestation.Succeeded || await signIn.UserManager.GetUserAsync(context.User) is not { } account)
            return Results.Text("/account?told=wrong");

        await signIn.UserManager.AddOrUpdatePasskeyAsync(account, attestation.Passkey);
        return Results.Text("/account?told=added");
    }

    private static async Task NoteAsync(
        PracticeContext db, TimeProvider clock, StaffAccount? account, bool succeeded, string how)
    {
        db.Trail.Add(AuditLine.Of(
            account?.ToActor(), clock.GetUtcNow(), succeeded ? AuditAct.SignedIn : AuditAct.Refused, null, how));
        await db.SaveChangesAsync();
    }

    private static string Local(string? to) =>
        to is ['/', not '/' and not '\\', ..] ? to : Home;
}
