using Archwright.Practice.Tests;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Model;

/// <summary>The database itself refuses to change what is signed, whatever program asks. Rests on both servers.
/// </summary>
[Trait("basis", "independent")]
public sealed class GuardsTests(PostgresServer server)
{
    public static TheoryData<string, string> Attacks
    {
        get
        {
            TheoryData<string, string> attacks = [];
            foreach (string kind in TestDatabase.Kinds)
            {
                attacks.Add(kind, "UPDATE \"Visits\" SET \"Content\" = '{}'");
                attacks.Add(kind, "UPDATE \"Visits\" SET \"Signed\" = NULL");
                attacks.Add(kind, "UPDATE \"Visits\" SET \"State\" = 'Begun' WHERE \"Signed\" IS NOT NULL");
                attacks.Add(kind, "UPDATE \"Visits\" SET \"Day\" = '2020-01-01'");
                attacks.Add(kind, "UPDATE \"Visits\" SET \"Amendments\" = '[]'");
                attacks.Add(kind, "DELETE FROM \"Visits\" WHERE \"Signed\" IS NOT NULL");
                attacks.Add(kind, "UPDATE \"Trail\" SET \"Subject\" = ''");
                attacks.Add(kind, "DELETE FROM \"Trail\"");
            }

            return attacks;
        }
    }

    [Theory, MemberData(nameof(Attacks))]
    public async Task What_is_signed_withstands(string kind, string attack)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Visit visit, _) = await made.ReadyToSignAsync();
        await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
        await made.Desk.AmendAsync(visit.Id, "More.", "Forgotten.", Samples.Assistant);
        await using PracticeContext db = made.Database.CreateDbContext();

        Exception refused = await Assert.ThrowsAnyAsync<Exception>(() => db.Database.ExecuteSqlRawAsync(
            attack.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal)));

        Assert.Matches("never changed|only ever added", refused.Message);
    }

    [Theory]
    [InlineData("sqlite")]
    [InlineData("postgres")]
    public async Task A_visit_that_is_not_signed_may_be_changed_and_struck(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        await made.ReadyToSignAsync();
        await using PracticeContext db = made.Database.CreateDbContext();

        Assert.Equal(1, await db.Database.ExecuteSqlRawAsync("UPDATE \"Visits\" SET \"Minutes\" = 30"));
        Assert.Equal(1, await db.Database.ExecuteSqlRawAsync("DELETE FROM \"Visits\""));
    }
}
