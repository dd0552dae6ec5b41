using Archwright.Exchange.Problems;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;

namespace Archwright.Web.Api;

/// <summary>One thing that is wrong with a request.</summary>
/// <param name="Code">Stable code, as docs/problems.md lists them; empty where the problem is of the request and not of
/// a file.</param>
/// <param name="Path">Place in the body or name of the parameter: "slots[3].height_mm", "weeks".</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Mend">How to mend it.</param>
public sealed record ApiProblem(string Code, string Path, string Message, string Mend)
{
    /// <summary>A problem of a file.</summary>
    public static ApiProblem Of(Problem problem) => new(
        problem.Code, problem.Path == Problem.WholeFile ? "" : problem.Path, problem.Message, problem.Remedy);
}

/// <summary>Refusals of the API: problem details (RFC 9457) with a list of all that is wrong, each with its place and
/// its mend.</summary>
internal static class ApiRefusals
{
    /// <summary>The member that lists the problems.</summary>
    public const string Problems = "problems";

    /// <summary>A refusal.</summary>
    /// <param name="status">HTTP status.</param>
    /// <param name="title">What kind of refusal, in a few words.</param>
    /// <param name="detail">What happened and what to do.</param>
    /// <param name="problems">All that is wrong, where there is more to say.</param>
    public static IResult Refuse(
        int status, string title, string detail, IEnumerable<ApiProblem>? problems = null) =>
        TypedResults.Problem(Details(status, title, detail, problems));

    /// <summary>A case or a parameter that is wrong.</summary>
    public static IResult Wrong(IReadOnlyCollection<ApiProblem> problems) => Refuse(
        StatusCodes.Status400BadRequest, "The request cannot be read",
        problems.Count == 1
            ? "One thing is wrong. Nothing was computed."
            : $"{problems.Count} things are wrong. Nothing was computed.",
        problems);

    /// <summary>A case that reads well and cannot be answered.</summary>
    public static IResult Unanswerable(IEnumerable<ApiProblem> problems) => Refuse(
        StatusCodes.Status422UnprocessableEntity, "The case cannot be answered",
        "The case reads well, and what is asked cannot be computed on it.", problems);

    /// <summary>Something that is not there, or not for this client: which of them is not told.</summary>
    public static IResult Missing(string what) => Refuse(
        StatusCodes.Status404NotFound, "Not found", $"There is no such {what} for this client.");

    /// <summary>The body of a refusal.</summary>
    public static ProblemDetails Details(
        int status, string title, string detail, IEnumerable<ApiProblem>? problems = null)
    {
        var details = new ProblemDetails { Status = status, Title = title, Detail = detail };
        if (problems is not null)
            details.Extensions[Problems] = problems.ToArray();
        return details;
    }
}
