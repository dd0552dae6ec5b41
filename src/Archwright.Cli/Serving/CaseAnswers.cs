using System.Collections.Immutable;
using Archwright.Cli.Running;
using Archwright.Cli.Solving;
using Archwright.Cli.Tables;
using Archwright.Cli.Verbs;
using Archwright.Cli.Visits;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Results;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Forecasts;
using Archwright.Web.Api;

namespace Archwright.Cli.Serving;

/// <summary>Answers the API with the documents of the verbs: whoever asks either way reads the same.</summary>
internal sealed class CaseAnswers : ICaseAnswers
{
    /// <inheritdoc/>
    public void Answer(
        CaseQuestion question, CaseFile file, Stream to, IProgress<double>? progress, CancellationToken cancellation)
    {
        try
        {
            switch (question.Task)
            {
                case CaseTask.Solve:
                    SolveJson.Write(to, WholeLaw.Solve(file, repeats: 0, cancellation));
                    break;
                case CaseTask.Compare:
                    Compare(question, file, to, progress, cancellation);
                    break;
                case CaseTask.Forecast:
                    Forecast(question, file, to, progress, cancellation);
                    break;
                case CaseTask.Visit:
                    Visit(question, file, to, progress, cancellation);
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(question), question.Task, "No such task.");
            }
        }
        catch (Refusal refusal)
        {
            throw new CaseRefusedException(
            [
                .. refusal.Complaints.Select(one => new ApiProblem("", "", one.What, one.Mend)),
            ]);
        }
    }

    private static void Compare(
        CaseQuestion question, CaseFile file, Stream to, IProgress<double>? progress, CancellationToken cancellation)
    {
        IReadOnlyList<CatalogueWire> wires = Wires(question) ?? WireCatalogue.Default.Wires;
        IReadOnlyList<ComparedWire> ranked = SetUp(() => WireComparison.AtWork(
            file.Arrangement, file.Axes, wires, ForceCeilings.Default,
            Counted(progress, wires.Count), cancellation));
        CompareJson.Write(ranked, file.Arrangement, to);
    }

    private static void Forecast(
        CaseQuestion question, CaseFile file, Stream to, IProgress<double>? progress, CancellationToken cancellation)
    {
        CaseFile asked = ForecastVerb.Replaced(file, question.Wire);
        ForecastAnswer Answered(CaseFile with)
        {
            ForecastRequest request = ForecastVerb.Request(with, question.Weeks);
            if (question.Draws == 0)
                return new ForecastAnswer(with, request, Forecaster.Run(request, cancellation), Drawn: null);

            DrawnForecast drawn = Forecaster.RunDraws(
                request, new DrawSettings { Draws = question.Draws, Seed = question.Seed },
                Counted(progress, question.Draws), cancellation);
            return new ForecastAnswer(with, request, drawn.Median, drawn);
        }

        ForecastJson.Write(to, SetUp(() => question.WholeLaw
            ? ForecastVerb.WithWholeLaw(asked, Answered) : Answered(asked)));
    }

    private static void Visit(
        CaseQuestion question, CaseFile file, Stream to, IProgress<double>? progress, CancellationToken cancellation)
    {
        VisitQuestion asked = VisitCase.Question(file, Wires(question));
        VisitJson.Write(to, SetUp(() => VisitAdvisor.Advise(
            asked, new VisitOptions { Style = SentenceStyle.Default }, new VisitShare(progress), cancellation)));
    }

    private static ImmutableArray<CatalogueWire>? Wires(CaseQuestion question) => question.Stock is { } ids
        ? [.. ids.Select(id => WireNames.Find(WireCatalogue.Default, id)).Distinct()]
        : null;

    private static T SetUp<T>(Func<T> compute)
    {
        try
        {
            return compute();
        }
        catch (ArgumentException fault)
        {
            throw new Refusal(
                "the case cannot be set up: " + Plainly.Message(fault), "Check the slots and the teeth of the case.");
        }
    }

    private static IProgress<int>? Counted(IProgress<double>? progress, int of) =>
        progress is null ? null : new Share(progress, of);

    private sealed class Share(IProgress<double> outer, int of) : IProgress<int>
    {
        public void Report(int value) => outer.Report((double)value / Math.Max(1, of));
    }

    private sealed class VisitShare(IProgress<double>? outer) : IProgress<VisitProgress>
    {
        public void Report(VisitProgress value) => outer?.Report((double)value.Done / Math.Max(1, value.Of));
    }
}
