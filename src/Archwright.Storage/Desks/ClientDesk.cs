using Archwright.Practice.Audit;
using Archwright.Practice.Clients;
using Archwright.Practice.People;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>The programs that may ask the API. Making and taking back leave an audit line; every reading of a record
/// leaves one of its own.</summary>
/// <param name="contexts">Makes a context for each act.</param>
/// <param name="clock">The time.</param>
public sealed class ClientDesk(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    /// <summary>Makes a client.</summary>
    /// <returns>The client, and its token, which is told this once.</returns>
    /// <exception cref="Archwright.Practice.Rules.RuleBrokenException">Not an orthodontist, no name, no scope, or too
    /// long a life.</exception>
    public async Task<(ApiClient Client, string Token)> MakeAsync(
        string name, IEnumerable<ApiScope> scopes, int days, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        (ApiClient client, string token) = ApiClient.Make(name, scopes, days, by, now);
        db.Clients.Add(client);
        db.Trail.Add(AuditLine.Of(
            by, now, AuditAct.Added, null,
            $"token of {client.Name} until {client.ExpiresAt:yyyy-MM-dd}, for "
            + string.Join(", ", client.Scopes.Select(scope => scope.Word()))));
        await db.SaveChangesAsync(cancellation);
        return (client, token);
    }

    /// <summary>All clients, the newest first.</summary>
    public async Task<IReadOnlyList<ApiClient>> AllAsync(CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Clients.AsNoTracking().OrderByDescending(one => one.MadeAt).ToListAsync(cancellation);
    }

    /// <summary>Takes a token back: from the next request on it is refused.</summary>
    public async Task RevokeAsync(Guid id, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        ApiClient client = await db.Clients.SingleAsync(one => one.Id == id, cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        client.Revoke(now);
        db.Trail.Add(AuditLine.Of(by, now, AuditAct.Revoked, null, $"token of {client.Name}"));
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>The client whose token it is, noting the day of its use.</summary>
    /// <returns>Null for a token that was never made, has expired or was taken back: which of them is not told.
    /// </returns>
    public async Task<ApiClient?> OfTokenAsync(string token, CancellationToken cancellation = default)
    {
        string digest = ApiClient.DigestOf(token);
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        ApiClient? client = await db.Clients.FirstOrDefaultAsync(one => one.Digest == digest, cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        if (client?.HoldsAt(now) != true)
            return null;

        if (client.Used(DateOnly.FromDateTime(now.UtcDateTime)))
            await db.SaveChangesAsync(cancellation);
        return client;
    }
}
