using System.Security.Cryptography;
using System.Text;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>Which policy and which ceilings the program judged by, and since when. Only ever added to.</summary>
/// <param name="contexts">Makes a context for each act.</param>
/// <param name="clock">The time.</param>
public sealed class PolicyHistory(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    /// <summary>Notes what is in force, unless it was the last already.</summary>
    /// <param name="kind">"policy" or "ceilings".</param>
    /// <param name="version">Its name.</param>
    /// <param name="text">The whole of it, kept with its digest.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task NoteAsync(
        string kind, string version, string text, CancellationToken cancellation = default)
    {
        string digest = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        PolicyInForce? last = (await db.PoliciesInForce.AsNoTracking().Where(one => one.Kind == kind)
            .ToListAsync(cancellation)).MaxBy(one => one.Since);
        if (last is not null && last.Version == version && last.Digest == digest)
            return;

        db.PoliciesInForce.Add(new PolicyInForce
        {
            Kind = kind, Version = version, Digest = digest, Text = text, Since = clock.GetUtcNow(),
        });
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>All of it, the newest first.</summary>
    public async Task<IReadOnlyList<PolicyInForce>> AllAsync(CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return [.. (await db.PoliciesInForce.AsNoTracking().ToListAsync(cancellation))
            .OrderByDescending(one => one.Since).ThenBy(one => one.Kind, StringComparer.Ordinal)];
    }
}
