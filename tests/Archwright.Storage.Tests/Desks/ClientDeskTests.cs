using Archwright.Practice.Audit;
using Archwright.Practice.Clients;
using Archwright.Practice.Tests;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Desks;

/// <summary>Tokens of other programs, kept and refused. Rests on both databases.</summary>
[Trait("basis", "independent")]
public sealed class ClientDeskTests(PostgresServer server)
{
    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_token_opens_until_it_is_taken_back_and_both_stand_in_the_trail(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var desk = new ClientDesk(made.Database, made.Clock);

        (ApiClient client, string token) = await desk.MakeAsync(
            "Lab", [ApiScope.Compute, ApiScope.Visits], 30, Samples.Orthodontist);
        ApiClient? known = await desk.OfTokenAsync(token);
        await desk.RevokeAsync(client.Id, Samples.Orthodontist);

        Assert.Equal([ApiScope.Compute, ApiScope.Visits], known?.Scopes);
        Assert.Null(await desk.OfTokenAsync(token));
        Assert.Null(await desk.OfTokenAsync("awt_something-else"));
        Assert.NotNull(Assert.Single(await desk.AllAsync()).LastUsedOn);
        await using PracticeContext db = made.Database.CreateDbContext();
        Assert.Equal(
            [(AuditAct.Added, true), (AuditAct.Revoked, true)],
            (await db.Trail.AsNoTracking().ToListAsync()).OrderBy(line => line.At)
                .Select(line => (line.Act, line.Subject.Contains("Lab", StringComparison.Ordinal))));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task The_token_itself_stands_nowhere_in_the_records(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var desk = new ClientDesk(made.Database, made.Clock);
        (_, string token) = await desk.MakeAsync("Lab", [ApiScope.Compute], 30, Samples.Orthodontist);
        await using PracticeContext db = made.Database.CreateDbContext();

        Assert.DoesNotContain(
            await db.Clients.ToListAsync(), one => one.Digest.Contains(token[4..], StringComparison.Ordinal));
        Assert.DoesNotContain(
            await db.Trail.ToListAsync(), one => one.Subject.Contains(token[4..], StringComparison.Ordinal));
    }
}
