using Archwright.Dentition.Teeth;
using Archwright.Practice.Audit;
using Archwright.Practice.People;
using Archwright.Practice.Tests;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Tests.Desks;

/// <summary>The queries of the screens on both databases. Rests on what was put in.</summary>
[Trait("basis", "law")]
public sealed class PatientFilesTests(PostgresServer server)
{
    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task Opening_and_changing_a_patient_leave_lines_in_the_trail(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid id, Visit visit, _) = await made.ReadyToSignAsync();

        PatientFile file = (await made.Files.OpenAsync(id, Samples.Assistant))!;
        await made.Files.ChangeAsync(
            id, one => one.Raise(AlertKind.Nickel, "Rash.", Samples.Today), "alert", Samples.Orthodontist);

        Assert.Equal(visit.Id, Assert.Single(file.Visits).Id);
        Assert.Equal(Samples.HighCanine, Assert.Single(file.Treatments).StartedFrom);
        Assert.Equal(
            [AuditAct.Changed, AuditAct.Read], (await made.Files.TrailAsync(id)).Select(line => line.Act));
        Assert.Single((await made.Files.OpenAsync(id, Samples.Assistant))!.Patient.Alerts);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_stranger_is_not_found(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);

        Assert.Null(await made.Files.OpenAsync(Guid.NewGuid(), Samples.Assistant));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_search_finds_parts_of_names_in_any_order_without_accents(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        await made.ReadyToSignAsync();

        foreach (string typed in new[] { "mira", "OSTBY", "kahn mira", "Øst" })
            Assert.Equal("Mira Østby-Kahn", Assert.Single(await made.Files.SearchAsync(typed)).FullName);
        Assert.Empty(await made.Files.SearchAsync("mira smith"));
        Assert.Empty(await made.Files.SearchAsync(" "));
        Assert.Empty(await made.Files.SearchAsync("%"));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_day_shows_who_comes_with_the_wires_found_and_those_left_by_the_last_signed_visit(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid id, Visit visit, _) = await made.ReadyToSignAsync();
        (_, Visit next) = await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
        Diary diary = made.Diary;

        DayEntry entry = Assert.Single(await diary.DayAsync(next.Day));
        DayEntry before = Assert.Single(await diary.DayAsync(visit.Day));

        Assert.Equal((id, next.Id), (entry.Patient.Id, entry.Visit.Id));
        Assert.Equal(new DayArch(Jaw.Upper, null, "niti-014"), Assert.Single(entry.Arches));
        Assert.Equal(
            new DayArch(Jaw.Upper, visit.Content.Upper!.Found, ""), Assert.Single(before.Arches));
        Assert.Equal(next.Day, await diary.NextBusyDayAsync(visit.Day.AddDays(1)));
        Assert.Null(await diary.NextBusyDayAsync(next.Day.AddDays(1)));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task The_wires_of_a_day_follow_each_change_of_what_is_noted(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, Visit visit, _) = await made.ReadyToSignAsync();
        var ours = new WireFound("our \"own\" wire, ø 0.4|2", Samples.Today.AddDays(-7));
        VisitContent changed = visit.Content with { Upper = visit.Content.Upper! with { Found = ours } };

        VisitSaved saved = await made.Desk.NoteAsync(
            new VisitEdit(visit.Id, visit.Revision, visit.Content, changed), Samples.Assistant);
        DayArch noted = Assert.Single(Assert.Single(await made.Diary.DayAsync(visit.Day)).Arches);
        await made.Desk.NoteAsync(
            new VisitEdit(
                visit.Id, saved.Visit.Revision, changed, changed with { Upper = null }),
            Samples.Assistant);
        DayArch empty = Assert.Single(Assert.Single(await made.Diary.DayAsync(visit.Day)).Arches);

        Assert.Equal(new DayArch(Jaw.Upper, ours, ""), noted);
        Assert.Equal(new DayArch(Jaw.Upper, null, ""), empty);
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task The_course_up_to_a_visit_begins_at_the_last_one_that_was_signed(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid id, Visit visit, _) = await made.ReadyToSignAsync();
        (_, Visit next) = await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);

        VisitCourse course = (await made.Diary.CourseAsync(next.Id))!;

        Assert.Equal((id, next.Id, visit.Id), (course.Patient.Id, course.Visit.Id, course.LastSigned!.Id));
        Assert.Equal(visit.Content, course.LastSigned.Content);
        Assert.Equal(Jaw.Upper, Assert.Single(course.Treatments).Jaw);
        Assert.Null((await made.Diary.CourseAsync(visit.Id))!.LastSigned);
        Assert.Null(await made.Diary.CourseAsync(Guid.NewGuid()));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task The_shelf_offers_what_fits_the_arch(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (_, _, Guid lot) = await made.ReadyToSignAsync();
        Shelf shelf = made.Shelf;

        Assert.Equal(lot, Assert.Single(await shelf.ForAsync(Jaw.Upper, Samples.Today)).Id);
        Assert.Empty(await shelf.ForAsync(Jaw.Lower, Samples.Today));
    }

    [Theory, MemberData(nameof(Kinds))]
    public async Task Two_who_change_one_patient_at_once_are_told_apart(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid id, _, _) = await made.ReadyToSignAsync();

        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => made.Files.ChangeAsync(
            id,
            one =>
            {
                one.Raise(AlertKind.Other, "Mine.", Samples.Today);
                made.Files.ChangeAsync(
                    id, other => other.Raise(AlertKind.Other, "Theirs.", Samples.Today), "alert", Samples.Assistant)
                    .GetAwaiter().GetResult();
            },
            "alert",
            Samples.Orthodontist));
    }
}
