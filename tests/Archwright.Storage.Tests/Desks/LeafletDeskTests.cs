using Archwright.Practice.Audit;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Links;
using Archwright.Practice.Rules;
using Archwright.Practice.Tests;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Archwright.Storage.Tests.Desks;

/// <summary>Leaflets, links and the diary on both databases. Rests on what a private link must be.</summary>
[Trait("basis", "law")]
public sealed class LeafletDeskTests(PostgresServer server)
{
    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_released_leaflet_is_kept_as_it_was_and_leaves_a_line_in_the_trail(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var clock = new SetClock();
        (Visit visit, ReleasedLeaflet released) = await ReleasedAsync(made, clock);

        ReleasedLeaflet found = Assert.Single(await Desk(made, clock).OfVisitAsync(visit.Id));
        AuditLine line = Assert.Single(
            await made.Files.TrailAsync(visit.PatientId), one => one.Act == AuditAct.Released);

        Assert.Equal(released.Leaflet, found.Leaflet);
        Assert.Equal(released.Pictures, found.Pictures);
        Assert.Equal(Samples.Orthodontist.Name, found.ReleasedBy);
        Assert.Equal("leaflet of 2026-03-02 in Polish", line.Subject);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Nobody_but_an_orthodontist_releases_and_nothing_is_left_behind(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var clock = new SetClock();
        (Visit visit, ReleasedLeaflet released) = await ReleasedAsync(made, clock);

        await Assert.ThrowsAsync<RuleBrokenException>(() => Desk(made, clock).ReleaseAsync(
            visit.Id, released.Leaflet, LeafletPictures.None, Samples.Assistant));

        Assert.Single(await Desk(made, clock).OfVisitAsync(visit.Id));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_link_opens_its_leaflet_until_it_expires(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var clock = new SetClock();
        (_, ReleasedLeaflet released) = await ReleasedAsync(made, clock);
        var door = new PatientDoor(made.Database, clock);
        (_, string secret) = await Desk(made, clock).LinkAsync(released.Id, 30, Samples.Assistant);

        Assert.Equal(released.Leaflet, (await door.OpenAsync(secret))!.Leaflet);
        clock.Now = Samples.Now.AddDays(30).AddSeconds(-1);
        Assert.NotNull(await door.OpenAsync(secret));
        clock.Now = Samples.Now.AddDays(30);
        Assert.Null(await door.OpenAsync(secret));
        Assert.False(await door.NoteAsync(secret, Samples.Today.AddDays(30), 3));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_link_that_was_taken_back_and_one_that_was_guessed_open_nothing(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var clock = new SetClock();
        (Visit visit, ReleasedLeaflet released) = await ReleasedAsync(made, clock);
        var door = new PatientDoor(made.Database, clock);
        (PatientLink link, string secret) = await Desk(made, clock).LinkAsync(released.Id, 30, Samples.Assistant);
        (_, string other) = await Desk(made, clock).LinkAsync(released.Id, 30, Samples.Assistant);
        await Desk(made, clock).RevokeAsync(link.Id, Samples.Assistant);

        foreach (string guessed in new[]
                 {
                     secret, "", "x", secret.ToUpperInvariant(), link.Digest, link.Id.ToString(),
                     visit.Id.ToString(), released.Id.ToString(), other[..^1], other + "A", "' OR 1=1 --",
                 })
        {
            Assert.Null(await door.OpenAsync(guessed));
            Assert.False(await door.NoteAsync(guessed, Samples.Today, 3));
        }

        Assert.NotNull(await door.OpenAsync(other));
        Assert.Single(await made.Files.TrailAsync(visit.PatientId), one => one.Act == AuditAct.Revoked);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task What_the_patient_notes_reaches_the_practice_and_a_second_word_replaces_the_first(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var clock = new SetClock();
        (Visit visit, ReleasedLeaflet released) = await ReleasedAsync(made, clock);
        var door = new PatientDoor(made.Database, clock);
        (_, string secret) = await Desk(made, clock).LinkAsync(released.Id, 30, Samples.Assistant);

        Assert.True(await door.NoteAsync(secret, Samples.Today, 6));
        Assert.True(await door.NoteAsync(secret, Samples.Today, 4));
        clock.Now = Samples.Now.AddDays(1);
        Assert.True(await door.NoteAsync(secret, Samples.Today.AddDays(1), 2));
        await Assert.ThrowsAsync<RuleBrokenException>(() => door.NoteAsync(secret, Samples.Today.AddDays(1), 11));

        IReadOnlyList<DiscomfortDay> diary = await Desk(made, clock).DiaryAsync(visit.PatientId, visit.Day);
        Assert.Equal([(Samples.Today, 4), (Samples.Today.AddDays(1), 2)], diary.Select(day => (day.Day, day.Score)));
        Assert.Equal(2, (await door.OpenAsync(secret))!.Diary.Count);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Two_first_notes_of_a_day_at_the_same_instant_are_both_taken_and_the_later_one_stands(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var clock = new SetClock();
        (Visit visit, ReleasedLeaflet released) = await ReleasedAsync(made, clock);
        (_, string secret) = await Desk(made, clock).LinkAsync(released.Id, 30, Samples.Assistant);
        var first = new PatientDoor(made.Database, clock);
        var between = new Between(() => first.NoteAsync(secret, Samples.Today, 3));
        var second = new PatientDoor(made.WithInterceptor(between), clock);

        Assert.True(await second.NoteAsync(secret, Samples.Today, 8));

        Assert.Equal(1, between.Times);
        DiscomfortDay noted = Assert.Single(await Desk(made, clock).DiaryAsync(visit.PatientId, visit.Day));
        Assert.Equal(8, noted.Score);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Many_notes_of_a_day_at_once_leave_one(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var clock = new SetClock();
        (Visit visit, ReleasedLeaflet released) = await ReleasedAsync(made, clock);
        (_, string secret) = await Desk(made, clock).LinkAsync(released.Id, 30, Samples.Assistant);

        bool[] taken = await Task.WhenAll(Enumerable.Range(0, 3).Select(score => Task.Run(
            () => new PatientDoor(made.Database, clock).NoteAsync(secret, Samples.Today, score))));

        Assert.All(taken, Assert.True);
        Assert.Single(await Desk(made, clock).DiaryAsync(visit.PatientId, visit.Day));
    }

    private static LeafletDesk Desk(TestDatabase made, TimeProvider clock) => new(made.Database, clock);

    private static async Task<(Visit Visit, ReleasedLeaflet Leaflet)> ReleasedAsync(
        TestDatabase made, TimeProvider clock)
    {
        (_, Visit visit, _) = await made.ReadyToSignAsync();
        (Visit signed, _) = await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
        Leaflet leaflet = LeafletWriter.Write(signed, LeafletTexts.In("pl"), "Fernhollow")!; // a wire was fitted
        var pictures = new LeafletPictures(Listing<ArchPictures>.Of(
        [
            new ArchPictures
            {
                IsUpper = true, Before = "niti-014", Now = "niti-016", SlotCode = "022",
                Window = Listing<double>.Of([-1.5, 0, 3, 4]),
                Weeks = Listing<WeekPicture>.Of([new WeekPicture(0, Listing<string>.Of(["M0 0Z"]), "M0 0")]),
            },
        ]));
        return (signed, await Desk(made, clock).ReleaseAsync(signed.Id, leaflet, pictures, Samples.Orthodontist));
    }

    private sealed class SetClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = Samples.Now;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => Now;
    }

    // Lets somebody else in between a look and the first word after it.
    private sealed class Between(Func<Task> other) : SaveChangesInterceptor
    {
        public int Times { get; private set; }

        public override async ValueTask<InterceptionResult<int>> SavingChangesAsync(
            DbContextEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
        {
            if (Times == 0)
            {
                Times++;
                await other();
            }

            return result;
        }
    }
}
