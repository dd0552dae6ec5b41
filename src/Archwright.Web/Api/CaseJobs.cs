using System.Globalization;
using Hangfire;
using Hangfire.Common;
using Hangfire.InMemory;
using Hangfire.States;
using Hangfire.Storage;
using Hangfire.Storage.Monitoring;
using Microsoft.Extensions.DependencyInjection;

namespace Archwright.Web.Api;

/// <summary>Where a job stands.</summary>
public enum JobStanding
{
    /// <summary>It waits for its turn.</summary>
    Waiting,

    /// <summary>It is computed.</summary>
    Running,

    /// <summary>Its answer is there.</summary>
    Done,

    /// <summary>The case cannot be answered; its answer says why.</summary>
    Refused,

    /// <summary>It ended in a fault of ours; it may be tried again.</summary>
    Failed,

    /// <summary>It was cancelled.</summary>
    Cancelled,
}

/// <summary>A job as its client sees it.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Task">What is computed: "forecast".</param>
/// <param name="State">Where it stands.</param>
/// <param name="Percent">How much is done.</param>
/// <param name="CreatedAt">When it was asked.</param>
public sealed record JobView(string Id, CaseTask Task, JobStanding State, int Percent, DateTimeOffset CreatedAt);

/// <summary>The jobs of the API, on a job engine that lives in this program and keeps its list in memory: a job ends
/// with the program, or an hour after it was done. A client sees its own jobs alone.</summary>
/// <param name="engine">Takes jobs.</param>
/// <param name="storage">Knows them.</param>
internal sealed class CaseJobs(IBackgroundJobClient engine, JobStorage storage)
{
    /// <summary>Jobs that may wait at a time; whoever comes then is asked to come again.</summary>
    public const int MostWaiting = 50;

    private static readonly TimeSpan Life = TimeSpan.FromHours(1);

    /// <summary>The engine.</summary>
    public static void AddTo(IServiceCollection services)
    {
        services.AddHangfire(engine => engine
            .SetDataCompatibilityLevel(CompatibilityLevel.Version_180)
            .UseSimpleAssemblyNameTypeSerializer()
            .UseRecommendedSerializerSettings()
            .UseInMemoryStorage(new InMemoryStorageOptions
            {
                IdType = InMemoryStorageIdType.Guid, MaxExpirationTime = Life,
            })
            .WithJobExpirationTimeout(Life));
        services.AddHangfireServer(server =>
        {
            // One solve uses what cores there are; the chair comes first.
            server.WorkerCount = Math.Max(1, Environment.ProcessorCount / 2);
            server.CancellationCheckInterval = TimeSpan.FromSeconds(1);
            server.SchedulePollingInterval = TimeSpan.FromSeconds(1);
            server.ShutdownTimeout = TimeSpan.FromSeconds(2);
        });
        services.AddSingleton<CaseJobs>();
    }

    /// <summary>Takes a job.</summary>
    /// <returns>Its identity; null when too many wait.</returns>
    public string? Begin(CaseQuestion question, Guid client) =>
        storage.GetMonitoringApi().EnqueuedCount(EnqueuedState.DefaultQueue) >= MostWaiting
            ? null
            : engine.Enqueue<CaseJob>(job => job.Run(question, client, null, CancellationToken.None));

    /// <summary>A job of a client.</summary>
    /// <returns>Null when there is none, or it is somebody else's.</returns>
    public JobView? Find(string id, Guid client) => Look(id, client)?.View;

    /// <summary>What became of a job that is done or refused; null otherwise.</summary>
    public JobOutcome? Outcome(string id, Guid client) => Look(id, client)?.Outcome;

    /// <summary>Cancels a job: one that runs stops within a second or so.</summary>
    /// <returns>False when there is none.</returns>
    public bool Cancel(string id, Guid client)
    {
        if (Look(id, client) is not { } found)
            return false;

        if (found.View.State is JobStanding.Waiting or JobStanding.Running)
            engine.Delete(id);
        return true;
    }

    /// <summary>Tries again a job that failed or was cancelled.</summary>
    /// <returns>False when it stands otherwise.</returns>
    public bool Retry(string id, Guid client) =>
        Look(id, client)?.View.State is JobStanding.Failed or JobStanding.Cancelled && engine.Requeue(id);

    private (JobView View, JobOutcome? Outcome)? Look(string id, Guid client)
    {
        if (!Guid.TryParse(id, CultureInfo.InvariantCulture, out _))
            return null;

        using IStorageConnection connection = storage.GetConnection();
        if (connection.GetJobData(id) is not { Job.Args: [CaseQuestion question, Guid owner, ..] } data
            || owner != client)
        {
            return null;
        }

        JobOutcome? outcome = data.State == SucceededState.StateName
            ? Result(storage.GetMonitoringApi().JobDetails(id)) : null;
        JobStanding state = Standing(data.State, outcome);
        int percent = state is JobStanding.Done or JobStanding.Refused ? 100
            : int.TryParse(
                connection.GetJobParameter(id, CaseJob.Progress), CultureInfo.InvariantCulture, out int share)
                ? share : 0;
        return (new JobView(id, question.Task, state, percent, Utc(data.CreatedAt)), outcome);
    }

    private static DateTimeOffset Utc(DateTime at) => new(DateTime.SpecifyKind(at, DateTimeKind.Utc));

    private static JobOutcome? Result(JobDetailsDto? details) =>
        details?.History.FirstOrDefault(state => state.StateName == SucceededState.StateName)?.Data
            .TryGetValue("Result", out string? result) == true
            ? SerializationHelper.Deserialize<JobOutcome>(result, SerializationOption.User)
            : null;

    private static JobStanding Standing(string? state, JobOutcome? outcome) => state switch
    {
        "Processing" => JobStanding.Running,
        "Succeeded" => outcome?.Answer is null ? JobStanding.Refused : JobStanding.Done,
        "Failed" => JobStanding.Failed,
        "Deleted" => JobStanding.Cancelled,
        _ => JobStanding.Waiting,
    };
}
