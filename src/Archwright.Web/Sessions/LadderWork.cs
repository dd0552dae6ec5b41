using System.Collections.Concurrent;
using Archwright.Practice.Ladders;
using Archwright.Practice.People;
using Archwright.Storage.Desks;
using Archwright.Treatment.Ladders;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;

namespace Archwright.Web.Sessions;

/// <summary>Where the computation of a ladder stands.</summary>
public enum LadderStanding
{
    /// <summary>Others are computed before it.</summary>
    Waiting,

    /// <summary>It is computed.</summary>
    Running,

    /// <summary>It came to nothing.</summary>
    Failed,
}

/// <summary>A computation that is not done.</summary>
/// <param name="Standing">Where it stands.</param>
/// <param name="Forecasts">Forecasts made so far.</param>
/// <param name="Fault">Why it came to nothing; empty otherwise.</param>
public sealed record LadderTask(LadderStanding Standing, int Forecasts, string Fault);

/// <summary>Something of the computation for an arch has changed.</summary>
/// <param name="treatmentId">Which arch.</param>
public sealed class LadderEventArgs(Guid treatmentId) : EventArgs
{
    /// <summary>Which arch.</summary>
    public Guid TreatmentId { get; } = treatmentId;
}

/// <summary>Computes ladders of arches in the background, one at a time, and keeps them. It goes on when the screen
/// that asked is left.</summary>
/// <param name="desk">Where they are kept.</param>
/// <param name="planner">Finds them.</param>
/// <param name="log">For faults of ours.</param>
public sealed class LadderWork(LadderDesk desk, LadderPlanner planner, ILogger<LadderWork> log) : IDisposable
{
    private readonly ConcurrentDictionary<Guid, Running> all = new();
    private readonly SemaphoreSlim one = new(1);

    /// <summary>Raised whenever something of a computation changes; on any thread.</summary>
    public event EventHandler<LadderEventArgs>? Changed;

    /// <summary>The computation for an arch; null when none is under way and the last was kept or stopped.</summary>
    public LadderTask? Of(Guid treatmentId) =>
        all.TryGetValue(treatmentId, out Running? running) ? running.Task : null;

    /// <summary>Begins a computation, unless one is under way for this arch.</summary>
    /// <param name="treatmentId">Which arch.</param>
    /// <param name="by">Who asks, for the trail.</param>
    /// <returns>Done when it is kept, failed or stopped; it never throws.</returns>
    public Task Begin(Guid treatmentId, Actor by)
    {
        var fresh = new Running();
        Running there = all.AddOrUpdate(
            treatmentId, fresh, (_, before) => before.Task.Standing == LadderStanding.Failed ? fresh : before);
        if (there == fresh)
            _ = RunAsync(treatmentId, fresh, by);
        return there.Whole;
    }

    /// <summary>Stops a computation; what was kept before stays.</summary>
    public void Stop(Guid treatmentId)
    {
        if (all.TryRemove(treatmentId, out Running? running))
            running.Cancellation.Cancel();
        Tell(treatmentId);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (Running running in all.Values)
            running.Cancellation.Cancel(); // the sources hold no timer and no handle
    }

    private async Task RunAsync(Guid treatmentId, Running running, Actor by)
    {
        CancellationToken token = running.Cancellation.Token;
        try
        {
            Tell(treatmentId);
            await one.WaitAsync(token);
            try
            {
                await ComputeAsync(treatmentId, running, by, token);
            }
            finally
            {
                one.Release();
            }

            all.TryRemove(KeyValuePair.Create(treatmentId, running));
        }
        catch (OperationCanceledException)
        {
            all.TryRemove(KeyValuePair.Create(treatmentId, running));
        }
        catch (ArgumentException cannot)
        {
            running.Task = new LadderTask(LadderStanding.Failed, 0, cannot.Message);
        }
        catch (DbUpdateException)
        {
            running.Task = new LadderTask(
                LadderStanding.Failed, 0, "Somebody else kept one at the same moment. Compute it again.");
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            LogFault(log, fault);
            running.Task = new LadderTask(
                LadderStanding.Failed, 0, "A fault of the program: nothing was computed. It is in the log.");
        }

        running.End();
        Tell(treatmentId);
    }

    private void Tell(Guid treatmentId) => Changed?.Invoke(this, new LadderEventArgs(treatmentId));

    private static readonly Action<ILogger, Exception?> LogFault = LoggerMessage.Define(
        LogLevel.Error, new EventId(1, "ladder"), "The computation of a ladder failed.");

    private async Task ComputeAsync(Guid treatmentId, Running running, Actor by, CancellationToken token)
    {
        LadderBasis basis = await desk.BasisAsync(treatmentId, token)
            ?? throw new ArgumentException("This arch carries no appliance any more.", nameof(treatmentId));
        running.Task = new LadderTask(LadderStanding.Running, 0, "");
        Tell(treatmentId);
        var progress = new Counting(count =>
        {
            running.Task = new LadderTask(LadderStanding.Running, count, "");
            Tell(treatmentId);
        });
        KeptLadder ladder = await Task.Run(() => planner.Find(basis, progress, token), token);
        token.ThrowIfCancellationRequested();
        if (!await desk.KeepAsync(treatmentId, ladder, by, token))
            throw new ArgumentException("This arch carries no appliance any more.", nameof(treatmentId));
    }

    private sealed class Running
    {
        private readonly TaskCompletionSource whole = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private volatile LadderTask task = new(LadderStanding.Waiting, 0, "");

        public CancellationTokenSource Cancellation { get; } = new();

        public Task Whole => whole.Task;

        public LadderTask Task
        {
            get => task;
            set => task = value;
        }

        public void End() => whole.TrySetResult();
    }

    private sealed class Counting(Action<int> told) : IProgress<LadderProgress>
    {
        public void Report(LadderProgress value) => told(value.Followed);
    }
}
