using Archwright.Practice.People;
using Microsoft.Extensions.Hosting;

namespace Archwright.Web.Keeping;

/// <summary>Works out ladders that are out of date once a night, so that the shelf is planned by what the day has
/// changed.</summary>
/// <param name="round">Does it.</param>
/// <param name="clock">The time.</param>
public sealed class NightlyLadders(LadderRound round, TimeProvider clock) : BackgroundService
{
    // In the trail: nobody asked.
    private static readonly Actor Program = new(Guid.Empty, "Archwright, at night", StaffRole.Assistant);

    private static readonly TimeSpan Look = TimeSpan.FromMinutes(10);

    // Common practice, no source: nobody treats at these hours.
    private static readonly TimeOnly From = new(2, 0);
    private static readonly TimeOnly To = new(5, 0);

    /// <summary>Whether a round is to begin.</summary>
    /// <param name="now">Local time.</param>
    /// <param name="last">Day of the last one; null before the first.</param>
    public static bool IsTime(DateTime now, DateOnly? last) =>
        TimeOnly.FromDateTime(now) is var time && time >= From && time < To && last != DateOnly.FromDateTime(now);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        DateOnly? last = null;
        using var timer = new PeriodicTimer(Look, clock);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            DateTime now = clock.GetLocalNow().DateTime;
            if (!IsTime(now, last))
                continue;

            last = DateOnly.FromDateTime(now);
            await round.Begin(Program);
        }
    }
}
