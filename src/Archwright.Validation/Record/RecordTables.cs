using System.Reflection;
using Archwright.Dentition.Tables;

namespace Archwright.Validation.Record;

/// <summary>Reads the tables of the published record.</summary>
internal static class RecordTables
{
    private static readonly Assembly Ours = typeof(RecordTables).Assembly;

    public static IReadOnlyList<PublishedCheck> Checks() =>
        Checks(Table.Embedded(Ours, "Record/checks.csv"));

    public static IReadOnlyList<KnownDifference> Differences(IReadOnlyList<PublishedCheck> checks) =>
        Differences(Table.Embedded(Ours, "Record/differences.csv"), checks);

    public static IReadOnlyList<Fit> Fits() =>
    [
        .. Table.Embedded(Ours, "Record/fits.csv").Select(row => new Fit(
            row.Required("constant"), row.Required("value"), row.Required("fitted_to"),
            $"{row.Source()} ({row.How()})")),
    ];

    internal static IReadOnlyList<PublishedCheck> Checks(IReadOnlyList<TableRow> rows)
    {
        HashSet<string> known = new(StringComparer.Ordinal);
        List<PublishedCheck> checks = [];
        foreach (TableRow row in rows)
        {
            if (!known.Add(row.Required("id")))
                throw row.Fault($"'{row.Required("id")}' is listed twice.", "Give each check an id of its own.");
            checks.Add(Check(row));
        }

        return checks;
    }

    internal static IReadOnlyList<KnownDifference> Differences(
        IReadOnlyList<TableRow> rows, IReadOnlyList<PublishedCheck> checks)
    {
        List<KnownDifference> differences = [];
        foreach (TableRow row in rows)
        {
            string id = row.Required("check");
            if (checks.All(check => check.Id != id))
                throw row.Fault($"no check is called '{id}'.", "Take the row out, or mend the id.");
            if (differences.Any(difference => difference.Check == id))
                throw row.Fault($"'{id}' is explained twice.", "Keep one row.");

            Interval computed = Interval.Parse(row.Required("computed"))
                ?? throw row.Fault($"'computed' is '{row.Text("computed")}'.", "Write it as 1.1..1.6.");
            row.Source();
            row.How();
            differences.Add(new KnownDifference(id, computed, VerdictOf(row), row.Required("reason")));
        }

        return differences;
    }

    private static Verdict VerdictOf(TableRow row) => row.Required("verdict") switch
    {
        "explained" => Verdict.Explained,
        "out" => Verdict.Out,
        var other => throw row.Fault($"'verdict' is '{other}'.", "Write explained or out."),
    };

    private static PublishedCheck Check(TableRow row)
    {
        string id = row.Required("id");
        Interval published = Interval.Parse(row.Required("published"))
            ?? throw row.Fault($"'published' is '{row.Text("published")}'.", "Write it as 1.2 or 1.1..1.6.");
        return new PublishedCheck
        {
            Id = id,
            Chapter = row.Required("chapter"),
            Title = row.Required("title"),
            Published = published,
            Unit = row.Required("unit"),
            Spread = row.Text("spread"),
            Accept = Interval.ParseAccept(row.Required("accept"), published)
                ?? throw row.Fault($"'accept' is '{row.Text("accept")}'.", "Write ±0.1, ±5 % or 1.1..1.6."),
            AcceptWords = row.Required("accept"),
            Why = row.Text("why"),
            Source = row.Source(),
            How = row.How(),
            Compute = row.Required("compute"),
            With = new SetUp(id, row.Text("with")),
        };
    }
}
