using System.ComponentModel;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Problems;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Ladders;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Archwright.Web.Api;

/// <summary>Computing on a case that the client sends. The body is a case file and nothing else; it is read by the
/// reader of case files, and nothing that it refuses reaches the solver.</summary>
internal static class ComputeRoutes
{
    private const string Json = "application/json";

    /// <summary>Most forecasts by chance in one question.</summary>
    public const int MostDraws = 1000;

    /// <summary>Longest time that an answer is waited for [s].</summary>
    public const int LongestWait = 30;

    public static void Map(RouteGroupBuilder routes)
    {
        Case(routes.MapPost("/solve", SolveAsync), CaseTask.Solve)
            .WithSummary("Force and moment on every tooth")
            .WithDescription(
                "Engages the wire of the case and goes through its steps. Answers at once with archwright-forces/1; "
                + "that a wire cannot be engaged is an answer, not an error.")
            .Produces(StatusCodes.Status200OK, contentType: Json);
        Job(routes.MapPost("/compare", CompareAsync), CaseTask.Compare)
            .WithSummary("Every wire on this arch, ranked with reasons")
            .WithDescription("A job whose answer is archwright-compare/1.");
        Job(routes.MapPost("/forecast", ForecastAsync), CaseTask.Forecast)
            .WithSummary("Where the teeth will be, week by week")
            .WithDescription("A job whose answer is archwright-forecast/1. A forecast, no promise.");
        Job(routes.MapPost("/visit", VisitAsync), CaseTask.Visit)
            .WithSummary("Keep, step up, step down, or look first")
            .WithDescription(
                "A job whose answer is archwright-visit/1, with the chain of figures where it is asked for. It "
                + "recommends; the treating clinician decides.");
        Job(routes.MapPost("/ladder", LadderAsync), CaseTask.Ladder)
            .WithSummary("Sequences of wires to the working wire")
            .WithDescription(
                "A job whose answer is archwright-ladder/1: fewest visits, gentlest, fastest, and a sequence of one's "
                + "own. It takes minutes. It recommends; the treating clinician decides at every visit anew.");
        routes.MapGet("/jobs/{id}", (string id, HttpContext context, CaseJobs jobs) =>
                jobs.Find(id, Client(context)) is { } job ? Results.Json(Body(job)) : ApiRefusals.Missing("job"))
            .WithSummary("Where a job stands").Produces<JobBody>().ProducesProblem(StatusCodes.Status404NotFound);
        routes.MapGet("/jobs/{id}/answer", Answer)
            .WithSummary("The answer of a job that is done")
            .Produces(StatusCodes.Status200OK, contentType: Json)
            .ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status409Conflict)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        routes.MapDelete("/jobs/{id}", (string id, HttpContext context, CaseJobs jobs) =>
                jobs.Cancel(id, Client(context)) ? Results.NoContent() : ApiRefusals.Missing("job"))
            .WithSummary("Cancel a job").WithDescription("One that runs stops within seconds; one that is done stays.")
            .Produces(StatusCodes.Status204NoContent).ProducesProblem(StatusCodes.Status404NotFound);
        routes.MapPost("/jobs/{id}/retry", Retry)
            .WithSummary("Try a failed or cancelled job again").Produces<JobBody>(StatusCodes.Status202Accepted)
            .ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status409Conflict);
    }

    private static RouteHandlerBuilder Case(RouteHandlerBuilder route, CaseTask task) => route
        .WithName(task.ToString()).Accepts<JsonElement>(Json)
        .ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status413PayloadTooLarge)
        .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static RouteHandlerBuilder Job(RouteHandlerBuilder route, CaseTask task) => Case(route, task)
        .Produces<JobBody>(StatusCodes.Status202Accepted).Produces(StatusCodes.Status200OK, contentType: Json);

    private static async Task<IResult> SolveAsync(
        HttpContext context, ICaseAnswers answers,
        [FromQuery, Description(ModelParameters.FrictionSays)] string? friction)
    {
        List<ApiProblem> problems = Unknown(context.Request, nameof(friction));
        ModelParameters.CheckFriction(friction, problems);
        (string text, CaseFile? file) = await ReadAsync(context.Request, problems);
        if (problems.Count > 0 || file is null)
            return ApiRefusals.Wrong(problems);

        using var answer = new MemoryStream();
        try
        {
            await Task.Run(() => answers.Answer(
                new CaseQuestion { Task = CaseTask.Solve, CaseText = text, Friction = friction }, file, answer, null,
                context.RequestAborted));
        }
        catch (CaseRefusedException refused)
        {
            return ApiRefusals.Unanswerable(refused.Problems);
        }

        return Results.Bytes(answer.ToArray(), Json);
    }

    private static Task<IResult> CompareAsync(
        HttpContext context, CaseJobs jobs,
        [FromQuery, Description("Ids of the wires to choose among, with commas; without it the catalogue.")]
        string? stock)
    {
        List<ApiProblem> problems = Unknown(context.Request, nameof(stock));
        return BeginAsync(
            context, jobs, problems,
            (text, _) => new CaseQuestion
            {
                Task = CaseTask.Compare, CaseText = text, Stock = Listed(stock, nameof(stock), problems),
            });
    }

    private static Task<IResult> VisitAsync(
        HttpContext context, CaseJobs jobs,
        [FromQuery, Description(
            "Ids of the wires in stock, with commas; without it what the case's visit names, or the catalogue.")]
        string? stock,
        [FromQuery, Description("ISO number of a tooth of the case: tells its chain of figures, to the verdict.")]
        string? explain,
        [FromQuery(Name = "why_not"), Description("A wire: tells what each rule finds on it, and its score.")]
        string? whyNot,
        [FromQuery, Description("true: tells which inputs would turn the recommendation; slower.")]
        string? sensitivity,
        [FromQuery, Description(ModelParameters.FrictionSays)] string? friction,
        [FromQuery(Name = ModelParameters.SoftTissue), Description(ModelParameters.SoftTissueSays)]
        string? softTissue)
    {
        List<ApiProblem> problems = Unknown(
            context.Request, nameof(stock), nameof(explain), "why_not", nameof(sensitivity), nameof(friction),
            ModelParameters.SoftTissue);
        ModelParameters.CheckFriction(friction, problems);
        double? tissue = ModelParameters.Tissue(softTissue, problems);
        bool turning = YesOrNo(problems, nameof(sensitivity), sensitivity);
        if (whyNot is not null)
            Wire(whyNot, "why_not", problems);
        return BeginAsync(context, jobs, problems, (text, file) =>
        {
            if (explain is not null && file is not null)
                Tooth(explain, file, problems);
            return new CaseQuestion
            {
                Task = CaseTask.Visit, CaseText = text, Stock = Listed(stock, nameof(stock), problems),
                Explain = explain, WhyNot = whyNot, Sensitivity = turning, Friction = friction,
                SoftTissue = tissue,
            };
        });
    }

    private static Task<IResult> LadderAsync(
        HttpContext context, CaseJobs jobs,
        [FromQuery, Description(
            "Ids of the wires in stock, with commas; without it what the case's visit names, or the catalogue.")]
        string? stock,
        [FromQuery, Description("The wire to end with; without it the working wire of the case, or the usual one.")]
        string? to,
        [FromQuery, Description("A sequence of one's own, ids with commas, to be set beside what is found.")]
        string? sequence,
        [FromQuery, Description("What wires cost, with commas: niti-014:4.20,ss-016:2.")] string? prices,
        [FromQuery, Description("Patients by chance, 0 to 2000; without it a slow, a usual and a quick one.")]
        string? draws,
        [FromQuery, Description("The same whole number gives the same patients; without it 1.")] string? seed,
        [FromQuery, Description(ModelParameters.FrictionSays)] string? friction,
        [FromQuery(Name = ModelParameters.SoftTissue), Description(ModelParameters.SoftTissueSays)]
        string? softTissue)
    {
        List<ApiProblem> problems = Unknown(
            context.Request, nameof(stock), nameof(to), nameof(sequence), nameof(prices), nameof(draws), nameof(seed),
            nameof(friction), ModelParameters.SoftTissue);
        ModelParameters.CheckFriction(friction, problems);
        double? tissue = ModelParameters.Tissue(softTissue, problems);
        if (to is not null)
            Wire(to, nameof(to), problems);
        return BeginAsync(context, jobs, problems, (text, _) => new CaseQuestion
        {
            Task = CaseTask.Ladder, CaseText = text, To = to, Friction = friction, SoftTissue = tissue,
            Stock = Listed(stock, nameof(stock), problems),
            Sequence = LadderParameters.Sequence(Listed(sequence, nameof(sequence), problems), problems),
            Prices = LadderParameters.Prices(prices, problems),
            Draws = Whole(problems, nameof(draws), draws, 0, 0, LadderOptions.MostDraws),
            Seed = Whole(problems, nameof(seed), seed, 1, 0, int.MaxValue),
        });
    }

    private static Task<IResult> ForecastAsync(
        HttpContext context, CaseJobs jobs,
        [FromQuery, Description("How far to look ahead: a whole number, 1 to 104.")] string? weeks,
        [FromQuery, Description("Forecasts by chance, for ranges, 0 to 1000; without it one at the median rate.")]
        string? draws,
        [FromQuery, Description("The same whole number gives the same draws; without it 1.")] string? seed,
        [FromQuery, Description("Another wire of the catalogue in place of the case's.")] string? wire,
        [FromQuery(Name = "whole_law"), Description("true: follow the alloy with its plateau and history; slower.")]
        string? wholeLaw,
        [FromQuery, Description(ModelParameters.FrictionSays)] string? friction,
        [FromQuery(Name = ModelParameters.SoftTissue), Description(ModelParameters.SoftTissueSays)]
        string? softTissue)
    {
        List<ApiProblem> problems =
            Unknown(
                context.Request, nameof(weeks), nameof(draws), nameof(seed), nameof(wire), "whole_law",
                nameof(friction), ModelParameters.SoftTissue);
        ModelParameters.CheckFriction(friction, problems);
        double? tissue = ModelParameters.Tissue(softTissue, problems);
        int ahead = Whole(problems, nameof(weeks), weeks, 0, 1, ForecastRequest.MostWeeks);
        int chance = Whole(problems, nameof(draws), draws, 0, 0, MostDraws);
        int first = Whole(problems, nameof(seed), seed, 1, 0, int.MaxValue);
        bool whole = YesOrNo(problems, "whole_law", wholeLaw);
        if (wire is not null)
            Wire(wire, nameof(wire), problems);
        return BeginAsync(context, jobs, problems, (text, _) => new CaseQuestion
        {
            Task = CaseTask.Forecast, CaseText = text, Weeks = ahead, Draws = chance, Seed = first,
            Wire = wire, WholeLaw = whole, Friction = friction, SoftTissue = tissue,
        });
    }

    private static async Task<IResult> BeginAsync(
        HttpContext context, CaseJobs jobs, List<ApiProblem> problems,
        Func<string, CaseFile?, CaseQuestion> question)
    {
        (string text, CaseFile? file) = await ReadAsync(context.Request, problems);
        CaseQuestion asked = question(text, file);
        int wait = Wait(context.Request, problems);
        if (problems.Count > 0)
            return ApiRefusals.Wrong(problems);

        Guid client = Client(context);
        if (jobs.Begin(asked, client) is not { } id)
        {
            context.Response.Headers.RetryAfter = "30";
            return ApiRefusals.Refuse(
                StatusCodes.Status429TooManyRequests, "Too many jobs wait",
                $"{CaseJobs.MostWaiting} jobs wait already. Ask again in half a minute.");
        }

        JobView? job = await FinishedAsync(jobs, id, client, wait, context.RequestAborted);
        if (wait > 0 && job?.State is JobStanding.Done or JobStanding.Refused)
            return Outcome(jobs.Outcome(id, client));

        string place = $"{ApiRoutes.Version1}/jobs/{id}";
        return job is null ? ApiRefusals.Missing("job") : Results.Accepted(place, Body(job));
    }

    // RFC 7240, section 4.3: “Prefer: wait=10” asks for the answer itself if it comes within ten seconds.
    private static int Wait(HttpRequest request, List<ApiProblem> problems)
    {
        const string Key = "wait=";
        string? asked = request.Headers["Prefer"].ToString().Split(',', StringSplitOptions.TrimEntries)
            .FirstOrDefault(one => one.StartsWith(Key, StringComparison.OrdinalIgnoreCase))?[Key.Length..];
        if (asked is null)
            return 0;

        if (int.TryParse(asked, NumberStyles.None, CultureInfo.InvariantCulture, out int seconds))
            return Math.Min(seconds, LongestWait);

        problems.Add(new ApiProblem(
            "", "Prefer", $"“{asked}” is no time to wait.", $"Write “Prefer: wait=10”: seconds, up to {LongestWait}."));
        return 0;
    }

    private static async Task<JobView?> FinishedAsync(
        CaseJobs jobs, string id, Guid client, int seconds, CancellationToken cancellation)
    {
        const int StepMilliseconds = 100;
        JobView? job = jobs.Find(id, client);
        for (int left = 1000 * seconds / StepMilliseconds; left > 0; left--)
        {
            if (job?.State is not (JobStanding.Waiting or JobStanding.Running))
                break;

            await Task.Delay(StepMilliseconds, cancellation);
            job = jobs.Find(id, client);
        }

        return job;
    }

    private static IResult Answer(string id, HttpContext context, CaseJobs jobs)
    {
        Guid client = Client(context);
        if (jobs.Find(id, client) is not { } job)
            return ApiRefusals.Missing("job");

        return jobs.Outcome(id, client) is { } outcome ? Outcome(outcome) : ApiRefusals.Refuse(
            StatusCodes.Status409Conflict, "No answer yet",
            job.State switch
            {
                JobStanding.Failed => "The job ended in a fault of ours. Try it again with POST …/retry.",
                JobStanding.Cancelled => "The job was cancelled. Try it again with POST …/retry.",
                _ => $"The job stands at {job.Percent} %. Ask again in a moment.",
            });
    }

    private static IResult Retry(string id, HttpContext context, CaseJobs jobs)
    {
        Guid client = Client(context);
        if (jobs.Find(id, client) is null)
            return ApiRefusals.Missing("job");

        return jobs.Retry(id, client) && jobs.Find(id, client) is { } job
            ? Results.Accepted($"{ApiRoutes.Version1}/jobs/{id}", Body(job))
            : ApiRefusals.Refuse(
                StatusCodes.Status409Conflict, "Nothing to try again",
                "Only a job that failed or was cancelled is tried again.");
    }

    private static IResult Outcome(JobOutcome? outcome) => outcome?.Answer is { } answer
        ? Results.Text(answer, Json, Encoding.UTF8)
        : ApiRefusals.Unanswerable(outcome?.Problems ?? []);

    private static async Task<(string Text, CaseFile? File)> ReadAsync(HttpRequest request, List<ApiProblem> problems)
    {
        using var body = new MemoryStream();
        await request.Body.CopyToAsync(body, request.HttpContext.RequestAborted);
        body.Position = 0;
        Read<CaseFile> read = CaseReader.Read(body);
        problems.AddRange(read.Problems.Select(ApiProblem.Of));
        return (Encoding.UTF8.GetString(body.GetBuffer(), 0, (int)body.Length), read.Value);
    }

    private static List<ApiProblem> Unknown(HttpRequest request, params string[] known) =>
    [
        .. request.Query.Keys.Where(key => !known.Contains(key, StringComparer.OrdinalIgnoreCase)).Select(
            key => new ApiProblem(
                "", key, $"There is no parameter “{key}” here.",
                known.Length > 0 ? $"Known are: {string.Join(", ", known)}." : "Take it out.")),
    ];

    private static int Whole(
        List<ApiProblem> problems, string name, string? text, int otherwise, int low, int high)
    {
        int value = otherwise;
        bool isNumber = text is null
            || int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value);
        if (!isNumber || value < low || value > high)
        {
            problems.Add(new ApiProblem(
                "", name, text is null ? $"{name} is needed." : $"{name} is “{text}”.",
                string.Create(CultureInfo.InvariantCulture, $"Give a whole number from {low} to {high}.")));
        }

        return value;
    }

    private static bool YesOrNo(List<ApiProblem> problems, string name, string? text)
    {
        if (text is not (null or "true" or "false"))
            problems.Add(new ApiProblem("", name, $"{name} is “{text}”.", "Write true or false, or leave it out."));
        return text == "true";
    }

    private static void Tooth(string typed, CaseFile file, List<ApiProblem> problems)
    {
        if (ToothNumber.TryParse(typed, out ToothNumber tooth) && file.Teeth.Contains(tooth))
            return;

        string known = string.Join(", ", file.Teeth.OfType<ToothNumber>().Select(one => one.ToIso()));
        problems.Add(new ApiProblem(
            "", "explain", $"The case has no tooth “{typed}”.",
            known.Length > 0 ? $"Write one of its ISO numbers: {known}." : "Take it out: this is a bench set-up."));
    }

    private static List<string>? Listed(string? listed, string name, List<ApiProblem> problems)
    {
        if (listed is null)
            return null;

        List<string> ids = [.. listed.Split(
            ',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
        if (ids.Count == 0)
            problems.Add(new ApiProblem("", name, "No wire is listed.", "Write ids with commas: ss-016,niti-014."));
        foreach (string id in ids)
            Wire(id, name, problems);
        return ids;
    }

    internal static void Wire(string id, string where, List<ApiProblem> problems)
    {
        if (!WireCatalogue.Default.TryFind(id, out _))
        {
            problems.Add(new ApiProblem(
                "", where, $"There is no wire “{id}” in the catalogue.",
                "Write an id of the catalogue, as niti-014; “archwright wires” lists them."));
        }
    }

    private static Guid Client(HttpContext context) => TokenScheme.Client(context).Id;

    private static JobBody Body(JobView job)
    {
        string place = $"{ApiRoutes.Version1}/jobs/{job.Id}";
        return new JobBody(
            job.Id, Word(job.Task), Word(job.State), job.Percent, job.CreatedAt,
            job.State is JobStanding.Done or JobStanding.Refused ? place + "/answer" : null);
    }

    private static string Word<T>(T value)
        where T : struct, Enum => value.ToString().ToLowerInvariant();
}

/// <summary>A job as it is answered.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Task">compare, forecast, visit or ladder.</param>
/// <param name="State">waiting, running, done, refused, failed or cancelled.</param>
/// <param name="Percent">How much is done.</param>
/// <param name="CreatedAt">When it was asked.</param>
/// <param name="Answer">Where its answer is; null before.</param>
public sealed record JobBody(
    string Id, string Task, string State, int Percent, DateTimeOffset CreatedAt, string? Answer);
