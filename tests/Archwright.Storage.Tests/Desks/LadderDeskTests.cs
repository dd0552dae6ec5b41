using Archwright.Practice.Audit;
using Archwright.Practice.Courses;
using Archwright.Practice.Ladders;
using Archwright.Practice.Tests;
using Archwright.Practice.Tests.Ladders;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Desks;

/// <summary>Ladders as they are kept. Rests on both databases.</summary>
[Trait("basis", "independent")]
public sealed class LadderDeskTests(PostgresServer server)
{
    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_ladder_comes_back_as_it_was_kept_the_newest_alone_and_with_a_line_for_each(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid patient, Guid treatment) = await MadeAsync(made);
        var desk = new LadderDesk(made.Database, made.Clock);
        KeptLadder first = KeptSamples.Ladder((await desk.BasisAsync(treatment))!);
        KeptLadder second = first with { Because = "Another day." };

        Assert.True(await desk.KeepAsync(treatment, first, Samples.Assistant));
        Assert.Equal(first, (await desk.OfAsync(patient))[treatment]);
        Assert.True(await desk.KeepAsync(treatment, second, Samples.Assistant));

        Assert.Equal(second, Assert.Single(await desk.OfAsync(patient)).Value);
        Assert.Equal(second, Assert.Single(await desk.OpenAsync("test-1", "0")).Ladder);
        Assert.Empty(await desk.OfAsync(Guid.CreateVersion7()));
        Assert.Equal(2, (await made.Files.TrailAsync(patient)).Count(
            line => line.Act == AuditAct.Changed && line.Subject == "upper ladder, computed"));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task It_rests_on_what_is_on_record_and_is_stale_once_that_changes(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Guid treatment) = await MadeAsync(made);
        var desk = new LadderDesk(made.Database, made.Clock);
        LadderBasis before = (await desk.BasisAsync(treatment))!;

        Assert.Equal((Samples.Today, "niti-014", true), (before.On, before.Inputs.PresentWire, before.WireStays));
        Assert.Equal(["niti-014"], before.Inputs.Stock);
        await made.Shelf.ReceiveAsync(Samples.Lot("niti-018"), Samples.Assistant);
        Assert.Equal([LadderChange.Stock], before.ChangesTo((await desk.BasisAsync(treatment))!));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Where_the_appliance_is_off_nothing_is_kept_and_nothing_is_told(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Guid treatment) = await MadeAsync(made);
        var desk = new LadderDesk(made.Database, made.Clock);
        KeptLadder ladder = KeptSamples.Ladder((await desk.BasisAsync(treatment))!);
        await desk.KeepAsync(treatment, ladder, Samples.Assistant);
        await made.Files.ChangeTreatmentAsync(treatment, one => one.Debond(Samples.Today), Samples.Assistant);

        Assert.Null(await desk.BasisAsync(treatment));
        Assert.False(await desk.KeepAsync(treatment, ladder, Samples.Assistant));
        Assert.Empty(await desk.OpenAsync("test-1", "0"));
    }

    private static async Task<(Guid Patient, Guid Treatment)> MadeAsync(TestDatabase made)
    {
        (Guid patient, _, _) = await made.ReadyToSignAsync();
        await using PracticeContext db = made.Database.CreateDbContext();
        ArchTreatment treatment = await db.Treatments.SingleAsync(one => one.PatientId == patient);
        return (patient, treatment.Id);
    }
}
