using System.CommandLine;
using System.Runtime.ExceptionServices;
using Archwright.Cli.Pictures;
using Archwright.Cli.Running;
using Archwright.Cli.Tables;
using Archwright.Validation;
using Archwright.Validation.Figures;
using Archwright.Validation.Pages;
using Archwright.Validation.Record;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright validate</c>: every published figure, computed.</summary>
internal static class ValidateVerb
{
    private const string PageFile = "validation.md";
    private const string PictureFolder = "images/validation";

    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        var plot = new Option<string?>("--plot")
        {
            Description = "Draw the pictures of the record into this folder.", HelpName = "DIR",
        };
        var page = new Option<string?>("--page")
        {
            Description = $"Write the page {PageFile} with its pictures into this folder, as into docs.",
            HelpName = "DIR",
        };
        Option<bool> json = CommonOptions.Json();
        var verb = new Verb("validate", "Compute every published check, and compare.")
        {
            Examples =
            [
                ("archwright validate", "computed, published, accepted, source, verdict"),
                ("archwright validate --plot pictures", "with pictures"),
                ("archwright validate --page docs", "writes the page of the documentation anew"),
            ],
        };
        verb.Add(plot);
        verb.Add(page);
        verb.Add(json);
        verb.SetAction((parsed, cancellation) => Task.FromResult(Run(
            terminal, parsed.GetValue(plot), parsed.GetValue(page), parsed.GetValue(json), cancellation)));
        return verb;
    }

    private static int Run(Terminal terminal, string? plot, string? page, bool json, CancellationToken cancellation)
    {
        CheckResult[] results = Compute(cancellation);
        if (plot is not null)
            OutputFiles.Write("--plot", plot, folder => Draw(folder, RecordFigures.Of(results)));
        if (page is not null)
            OutputFiles.Write("--page", page, folder => WritePage(folder, results));
        if (json)
            ValidateJson.Write(terminal.OutputStream, results);
        else
            ValidateReport.Write(terminal, results);
        return results.Any(result => result.Verdict == Verdict.Out) ? ExitCode.NotPossible : ExitCode.Done;
    }

    // In parallel; the order is that of the list, whatever is done first.
    private static CheckResult[] Compute(CancellationToken cancellation)
    {
        IReadOnlyList<PublishedCheck> checks = PublishedRecord.Checks;
        var results = new CheckResult[checks.Count];
        try
        {
            Parallel.For(
                0, results.Length, new ParallelOptions { CancellationToken = cancellation },
                i => results[i] = PublishedRecord.Compute(checks[i]));
        }
        catch (AggregateException faults) when (faults.InnerExceptions is [var only])
        {
            ExceptionDispatchInfo.Throw(only);
        }

        return results;
    }

    private static void Draw(string folder, IReadOnlyList<RecordFigure> figures)
    {
        Directory.CreateDirectory(folder);
        foreach (RecordFigure figure in figures)
            RecordPicture.Write(Path.Combine(folder, figure.Name + ".svg"), figure);
    }

    private static void WritePage(string folder, IReadOnlyList<CheckResult> results)
    {
        IReadOnlyList<RecordFigure> figures = RecordFigures.Of(results);
        Draw(Path.Combine(folder, PictureFolder), figures);
        File.WriteAllText(
            Path.Combine(folder, PageFile),
            RecordPage.Write(results, figures, figure => $"{PictureFolder}/{figure.Name}.svg"));
    }
}
