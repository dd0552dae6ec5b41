using Archwright.Cli.Running;
using Archwright.Validation.Pages;
using Archwright.Validation.Record;
using Spectre.Console;

namespace Archwright.Cli.Tables;

/// <summary>The answer of <c>validate</c> for people.</summary>
internal static class ValidateReport
{
    // On a narrow screen the accepted range goes: the verdict says what it is for.
    private const int FullWidth = 110;

    /// <summary>Writes it.</summary>
    public static void Write(Terminal terminal, IReadOnlyList<CheckResult> results)
    {
        List<string> sources = [];
        foreach (IGrouping<string, CheckResult> chapter in results.GroupBy(result => result.Check.Chapter))
        {
            Layout.Heading(terminal, chapter.Key);
            WriteChapter(terminal, chapter, sources);
            Layout.Gap(terminal);
        }

        WriteReasons(terminal, results);
        Layout.Heading(terminal, "Sources");
        for (int i = 0; i < sources.Count; i++)
            Layout.Paragraph(terminal, $"{i + 1}. {sources[i]}");
        Layout.Gap(terminal);
        Layout.Paragraph(terminal, Summary(results));
    }

    /// <summary>How many of each verdict.</summary>
    internal static string Summary(IReadOnlyList<CheckResult> results)
    {
        int Count(Verdict verdict) => results.Count(result => result.Verdict == verdict);
        return $"{results.Count} published checks: {Count(Verdict.In)} in, {Count(Verdict.Explained)} explained, "
            + $"{Count(Verdict.Out)} out.";
    }

    private static void WriteChapter(Terminal terminal, IEnumerable<CheckResult> chapter, List<string> sources)
    {
        bool isWide = terminal.Width >= FullWidth;
        Table table = isWide
            ? Layout.Table(("check", false), ("computed", true), ("published", true), ("accepted", true),
                ("source", true), ("verdict", false))
            : Layout.Table(("check", false), ("computed", true), ("published", true), ("verdict", false));
        foreach (CheckResult result in chapter)
        {
            PublishedCheck check = result.Check;
            string unit = check.Unit == "1" ? "" : " " + check.Unit;
            Text verdict = result.Verdict == Verdict.Out
                ? new Text("OUT", Layout.Warning)
                : new Text(RecordPage.Words(result.Verdict));
            Text[] figures =
                [new(check.Title), new(RecordPage.Computed(result)), new(RecordPage.Words(check.Published) + unit)];
            int source = SourceNumber(sources, $"{check.Source} ({check.How})");
            table.AddRow(isWide
                ? [.. figures, new Text(RecordPage.Accept(check)), new Text(Layout.Whole(source)), verdict]
                : [.. figures, verdict]);
        }

        Layout.Write(terminal, table);
    }

    private static void WriteReasons(Terminal terminal, IReadOnlyList<CheckResult> results)
    {
        WriteReasons(terminal, "Out", [.. results.Where(result => result.Verdict == Verdict.Out)]);
        WriteReasons(terminal, "Explained", [.. results.Where(result => result.Verdict == Verdict.Explained)]);
    }

    private static void WriteReasons(Terminal terminal, string heading, CheckResult[] results)
    {
        if (results.Length == 0)
            return;

        Layout.Heading(terminal, heading);
        foreach (CheckResult result in results)
        {
            Layout.Paragraph(terminal, result.Check.Title);
            string reason = result.Reason.Length > 0 ? result.Reason : "Nothing is known of this difference.";
            Layout.Paragraph(terminal, reason, "    ", Layout.Quiet);
        }

        Layout.Gap(terminal);
    }

    private static int SourceNumber(List<string> sources, string source)
    {
        int at = sources.IndexOf(source);
        if (at >= 0)
            return at + 1;

        sources.Add(source);
        return sources.Count;
    }
}
