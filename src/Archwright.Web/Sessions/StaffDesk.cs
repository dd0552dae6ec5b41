using Archwright.Practice.Audit;
using Archwright.Practice.People;
using Archwright.Storage.Model;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Archwright.Web.Sessions;

/// <summary>An account as the list shows it.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Name">As shown and signed.</param>
/// <param name="UserName">What is typed.</param>
/// <param name="Role">What they may do.</param>
/// <param name="Passkeys">How many are added.</param>
/// <param name="Rests">True after too many wrong passwords.</param>
/// <param name="IsClosed">True when it opens no door any more.</param>
public sealed record StaffLine(
    Guid Id, string Name, string UserName, StaffRole Role, int Passkeys, bool Rests, bool IsClosed);

/// <summary>The accounts of the practice. Each act has a scope of its own: a screen lives longer than a context
/// may.</summary>
/// <param name="scopes">Makes the scopes.</param>
/// <param name="clock">The time of audit lines.</param>
public sealed class StaffDesk(IServiceScopeFactory scopes, TimeProvider clock)
{
    /// <summary>All accounts, by name.</summary>
    public async Task<IReadOnlyList<StaffLine>> AllAsync()
    {
        await using AsyncServiceScope scope = scopes.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<StaffAccount>>();
        List<StaffLine> lines = [];
        foreach (StaffAccount one in await users.Users.OrderBy(one => one.Name).ToListAsync())
        {
            bool closed = one.LockoutEnd == DateTimeOffset.MaxValue;
            lines.Add(new StaffLine(
                one.Id, one.Name, one.UserName ?? "", one.Role, (await users.GetPasskeysAsync(one)).Count,
                !closed && one.LockoutEnd > clock.GetUtcNow(), closed));
        }

        return lines;
    }

    /// <summary>Makes an account.</summary>
    /// <returns>Why it cannot be; null when it is made.</returns>
    public async Task<string?> AddAsync(string name, string userName, string password, StaffRole role, Actor by)
    {
        if (name.Trim().Length == 0)
            return "Give the name as it is to stand under a signature.";

        await using AsyncServiceScope scope = scopes.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<StaffAccount>>();
        var account = new StaffAccount
        {
            Id = Guid.CreateVersion7(), UserName = userName.Trim(), Name = name.Trim(), Role = role,
        };
        IdentityResult made = await users.CreateAsync(account, password);
        if (!made.Succeeded)
            return string.Join(" ", made.Errors.Select(one => one.Description));

        await NoteAsync(scope, by, AuditAct.Added, $"account of {account.Name}, {role.Word()}");
        return null;
    }

    /// <summary>Closes an account, or opens it again. Screens that it has open end at their next check.</summary>
    public async Task CloseAsync(Guid id, bool closed, Actor by)
    {
        await using AsyncServiceScope scope = scopes.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<StaffAccount>>();
        StaffAccount account = await users.Users.SingleAsync(one => one.Id == id);
        await users.SetLockoutEnabledAsync(account, true);
        await users.SetLockoutEndDateAsync(account, closed ? DateTimeOffset.MaxValue : null);
        await users.UpdateSecurityStampAsync(account);
        await NoteAsync(
            scope, by, AuditAct.Changed, $"account of {account.Name} {(closed ? "closed" : "opened")}");
    }

    private async Task NoteAsync(AsyncServiceScope scope, Actor by, AuditAct act, string subject)
    {
        var db = scope.ServiceProvider.GetRequiredService<PracticeContext>();
        db.Trail.Add(AuditLine.Of(by, clock.GetUtcNow(), act, null, subject));
        await db.SaveChangesAsync();
    }
}
