using Archwright.Practice.Audit;
using Archwright.Practice.Leaflets;
using Archwright.Practice.People;
using Archwright.Practice.Values;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>Words of the practice as they are kept.</summary>
/// <param name="Words">The words.</param>
/// <param name="ChangedBy">Who wrote them last.</param>
/// <param name="ChangedAt">When.</param>
public sealed record KeptText(OwnText Words, string ChangedBy, DateTimeOffset ChangedAt);

/// <summary>Where the practice's own words in leaflets, answers and the patient's page are kept. Each change leaves an
/// audit line. Leaflets that were released before stay as they were.</summary>
/// <param name="contexts">Makes a context for each act.</param>
/// <param name="clock">The time.</param>
public sealed class TextDesk(IDbContextFactory<PracticeContext> contexts, TimeProvider clock)
{
    /// <summary>All words of the practice.</summary>
    public async Task<Listing<OwnText>> OwnAsync(CancellationToken cancellation = default) =>
        Listing<OwnText>.Of((await KeptAsync(cancellation)).Select(one => one.Words));

    /// <summary>All words of the practice, and who wrote them.</summary>
    public async Task<IReadOnlyList<KeptText>> KeptAsync(CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        return await db.OwnTexts.AsNoTracking().OrderBy(one => one.Language).ThenBy(one => one.Key)
            .Select(one => new KeptText(
                new OwnText(one.Language, one.Key, one.Text), one.ChangedBy, one.ChangedAt))
            .ToListAsync(cancellation);
    }

    /// <summary>Keeps words of the practice in place of ours, where they can be kept.</summary>
    /// <returns>What was found of them; where it has faults, nothing was kept.</returns>
    /// <exception cref="DbUpdateException">Somebody else changed the same text at the same moment.</exception>
    public async Task<OwnTextCheck> KeepAsync(OwnText words, Actor by, CancellationToken cancellation = default)
    {
        OwnTextCheck check = OwnTextCheck.Of(words.Language, words.Key, words.Text);
        if (!check.IsGood)
            return check;

        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        DateTimeOffset now = clock.GetUtcNow();
        if (await FindAsync(db, words.Language, words.Key, cancellation) is { } row)
        {
            (row.Text, row.ChangedBy, row.ChangedAt) = (words.Text.Trim(), by.Name, now);
        }
        else
        {
            db.OwnTexts.Add(new OwnTextRow
            {
                Language = words.Language,
                Key = words.Key,
                Text = words.Text.Trim(),
                ChangedBy = by.Name,
                ChangedAt = now,
            });
        }

        string caution = check.Cautions.Count > 0 ? ", with a caution shown" : "";
        db.Trail.Add(AuditLine.Of(by, now, AuditAct.Changed, null, Subject(words.Language, words.Key) + caution));
        await db.SaveChangesAsync(cancellation);
        return check;
    }

    /// <summary>Goes back to our words; where there are no others nothing is done.</summary>
    public async Task GoBackAsync(string language, string key, Actor by, CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        if (await FindAsync(db, language, key, cancellation) is not { } row)
            return;

        db.OwnTexts.Remove(row);
        db.Trail.Add(AuditLine.Of(
            by, clock.GetUtcNow(), AuditAct.Changed, null, Subject(language, key) + ", back to ours"));
        await db.SaveChangesAsync(cancellation);
    }

    private static Task<OwnTextRow?> FindAsync(
        PracticeContext db, string language, string key, CancellationToken cancellation) =>
        db.OwnTexts.FirstOrDefaultAsync(one => one.Language == language && one.Key == key, cancellation);

    private static string Subject(string language, string key) =>
        $"text {key} in {LeafletTexts.In(language).EnglishName}";
}
