using Archwright.Practice.Audit;
using Archwright.Practice.People;
using Archwright.Practice.Settings;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;

namespace Archwright.Storage.Desks;

/// <summary>What the practice has settled, read once and changed here.</summary>
/// <param name="database">Where it is kept.</param>
/// <param name="settled">What was settled when the program started.</param>
/// <param name="clock">The time of audit lines.</param>
public sealed class SettingsDesk(PracticeDatabase database, PracticeSettings settled, TimeProvider clock)
{
    /// <summary>What is settled now. Pages that are opened from now on show it.</summary>
    public PracticeSettings Settled { get; private set; } = settled;

    /// <summary>Settles something else. Whether the practice is a demo cannot be changed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Minutes or years that cannot be.</exception>
    public async Task SettleAsync(PracticeSettings settings, Actor by, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(settings.SessionMinutes, PracticeSettings.ShortestSession);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(settings.SessionMinutes, PracticeSettings.LongestSession);
        PracticeSettings kept = settings with { IsDemo = Settled.IsDemo };
        await database.SettleAsync(kept, cancellation);
        await using PracticeContext db = database.CreateDbContext();
        db.Trail.Add(AuditLine.Of(by, clock.GetUtcNow(), AuditAct.Changed, null, "settings"));
        await db.SaveChangesAsync(cancellation);
        Settled = kept;
    }
}
