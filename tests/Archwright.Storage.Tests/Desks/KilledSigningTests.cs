using System.Diagnostics;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Desks;

/// <summary>A signing program is killed (SIGKILL) in the middle: afterwards the visit is signed whole or not at all.
/// Rests on a real process, killed at three places of the transaction, on both databases.</summary>
[Trait("basis", "independent")]
public sealed class KilledSigningTests(PostgresServer server)
{
    [Theory]
    [InlineData("sqlite", "after-a-write", false)]
    [InlineData("sqlite", "before-commit", false)]
    [InlineData("sqlite", "after-commit", true)]
    [InlineData("postgres", "after-a-write", false)]
    [InlineData("postgres", "before-commit", false)]
    [InlineData("postgres", "after-commit", true)]
    public async Task A_visit_is_signed_whole_or_not_at_all(string kind, string place, bool signed)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Visit visit, Guid lot) = await made.ReadyToSignAsync();

        using (Process signer = Start(made, visit, place))
        {
            Assert.Equal("here", await signer.StandardOutput.ReadLineAsync());
            signer.Kill();
            await signer.WaitForExitAsync();
        }

        await made.Database.MigrateAsync(); // as a restart does
        Assert.Equal(signed, await IsSignedWhole(made, visit, lot));
    }

    [Theory]
    [InlineData("sqlite")]
    [InlineData("postgres")]
    public async Task The_signer_that_is_not_killed_signs(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Visit visit, Guid lot) = await made.ReadyToSignAsync();

        using Process signer = Start(made, visit, "nowhere");

        Assert.Equal("signed", await signer.StandardOutput.ReadLineAsync());
        await signer.WaitForExitAsync();
        Assert.True(await IsSignedWhole(made, visit, lot));
    }

    // True when signature, piece, movement, next visit and audit lines are all there; false when none is.
    private static async Task<bool> IsSignedWhole(TestDatabase made, Visit visit, Guid lot)
    {
        await using PracticeContext db = made.Database.CreateDbContext();
        bool[] parts =
        [
            (await db.Visits.SingleAsync(one => one.Id == visit.Id)).State == VisitState.Signed,
            (await db.Lots.SingleAsync(one => one.Id == lot)).OnHand == 2,
            await db.Movements.AnyAsync(one => one.VisitId == visit.Id),
            await db.Visits.AnyAsync(one => one.Id != visit.Id),
            await db.Trail.AnyAsync(),
        ];
        Assert.Single(parts.Distinct());
        return parts[0];
    }

    private static Process Start(TestDatabase made, Visit visit, string place) =>
        Process.Start(new ProcessStartInfo(
            "dotnet",
            [
                Path.Combine(AppContext.BaseDirectory, "Archwright.Storage.Signer.dll"),
                made.Kind, made.Connection, visit.Id.ToString(), visit.Revision.ToString(), place,
            ])
        {
            RedirectStandardOutput = true, UseShellExecute = false,
        })!; // null only when a running process is reused
}
