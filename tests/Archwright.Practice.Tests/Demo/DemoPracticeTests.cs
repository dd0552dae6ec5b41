using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
using Archwright.Practice.Courses;
using Archwright.Practice.Demo;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Tests.Demo;

/// <summary>The invented practice. Rests on its file and on the program's own forecast.</summary>
[Trait("basis", "law")]
public sealed class DemoPracticeTests
{
    private static readonly Lazy<DemoPractice> Made = new(() => DemoPractice.Make(Samples.Today));

    [Fact]
    public void Everybody_in_it_is_marked_as_invented() =>
        Assert.All(Made.Value.Patients, one => Assert.True(one.IsInvented));

    [Fact]
    public void Twelve_patients_come_on_the_day_on_which_it_is_opened()
    {
        Assert.Equal(12, Made.Value.Patients.Count);
        Assert.Equal(
            Made.Value.Patients.Select(one => one.Id).Order(),
            Made.Value.Visits.Where(visit => visit.Day == Samples.Today).Select(visit => visit.PatientId).Order());
    }

    [Fact]
    public void Past_visits_are_signed_and_those_of_the_day_are_not() => Assert.All(
        Made.Value.Visits,
        visit => Assert.Equal(visit.Day < Samples.Today, visit.State == VisitState.Signed));

    [Fact]
    public void Every_role_has_a_sign_in() => Assert.Equal(
        Archwright.Practice.People.StaffRoles.All,
        Made.Value.Staff.Select(one => one.Role).Distinct().Order());

    [Fact]
    public void Alerts_that_change_the_advice_are_read_as_such() => Assert.Equal(
        4,
        Made.Value.Patients.SelectMany(one => one.Alerts)
            .Count(alert => alert.Kind != Archwright.Practice.People.AlertKind.Other));

    [Fact]
    public void A_tooth_is_named_in_words_beside_its_number_in_every_text()
    {
        string[] texts =
        [
            .. Made.Value.Patients.SelectMany(one => one.Alerts.Select(alert => alert.Text).Append(one.Plan)),
            .. Made.Value.Treatments.Select(one => one.Appliance.Brackets),
            .. Made.Value.Visits.SelectMany(one => one.Content.Breakages.Select(broken => broken.What)
                .Append(one.Question).Append(one.Content.Note)),
        ];

        Assert.Contains(texts, text => text.Contains("upper right canine (13, ISO)", StringComparison.Ordinal));
        Assert.DoesNotContain(texts, text => text.Contains('{', StringComparison.Ordinal));
        // A number from 11 to 48 that is neither a count of weeks, months or grams nor part of a larger figure.
        Assert.All(texts, text => Assert.DoesNotMatch(
            @"(?<![\d.x×-])[1-4][1-8](?![\dx]|\.\d|, ISO\)| weeks| months| g\b)", text));
    }

    [Fact]
    public void Nothing_that_is_computed_hangs_on_how_a_text_is_worded()
    {
        DemoFile file = DemoFile.Read();
        DemoFile other = file with
        {
            Patients =
            [
                .. file.Patients.Select(one => one with
                {
                    Question = one.Question + " Once more.",
                    Plan = "",
                    Visits = [.. one.Visits.Select(visit => visit with { Note = "Other words." })],
                }),
            ],
        };
        DemoPlaces places = DemoPlaces.Read();
        for (int i = 0; i < file.Patients.Count; i++)
        {
            var course = new DemoCourse(file, i, Samples.Today, places);
            var reworded = new DemoCourse(other, i, Samples.Today, places);

            Assert.Equal(file.Patients[i].Age, course.Patient.AgeOn(Samples.Today));
            Assert.Equal(course.Patient.BornOn, reworded.Patient.BornOn);
            Assert.Equal(course.Visits.Select(one => one.Day), reworded.Visits.Select(one => one.Day));
            Assert.Equal(
                course.Visits.Select(one => (one.Content.Upper, one.Content.Lower)),
                reworded.Visits.Select(one => (one.Content.Upper, one.Content.Lower)));
        }
    }

    [Fact]
    public void What_was_felt_after_a_visit_is_noted_at_the_next_one()
    {
        foreach (IGrouping<Guid, Visit> course in Made.Value.Visits.GroupBy(visit => visit.PatientId))
            Assert.Null(course.MinBy(visit => visit.Day)!.Content.Discomfort); // nothing had been felt yet

        Assert.Contains(Made.Value.Visits, visit => visit.Content.Discomfort?.Worst >= 5);
    }

    /// <summary>By the irregularity index, not by how far each tooth stands from its place: where a heavily loaded
    /// tooth waits, or one is passed by, its neighbours give way to it and may stand farther off than at first.
    /// </summary>
    [Fact]
    public void Crooked_arches_that_the_program_could_follow_are_less_irregular()
    {
        int followed = 0;
        foreach (Visit visit in Made.Value.Visits.Where(visit => visit.Day == Samples.Today))
        {
            foreach (Jaw jaw in Enum.GetValues<Jaw>())
            {
                Visit[] all = [.. Made.Value.Visits.Where(one => one.PatientId == visit.PatientId
                    && one.Content.Arch(jaw) is not null).OrderBy(one => one.Day)];
                if (all.Length < 2 || all.Any(one => one.Content.Arch(jaw)!.Seen is null))
                    continue;

                // Of an arch that began nearly straight the errors of reading say as much as the movement.
                followed++;
                double before = Irregularity(all[0], jaw);
                double now = Irregularity(visit, jaw);
                Assert.True(now < before || before < 1, $"{visit.Question} {jaw}: {before} to {now}");
            }
        }

        Assert.True(followed >= 18, $"Only {followed} of 22 arches are followed to the day.");
    }

    [Fact]
    public void The_courses_are_those_that_the_program_computes()
    {
        string? makes = Environment.GetEnvironmentVariable("ARCHWRIGHT_MAKE_DEMO");
        Assert.SkipUnless(
            makes is not null || Environment.GetEnvironmentVariable("ARCHWRIGHT_NIGHTLY") == "1",
            "It takes minutes and runs at night; ARCHWRIGHT_MAKE_DEMO names a file to write the courses to.");

        string computed = DemoPlaces.Compute();

        if (makes is not null)
            File.WriteAllText(makes, computed);
        else
            Assert.Equal(ReadKept(), computed);
    }

    private static string ReadKept()
    {
        using Stream stream = typeof(DemoPractice).Assembly.GetManifestResourceStream("demo-places.json")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    private static double Irregularity(Visit visit, Jaw jaw)
    {
        ArchTreatment treatment = Made.Value.Treatments.Single(
            one => one.PatientId == visit.PatientId && one.Jaw == jaw);
        // Not told where one of the six is not there.
        return ArchModel.Irregularity(treatment, bare: null, visit.Content.Arch(jaw)!.Seen!.Positions) ?? 0;
    }
}
