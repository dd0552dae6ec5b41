using Archwright.Practice.Leaflets;
using Archwright.Practice.Links;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>What lies behind a patient's link: one leaflet and the patient's own diary since its visit. There is no way
/// from here to anything else.</summary>
/// <param name="Leaflet">What was released.</param>
/// <param name="Pictures">What is shown beside it.</param>
/// <param name="Diary">What the patient has noted since, oldest first.</param>
/// <param name="Today">The day.</param>
public sealed record BehindTheLink(
    Leaflet Leaflet, LeafletPictures Pictures, IReadOnlyList<DiscomfortDay> Diary, DateOnly Today);

/// <summary>The one door that opens without a sign-in, for whoever holds a link.</summary>
/// <param name="contexts">Makes a context for each look.</param>
/// <param name="clock">The time.</param>
public sealed class PatientDoor(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    // More fingers than two on one day's number at one instant are not to be expected; a database that refuses for
    // another reason is heard after these.
    private const int MostAttempts = 4;

    /// <summary>Opens a link.</summary>
    /// <returns>Null for a link that was never made, has expired or was taken back: which of them is not told.
    /// </returns>
    public async Task<BehindTheLink?> OpenAsync(string secret, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        if (await HoldingAsync(db, secret, cancellation) is not { } link)
            return null;

        ReleasedLeaflet leaflet =
            await db.Leaflets.AsNoTracking().SingleAsync(one => one.Id == link.LeafletId, cancellation);
        DateOnly from = leaflet.Leaflet.Day;
        List<DiscomfortDay> diary = await db.Discomfort.AsNoTracking()
            .Where(one => one.PatientId == link.PatientId && one.Day >= from)
            .OrderBy(one => one.Day).ToListAsync(cancellation);
        return new BehindTheLink(leaflet.Leaflet, leaflet.Pictures, diary, Today);
    }

    /// <summary>Notes how much it hurt on a day; a second word on the same day takes the first one's place, also where
    /// both come at the same instant, as two taps on a slow line do.</summary>
    /// <returns>False when the link does not hold.</returns>
    /// <exception cref="Archwright.Practice.Rules.RuleBrokenException">The score is not 0 to 10, or the day is to come
    /// or long ago.</exception>
    public async Task<bool> NoteAsync(
        string secret, DateOnly day, int score, CancellationToken cancellation = default)
    {
        for (int attempt = 1; ; attempt++)
        {
            try
            {
                return await NoteOnceAsync(secret, day, score, cancellation);
            }
            catch (DbUpdateException) when (attempt < MostAttempts)
            {
                // Somebody noted the same day between our look and our word. Looked at again, the day is there.
            }
        }
    }

    private async Task<bool> NoteOnceAsync(
        string secret, DateOnly day, int score, CancellationToken cancellation)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        if (await HoldingAsync(db, secret, cancellation) is not { } link)
            return false;

        DateTimeOffset now = clock.GetLocalNow();
        DiscomfortDay? noted = await db.Discomfort.FirstOrDefaultAsync(
            one => one.PatientId == link.PatientId && one.Day == day, cancellation);
        if (noted is null)
            db.Discomfort.Add(DiscomfortDay.Note(link.PatientId, day, score, now.ToUniversalTime()));
        else
            noted.Say(score, now.ToUniversalTime());

        await db.SaveChangesAsync(cancellation);
        return true;
    }

    private DateOnly Today => DateOnly.FromDateTime(clock.GetLocalNow().DateTime);

    private async Task<PatientLink?> HoldingAsync(
        PracticeContext db, string secret, CancellationToken cancellation)
    {
        string digest = PatientLink.DigestOf(secret);
        PatientLink? link =
            await db.Links.AsNoTracking().FirstOrDefaultAsync(one => one.Digest == digest, cancellation);
        return link?.HoldsAt(clock.GetUtcNow()) == true ? link : null;
    }
}
