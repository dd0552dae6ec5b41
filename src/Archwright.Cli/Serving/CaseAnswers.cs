using System.Collections.Immutable;
using Archwright.Cli.Ladders;
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
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Policies;
using Archwright.Web.Api;

namespace Archwright.Cli.Serving;

/// <summary>Answers the API with the documents of the verbs: whoever asks either way reads the same.</summary>
/// <param name="policy">By what a visit and a ladder are judged; its ceilings are those of a comparison.</param>
internal sealed class CaseAnswers(VisitPolicy policy) : ICaseAnswers
{
    // Sensitivity asks for the advice again and again, and is the longer part by far.
    private const double AdviceBesideSensitivity = 0.1;

    /// <inheritdoc/>
    public void Answer(
        CaseQuestion question, CaseFile file, Stream to, IProgress<double>? progress, CancellationToken cancellation)
    {
        if (question.SoftTissue is { } tissue)
            file = file with { SoftTissue = tissue };
        try
        {
            switch (question.Task)
            {
                case CaseTask.Solve:
                    SolveJson.Write(
                        to,
                        WholeLaw.Solve(FrictionOption.On(file, question.Friction), repeats: 0, cancellation));
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
                case CaseTask.Ladder:
                    Ladder(question, file, to, progress, cancellation);
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

    private void Compare(
        CaseQuestion question, CaseFile file, Stream to, IProgress<double>? progress, CancellationToken cancellation)
    {
        IReadOnlyList<CatalogueWire> wires = Wires(question) ?? WireCatalogue.Default.Wires;
        IReadOnlyList<ComparedWire> ranked = SetUp(() => WireComparison.AtWork(
            file.Arrangement, file.Axes, wires, policy.Ceilings,
            Counted(progress, wires.Count), cancellation));
        CompareJson.Write(ranked, file.Arrangement, to);
    }

    private static void Forecast(
        CaseQuestion question, CaseFile file, Stream to, IProgress<double>? progress, CancellationToken cancellation)
    {
        CaseFile asked = FrictionOption.On(ForecastVerb.Replaced(file, question.Wire), question.Friction);
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

    private void Visit(
        CaseQuestion question, CaseFile file, Stream to, IProgress<double>? progress, CancellationToken cancellation)
    {
        VisitQuestion asked = VisitCase.Question(file, Wires(question), FrictionOption.Read(question.Friction));
        var traced = TraceRequest.Of(asked, question.Explain, question.WhyNot, question.Sensitivity);
        var options = new VisitOptions { Policy = policy, Style = SentenceStyle.Default };
        VisitAdvice advice = SetUp(() => VisitAdvisor.Advise(
            asked, options, new VisitShare(progress, question.Sensitivity ? AdviceBesideSensitivity : 1),
            cancellation));
        VisitJson.Write(to, advice, VisitTraces.Of(advice, options, traced, cancellation).Write);
    }

    private void Ladder(
        CaseQuestion question, CaseFile file, Stream to, IProgress<double>? progress, CancellationToken cancellation)
    {
        var asked = new LadderQuestion
        {
            Today = VisitCase.Question(file, Wires(question), FrictionOption.Read(question.Friction)),
            To = question.To is { } last ? WireNames.Find(WireCatalogue.Default, last) : null,
            Asked = [.. (question.Sequence ?? []).Select(id => WireNames.Find(WireCatalogue.Default, id))],
            Prices = Prices(question),
        };
        var options = new LadderOptions { Policy = policy, Draws = question.Draws, Seed = question.Seed };
        LadderJson.Write(to, LadderCase.Find(
            asked, options, new LadderShare(progress, policy.LadderForecasts), cancellation));
    }

    // Divided by a one of many places, so that a price of 4.20 reads 4.2, as the command line writes it.
    private static WirePrices? Prices(CaseQuestion question) => question.Prices is { } prices
        ? new WirePrices(prices.ToImmutableDictionary(
            one => one.Key, one => one.Value / 1.000000000000000000000000000m, StringComparer.Ordinal))
        : null;

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

    private sealed class VisitShare(IProgress<double>? outer, double whole) : IProgress<VisitProgress>
    {
        public void Report(VisitProgress value) => outer?.Report(whole * value.Done / Math.Max(1, value.Of));
    }

    // A search may end long before the most forecasts that it makes, and telling it may take a few more.
    private sealed class LadderShare(IProgress<double>? outer, int most) : IProgress<LadderProgress>
    {
        private const double BeforeTheEnd = 0.99;

        public void Report(LadderProgress value) =>
            outer?.Report(Math.Min(BeforeTheEnd, (double)value.Followed / most));
    }
}
