using System.Diagnostics;
using System.Globalization;
using Archwright.Practice.People;
using Archwright.Practice.Tests;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Tests.Opening;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Archwright.Storage.Tests.Desks;

/// <summary>Day, search and a patient's file in a practice of many, printed and not judged: run with
/// <c>ARCHWRIGHT_LARGE=100000</c>, the number of patients; each has twenty visits. Two times five gigabytes are
/// needed.</summary>
[Trait("basis", "ours")]
public sealed class LargePracticeTests(PostgresServer server)
{
    private const int VisitsOfEach = 20;
    private const int DaysOfBonding = 2000;
    private const int Looks = 100;

    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task Day_search_and_file(string kind)
    {
        Assert.SkipUnless(
            int.TryParse(
                Environment.GetEnvironmentVariable("ARCHWRIGHT_LARGE"), CultureInfo.InvariantCulture, out int patients),
            "A large practice is made with ARCHWRIGHT_LARGE=100000.");
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var load = Stopwatch.StartNew();
        Guid[] some = await FillAsync(made, patients);
        Say($"{kind}: {patients} patients and {patients * VisitsOfEach} visits in {load.Elapsed.TotalSeconds:0} s");

        DateOnly day = Samples.Today.AddDays(-DaysOfBonding / 2);
        Say($"{kind}: {(await made.Diary.DayAsync(day)).Count} visits on a day");
        await TellAsync($"{kind}: day", i => made.Diary.DayAsync(day.AddDays(i)));
        await TellAsync($"{kind}: search", i => made.Files.SearchAsync($"tova {i * 977 % patients}"));
        await TellAsync($"{kind}: search of a common name", _ => made.Files.SearchAsync("mira"));
        await TellAsync($"{kind}: file, with its line in the trail", i => made.Files.OpenAsync(
            some[i % some.Length], Samples.Assistant));
    }

    // One patient with visits through the model; all others are made of them by the database itself.
    private static async Task<Guid[]> FillAsync(TestDatabase made, int patients)
    {
        Patient first = Samples.Patient();
        await using PracticeContext db = made.Database.CreateDbContext();
        db.Add(first);
        db.Add(Samples.Upper(first.Id));
        for (int i = 0; i < VisitsOfEach; i++)
        {
            db.Add(Visit.FromEarlierRecords(
                first.Id, Samples.Today.AddDays(42 * i - DaysOfBonding), new TimeOnly(8 + i % 9, 0),
                VisitKind.Adjustment, Samples.Complete, "Dr Iva Lund"));
        }

        await db.SaveChangesAsync();
        bool lite = made.Kind == "sqlite";
        db.Database.SetCommandTimeout(TimeSpan.FromHours(1));
        string numbers = lite
            ? $"WITH RECURSIVE counted(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM counted WHERE n < {patients - 1})"
            : $"WITH counted(n) AS (SELECT generate_series(1, {patients - 1}))";
        string patient = Id(lite, "n", "0");
        await MultiplyAsync(db, typeof(Patient), numbers, new()
        {
            ["Id"] = patient,
            ["GivenNames"] = "CASE n % 3 WHEN 0 THEN 'Mira' WHEN 1 THEN 'Tova' ELSE 'Ask' END",
            ["FamilyName"] = "'Invented ' || n",
            ["SearchName"] = "CASE n % 3 WHEN 0 THEN 'mira' WHEN 1 THEN 'tova' ELSE 'ask' END || ' invented ' || n",
        });
        await MultiplyAsync(db, typeof(Archwright.Practice.Courses.ArchTreatment), numbers, new()
        {
            ["Id"] = Id(lite, "n", "1"), ["PatientId"] = patient,
        });
        string rank = "dense_rank() OVER (PARTITION BY n ORDER BY p.\"Day\")";
        await MultiplyAsync(db, typeof(Visit), numbers, new()
        {
            ["Id"] = Id(lite, "n", $"1 + {rank}"),
            ["PatientId"] = patient,
            ["Day"] = lite
                ? $"date(p.\"Day\", '+' || (n % {DaysOfBonding}) || ' days')"
                : $"p.\"Day\" + n % {DaysOfBonding}",
        });
        await db.Database.ExecuteSqlRawAsync("ANALYZE");
        return await db.Patients.OrderBy(one => one.SearchName).Take(Looks).Select(one => one.Id).ToArrayAsync();
    }

    private static string Id(bool lite, string n, string part) => lite
        ? $"upper(printf('%08x-0000-7000-8000-%012x', {n}, {part}))"
        : $"(lpad(to_hex({n}), 8, '0') || '-0000-7000-8000-' || lpad(to_hex({part}), 12, '0'))::uuid";

    private static async Task MultiplyAsync(
        PracticeContext db, Type kind, string numbers, Dictionary<string, string> others)
    {
        IEntityType entity = db.Model.FindEntityType(kind)!; // each kind is part of the model
        var table = StoreObjectIdentifier.Table(entity.GetTableName()!);
        string[] columns = [.. entity.GetProperties()
            .Where(one => one.GetComputedColumnSql() is null).Select(one => one.GetColumnName(table)!)];
        string into = string.Join(", ", columns.Select(one => $"\"{one}\""));
        string from = string.Join(", ", columns.Select(one => others.GetValueOrDefault(one, $"p.\"{one}\"")));
        await db.Database.ExecuteSqlRawAsync(
            $"{numbers} INSERT INTO \"{table.Name}\" ({into}) SELECT {from} FROM counted, \"{table.Name}\" p".Replace(
                "{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal));
    }

    private static async Task TellAsync(string what, Func<int, Task> look)
    {
        await look(0); // the first one compiles the query
        List<double> waits = [];
        for (int i = 0; i < Looks; i++)
        {
            var wait = Stopwatch.StartNew();
            await look(i);
            waits.Add(wait.Elapsed.TotalMilliseconds);
        }

        waits.Sort();
        Say($"{what}: median {waits[Looks / 2]:0.0} ms, p95 {waits[95 * Looks / 100]:0.0} ms");
    }

    private static void Say(FormattableString words) =>
        TestContext.Current.TestOutputHelper?.WriteLine(words.ToString(CultureInfo.InvariantCulture));
}
