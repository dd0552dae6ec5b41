using Archwright.Practice.Advice;
using Archwright.Practice.Ladders;
using Archwright.Practice.People;
using Archwright.Storage.Desks;
using Archwright.Web.Sessions;
using Microsoft.Extensions.Logging;

namespace Archwright.Web.Keeping;

/// <summary>Where a round stands.</summary>
/// <param name="IsRunning">Whether one runs.</param>
/// <param name="Done">Arches done in it.</param>
/// <param name="Of">Arches in all.</param>
/// <param name="Told">How the last one ended, in a sentence; empty before the first.</param>
public sealed record RoundState(bool IsRunning, int Done, int Of, string Told);

/// <summary>Computes the ladders of all arches whose ladder is missing or stale, one after the other, in the
/// background. Each is kept as soon as it is done: a round that is stopped goes on where it stood.</summary>
/// <param name="desk">What is due.</param>
/// <param name="work">Computes one and keeps it.</param>
/// <param name="planner">Knows the policy.</param>
/// <param name="log">For whoever runs the server; no patient is named.</param>
public sealed class LadderRound(LadderDesk desk, LadderWork work, LadderPlanner planner, ILogger<LadderRound> log)
{
    private readonly Lock gate = new();
    private Task running = Task.CompletedTask;
    private Guid? current;
    private bool stopped;

    /// <summary>Where it stands.</summary>
    public RoundState State { get; private set; } = new(false, 0, 0, "");

    /// <summary>Told after each arch, from any thread.</summary>
    public event EventHandler? Changed;

    /// <summary>Begins a round, unless one runs.</summary>
    /// <param name="by">Who asks, for the trail.</param>
    /// <returns>The round; it never fails.</returns>
    public Task Begin(Actor by)
    {
        lock (gate)
        {
            if (!running.IsCompleted)
                return running;

            (stopped, State) = (false, new RoundState(true, 0, 0, ""));
            running = Task.Run(() => RunAsync(by));
            return running;
        }
    }

    /// <summary>Stops a round that runs, within a second or so; what is done is kept.</summary>
    public void Stop()
    {
        Guid? arch;
        lock (gate)
            (stopped, arch) = (true, current);
        if (arch is { } one)
            work.Stop(one);
    }

    private async Task RunAsync(Actor by)
    {
        try
        {
            Guid[] due =
            [
                .. (await desk.OpenAsync(planner.PolicyVersion, ProgramVersion.Text)).Where(one => one.IsDue)
                    .Select(one => one.Treatment.Id),
            ];
            Tell(new RoundState(true, 0, due.Length, ""));
            for (int done = 0; done < due.Length; done++)
            {
                lock (gate)
                {
                    if (stopped)
                        break;

                    current = due[done];
                }

                await work.Begin(due[done], by);
                Tell(State with { Done = done + (stopped ? 0 : 1) });
            }

            Tell(State with { IsRunning = false, Told = stopped ? "Stopped. What was done is kept." : "Done." });
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            Failed(log, fault);
            Tell(State with
            {
                IsRunning = false, Told = "It ended in a fault of ours. What was done is kept; begin again.",
            });
        }
    }

    private void Tell(RoundState state)
    {
        State = state;
        Changed?.Invoke(this, EventArgs.Empty);
    }

    private static readonly Action<ILogger, Exception?> Failed = LoggerMessage.Define(
        LogLevel.Error, new EventId(1, "ladders"), "The ladders of the arches in treatment could not be computed.");
}
