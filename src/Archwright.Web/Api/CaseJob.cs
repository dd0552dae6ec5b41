using System.Globalization;
using System.Text;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Problems;
using Hangfire;
using Hangfire.Server;

namespace Archwright.Web.Api;

/// <summary>What became of a job: a document, or why there is none.</summary>
/// <param name="Answer">The document as JSON text; null when the case was refused.</param>
/// <param name="Problems">Why it was refused; null otherwise.</param>
public sealed record JobOutcome(string? Answer, IReadOnlyList<ApiProblem>? Problems);

/// <summary>Computes one question in the background. The engine makes it anew for each run, stops it by the token, and
/// runs it again when it ended in a fault: the same question gives the same answer.</summary>
/// <param name="answers">Computes.</param>
[AutomaticRetry(Attempts = 2, DelaysInSeconds = [1, 5], OnAttemptsExceeded = AttemptsExceededAction.Fail)]
public sealed class CaseJob(ICaseAnswers answers)
{
    /// <summary>The parameter of a job that holds the share done.</summary>
    internal const string Progress = "Progress";

    /// <summary>Runs.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="client">Whose job it is.</param>
    /// <param name="context">The engine's view of this run; given by the engine.</param>
    /// <param name="cancellation">Stops it; given by the engine.</param>
    public JobOutcome Run(
        CaseQuestion question, Guid client, PerformContext? context, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(question);
        using var text = new MemoryStream(Encoding.UTF8.GetBytes(question.CaseText));
        Read<CaseFile> read = CaseReader.Read(text);
        if (read.Value is not { } file)
            return new JobOutcome(null, read.Problems.Select(ApiProblem.Of).ToArray());

        using var answer = new MemoryStream();
        try
        {
            answers.Answer(question, file, answer, new Share(context), cancellation);
            return new JobOutcome(Encoding.UTF8.GetString(answer.ToArray()), null);
        }
        catch (CaseRefusedException refused)
        {
            return new JobOutcome(null, refused.Problems.ToArray()); // an array: the engine must know its type
        }
    }

    // Told by many threads at once; a whole percent at a time is written, and never less than before.
    private sealed class Share(PerformContext? context) : IProgress<double>
    {
        private readonly Lock _gate = new();
        private int _percent = -1;

        public void Report(double value)
        {
            int percent = (int)Math.Clamp(100 * value, 0, 100);
            lock (_gate)
            {
                if (context is null || percent <= _percent)
                    return;

                _percent = percent;
                context.Connection.SetJobParameter(
                    context.BackgroundJob.Id, Progress, percent.ToString(CultureInfo.InvariantCulture));
            }
        }
    }
}
