using Archwright.Practice.Audit;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Tests;
using Archwright.Practice.Values;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Desks;

/// <summary>The practice's own words on both databases. Rests on what was given.</summary>
[Trait("basis", "law")]
public sealed class TextDeskTests(PostgresServer server)
{
    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task Words_are_kept_changed_and_given_back_and_each_time_the_trail_says_so(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var desk = new TextDesk(made.Database, TimeProvider.System);

        Assert.True((await desk.KeepAsync(new OwnText("en", "eat.text", " Soup. "), Samples.Orthodontist)).IsGood);
        await desk.KeepAsync(new OwnText("en", "eat.text", "Soup and rice."), Samples.Orthodontist);
        await desk.KeepAsync(new OwnText("ar", "eat.text", "حساء."), Samples.Orthodontist);

        Assert.Equal(
            Listing<OwnText>.Of(
                [new OwnText("ar", "eat.text", "حساء."), new OwnText("en", "eat.text", "Soup and rice.")]),
            await desk.OwnAsync());
        Assert.All(await desk.KeptAsync(), one => Assert.Equal(Samples.Orthodontist.Name, one.ChangedBy));
        await desk.GoBackAsync("en", "eat.text", Samples.Orthodontist);
        await desk.GoBackAsync("en", "eat.text", Samples.Orthodontist);

        Assert.Equal(["ar"], (await desk.OwnAsync()).Select(one => one.Language));
        Assert.Equal(
            [
                "text eat.text in Arabic", "text eat.text in English", "text eat.text in English",
                "text eat.text in English, back to ours",
            ],
            await TrailAsync(made));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Words_with_a_fault_are_not_kept_and_a_caution_stands_in_the_trail(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var desk = new TextDesk(made.Database, TimeProvider.System);

        Assert.False((await desk.KeepAsync(new OwnText("en", "foot", "No places."), Samples.Orthodontist)).IsGood);
        Assert.False((await desk.KeepAsync(new OwnText("en", "no.such", "x"), Samples.Orthodontist)).IsGood);
        Assert.Empty(await desk.OwnAsync());
        Assert.Empty(await TrailAsync(made));

        OwnTextCheck check = await desk.KeepAsync(
            new OwnText("en", "feel.relief", "Take 2 tablets."), Samples.Orthodontist);

        Assert.NotEmpty(check.Cautions);
        Assert.Equal(["text feel.relief in English, with a caution shown"], await TrailAsync(made));
    }

    [Fact]
    public async Task Settings_of_before_that_named_a_place_for_texts_are_still_read()
    {
        foreach (string kind in TestDatabase.Kinds)
        {
            using TestDatabase made = await TestDatabase.MakeAsync(kind, server, migrateTo: "Leaflets");
            await using (PracticeContext db = made.Database.CreateDbContext())
            {
                const string Old = """{"name":"Before","leaflet_texts":[]}""";
                await db.Database.ExecuteSqlRawAsync(
                    """INSERT INTO "Settings" ("Id", "Settings", "Revision") VALUES (1, {0}, {1})""",
                    Old, Guid.NewGuid());
            }

            await made.Database.MigrateAsync();

            Assert.Equal("Before", (await made.Database.SettingsAsync()).Name);
        }
    }

    private static async Task<IReadOnlyList<string>> TrailAsync(TestDatabase made)
    {
        await using PracticeContext db = made.Database.CreateDbContext();
        return await db.Trail.AsNoTracking().Where(line => line.Act == AuditAct.Changed)
            .Select(line => line.Subject).Where(subject => subject.StartsWith("text "))
            .OrderBy(subject => subject).ToListAsync();
    }
}
