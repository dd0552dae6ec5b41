using System.Globalization;
using System.Text;
using Archwright.Validation.Figures;
using Archwright.Validation.Record;

namespace Archwright.Validation.Pages;

/// <summary>Writes <c>docs/validation.md</c>.</summary>
public static class RecordPage
{
    /// <summary>The whole page, with a line end at the end.</summary>
    /// <param name="results">All checks, computed.</param>
    /// <param name="figures">Its pictures.</param>
    /// <param name="pictureOf">Address of the picture of a figure, from the page.</param>
    public static string Write(
        IReadOnlyList<CheckResult> results, IReadOnlyList<RecordFigure> figures, Func<RecordFigure, string> pictureOf)
    {
        ArgumentNullException.ThrowIfNull(results);
        ArgumentNullException.ThrowIfNull(figures);
        ArgumentNullException.ThrowIfNull(pictureOf);
        var page = new StringBuilder();
        page.Append(Head(results));
        foreach (RecordFigure figure in figures)
            page.Append(Picture(figure, pictureOf(figure)));
        foreach (IGrouping<string, CheckResult> chapter in results.GroupBy(result => result.Check.Chapter))
            page.Append(Chapter(chapter.Key, [.. chapter]));
        page.Append(Fits());
        return page.ToString();
    }

    private static string Head(IReadOnlyList<CheckResult> results)
    {
        int Count(Verdict verdict) => results.Count(result => result.Verdict == verdict);
        return $"""
            # The published record

            What the literature has measured or worked out, and what Archwright computes for it. This page is written by
            `archwright validate --page docs`; a test fails when it is stale.

            {results.Count} checks: {Count(Verdict.In)} in, {Count(Verdict.Explained)} explained,
            {Count(Verdict.Out)} out.

            - *accepted* was settled before the figure was computed: the printed digits for mathematics, the published
              scatter for real wires. Real wires of one kind differ by a factor of two between makes, so many bands are
              wide.
            - *explained*: outside, and the reason is known and written down with the range of our figure; or the
              published figure is from memory alone, which decides nothing.
            - *out*: outside, and why is not understood; what is known stands below the table. `archwright validate`
              ends with exit code 1 as long as one is out.
            - Constants come from tests of the material. What had to be fitted stands [at the
              end](#fitted-so-not-counted) and is no check.
            - Published figures and how we have them: *found* was seen, mostly in an abstract; *from memory* was not;
              *computed* follows from a definition or a closed form of the source.


            """.ReplaceLineEndings("\n");
    }

    private static string Picture(RecordFigure figure, string address) =>
        $"![{figure.Title}]({address})\n\n*{figure.Title}.* {figure.Caption}\n\n";

    private static string Chapter(string name, CheckResult[] results)
    {
        var text = new StringBuilder($"## {name}\n\n");
        text.Append("| check | computed | published | accepted | source | verdict |\n|---|---|---|---|---|---|\n");
        List<string> sources = [];
        foreach (CheckResult result in results)
        {
            int source = SourceNumber(sources, SourceText(result.Check));
            text.Append(CultureInfo.InvariantCulture,
                $"| {result.Check.Title} | {Computed(result)} | {Words(result.Check.Published)}{Unit(result.Check)} "
                + $"| {Accept(result.Check)} | {source} | {Words(result.Verdict)} |\n");
        }

        text.Append('\n');
        foreach (CheckResult result in results.Where(result => result.Reason.Length > 0))
            text.Append(CultureInfo.InvariantCulture, $"- *{result.Check.Title}*: {result.Reason}\n");
        if (results.Any(result => result.Reason.Length > 0))
            text.Append('\n');
        foreach (IGrouping<string, CheckResult> why in results
                     .Where(result => result.Check.Why.Length > 0).GroupBy(result => result.Check.Why))
        {
            text.Append(CultureInfo.InvariantCulture,
                $"Accepted because: {why.Key} ({Count(why.Count())}, such as *{why.First().Check.Title}*).\n\n");
        }

        for (int i = 0; i < sources.Count; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i + 1}. {sources[i]}\n");
        return text.Append('\n').ToString();
    }

    private static string Fits()
    {
        var text = new StringBuilder("## Fitted, so not counted\n\n");
        text.Append("| constant | value | fitted to | source |\n|---|---|---|---|\n");
        foreach (Fit fit in PublishedRecord.Fits)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"| {fit.Constant} | {fit.Value} | {fit.FittedTo} | {fit.Source} |\n");
        }

        return text.ToString();
    }

    private static int SourceNumber(List<string> sources, string source)
    {
        int at = sources.IndexOf(source);
        if (at >= 0)
            return at + 1;

        sources.Add(source);
        return sources.Count;
    }

    private static string SourceText(PublishedCheck check) =>
        check.Source + ". *" + char.ToUpperInvariant(check.How[0]) + check.How[1..] + "*"
        + (check.Spread.Length > 0 ? $" Spread: {check.Spread}." : ".");

    private static string Count(int checks) => checks == 1 ? "1 check" : $"{checks} checks";

    private static string Unit(PublishedCheck check) => check.Unit == "1" ? "" : " " + check.Unit;

    /// <summary>A verdict in a word.</summary>
    public static string Words(Verdict verdict) => verdict switch
    {
        Verdict.In => "in",
        Verdict.Explained => "explained",
        _ => "out",
    };

    /// <summary>A figure or a range, as published.</summary>
    public static string Words(Interval interval) => interval.IsPoint
        ? Plain(interval.Low)
        : $"{Plain(interval.Low)} to {Plain(interval.High)}";

    /// <summary>What a check accepts, in a word or two.</summary>
    public static string Accept(PublishedCheck check) =>
        check.AcceptWords.Replace("..", " to ", StringComparison.Ordinal);

    /// <summary>The computed figure, to a fifth or so of what is accepted: more digits would say nothing.</summary>
    public static string Computed(CheckResult result)
    {
        if (!double.IsFinite(result.Computed))
            return "none";

        double half = (result.Check.Accept.High - result.Check.Accept.Low) / 2;
        int decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(half)) + 1, 0, 10);
        double rounded = Math.Round(result.Computed, decimals);
        return (rounded == 0 ? 0 : rounded)
            .ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
            .Replace('-', '−');
    }

    private static string Plain(double value) =>
        value.ToString("0.##########", CultureInfo.InvariantCulture).Replace('-', '−');
}
