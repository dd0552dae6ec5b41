using Archwright.Exchange.CaseFiles;

namespace Archwright.Web.Api;

/// <summary>Computes what the API is asked. The program that serves the app gives it, so that the API answers with the
/// same documents as the command line.</summary>
public interface ICaseAnswers
{
    /// <summary>Writes the answer as one JSON document.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="file">The case, read and checked.</param>
    /// <param name="to">Where the document goes; left open.</param>
    /// <param name="progress">Told the share that is done, 0 to 1; null where nobody watches.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="CaseRefusedException">The case cannot be set up, or has not what the question needs.
    /// </exception>
    void Answer(
        CaseQuestion question, CaseFile file, Stream to, IProgress<double>? progress,
        CancellationToken cancellation);
}

/// <summary>A case that reads well and cannot be answered.</summary>
/// <param name="problems">What is wrong and how to mend it; one at least.</param>
public sealed class CaseRefusedException(IReadOnlyList<ApiProblem> problems)
    : Exception(string.Join(" ", problems.Select(one => one.Message)))
{
    /// <summary>What is wrong, and how to mend it.</summary>
    public IReadOnlyList<ApiProblem> Problems { get; } = problems;
}
