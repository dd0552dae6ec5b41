using Archwright.Practice.Audit;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Links;
using Archwright.Practice.People;
using Archwright.Practice.Visits;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>Where leaflets are released and links to them are made and taken back. Each act leaves an audit
/// line.</summary>
/// <param name="contexts">Makes a context for each act.</param>
/// <param name="clock">The time.</param>
public sealed class LeafletDesk(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    /// <summary>Releases a leaflet. Links to an earlier one of the same visit go on leading to that.</summary>
    /// <exception cref="Archwright.Practice.Rules.RuleBrokenException">The visit is not signed, or somebody else than
    /// an orthodontist asks.</exception>
    public async Task<ReleasedLeaflet> ReleaseAsync(
        Guid visitId, Leaflet leaflet, LeafletPictures pictures, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        Visit visit = await db.Visits.AsNoTracking().SingleAsync(one => one.Id == visitId, cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        ReleasedLeaflet released = ReleasedLeaflet.Release(visit, leaflet, pictures, by, now);
        db.Leaflets.Add(released);
        db.Trail.Add(AuditLine.Of(
            by, now, AuditAct.Released, visit.PatientId,
            $"leaflet of {visit.Day:yyyy-MM-dd} in {LeafletTexts.In(leaflet.Language).EnglishName}"));
        await db.SaveChangesAsync(cancellation);
        return released;
    }

    /// <summary>The leaflets released for a visit, newest first.</summary>
    public async Task<IReadOnlyList<ReleasedLeaflet>> OfVisitAsync(
        Guid visitId, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Leaflets.AsNoTracking().Where(one => one.VisitId == visitId)
            .OrderByDescending(one => one.ReleasedAt).ToListAsync(cancellation);
    }

    /// <summary>Makes a link to a released leaflet.</summary>
    /// <returns>The link, and its secret, which is told this once.</returns>
    /// <exception cref="Archwright.Practice.Rules.RuleBrokenException">The life is too long or none.</exception>
    public async Task<(PatientLink Link, string Secret)> LinkAsync(
        Guid leafletId, int days, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        ReleasedLeaflet leaflet =
            await db.Leaflets.AsNoTracking().SingleAsync(one => one.Id == leafletId, cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        (PatientLink link, string secret) = PatientLink.Make(leaflet.PatientId, leafletId, days, by, now);
        db.Links.Add(link);
        db.Trail.Add(AuditLine.Of(
            by, now, AuditAct.Added, leaflet.PatientId, $"patient's link until {link.ExpiresAt:yyyy-MM-dd}"));
        await db.SaveChangesAsync(cancellation);
        return (link, secret);
    }

    /// <summary>The links of a patient, newest first.</summary>
    public async Task<IReadOnlyList<PatientLink>> LinksAsync(Guid patient, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Links.AsNoTracking().Where(one => one.PatientId == patient)
            .OrderByDescending(one => one.MadeAt).ToListAsync(cancellation);
    }

    /// <summary>Takes a link back.</summary>
    public async Task RevokeAsync(Guid linkId, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        PatientLink link = await db.Links.SingleAsync(one => one.Id == linkId, cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        link.Revoke(now);
        db.Trail.Add(AuditLine.Of(by, now, AuditAct.Revoked, link.PatientId, "patient's link"));
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>What patients have noted from a day on, oldest first.</summary>
    public async Task<IReadOnlyList<DiscomfortDay>> DiaryAsync(
        Guid patient, DateOnly from, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Discomfort.AsNoTracking().Where(one => one.PatientId == patient && one.Day >= from)
            .OrderBy(one => one.Day).ToListAsync(cancellation);
    }
}
