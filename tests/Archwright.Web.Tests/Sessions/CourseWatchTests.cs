using Archwright.Dentition.Teeth;
using Archwright.Practice.People;
using Archwright.Practice.Tests;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;
using Archwright.Web.Sessions;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Archwright.Web.Tests.Sessions;

/// <summary>How a day's entries fare against what was expected. Rests on a database that counts what it is asked.
/// </summary>
[Trait("basis", "law")]
public sealed class CourseWatchTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("archwright-watch-").FullName;
    private readonly Counting counting = new();

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task However_many_screens_ask_at_once_each_entry_is_looked_at_once()
    {
        (Diary diary, DayEntry entry) = await DayAsync(Samples.HighCanine);
        using var watch = new CourseWatch(diary);
        counting.Begin();

        CourseSign[] signs = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => watch.LookAsync(entry)));

        Assert.All(signs, sign => Assert.Equal(signs[0], sign));
        Assert.Equal(1, counting.Patients); // what it rests on is read once
        Assert.Equal(signs[0], await watch.LookAsync(entry));
        Assert.Equal(1, counting.Patients);
    }

    [Fact]
    public async Task A_screen_that_was_left_leaves_the_look_to_the_next()
    {
        (Diary diary, DayEntry entry) = await DayAsync(Samples.HighCanine);
        using var watch = new CourseWatch(diary);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(
            () => watch.LookAsync(entry, new CancellationToken(canceled: true)));

        Assert.NotEqual(CourseSign.Computing, await watch.LookAsync(entry));
    }

    [Fact]
    public async Task Teeth_that_stand_worse_than_last_time_need_a_look()
    {
        (Diary diary, DayEntry entry) = await DayAsync(ToothMap<ToothOffset>.Empty
            .With(ToothNumber.FromIso(12), new ToothOffset(LabialMm: 3))
            .With(ToothNumber.FromIso(21), new ToothOffset(LabialMm: -3)));
        using var watch = new CourseWatch(diary);

        CourseSign sign = await watch.LookAsync(entry);

        Assert.Equal("needs a look", sign.Word);
        Assert.Contains("upper irregularity", sign.Why, StringComparison.Ordinal);
    }

    // Somebody whose last visit was signed six weeks ago, and what is seen today.
    private async Task<(Diary Diary, DayEntry Entry)> DayAsync(ToothMap<ToothOffset> seen)
    {
        PracticeDatabase database = PracticeDatabase.Sqlite(Path.Combine(folder, "practice.db"), counting);
        await database.MigrateAsync();
        Patient patient = Samples.Patient();
        await using (PracticeContext db = database.CreateDbContext())
        {
            db.AddRange(
                patient, Samples.Upper(patient.Id),
                Visit.FromEarlierRecords(
                    patient.Id, Samples.Today.AddDays(-42), new TimeOnly(9, 0), VisitKind.Adjustment,
                    Samples.Complete, "Dr Iva Lund"),
                Samples.Visit(patient.Id, Samples.With(arch => arch with
                {
                    Seen = new ArchSeen(Samples.Today, PositionsFrom.Measured, seen), Advised = null,
                })));
            await db.SaveChangesAsync();
        }

        var diary = new Diary(database, TimeProvider.System);
        return (diary, Assert.Single(await diary.DayAsync(Samples.Today)));
    }

    private sealed class Counting : DbCommandInterceptor
    {
        private int patients;

        public int Patients => Volatile.Read(ref patients);

        public void Begin() => Volatile.Write(ref patients, 0);

        public override ValueTask<InterceptionResult<System.Data.Common.DbDataReader>> ReaderExecutingAsync(
            System.Data.Common.DbCommand command, CommandEventData eventData,
            InterceptionResult<System.Data.Common.DbDataReader> result, CancellationToken cancellationToken = default)
        {
            if (command.CommandText.Contains("FROM \"Patients\"", StringComparison.Ordinal))
                Interlocked.Increment(ref patients);
            return ValueTask.FromResult(result);
        }
    }
}
