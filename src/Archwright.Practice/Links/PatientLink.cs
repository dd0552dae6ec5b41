using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Archwright.Practice.People;
using Archwright.Practice.Rules;

namespace Archwright.Practice.Links;

/// <summary>A private way to one released leaflet, for whoever holds the link. The link's secret is made by chance and
/// is not kept: only its digest is, so that the records alone open nothing.</summary>
public sealed class PatientLink
{
    /// <summary>Longest life of a link [days]. Common practice, no source: two long intervals between visits.</summary>
    public const int MostDays = 180;

    // 256 bits: nobody guesses one, however long they try.
    private const int SecretBytes = 32;

    private PatientLink()
    {
    }

    /// <summary>Identity.</summary>
    public Guid Id { get; private set; }

    /// <summary>Whose.</summary>
    public Guid PatientId { get; private set; }

    /// <summary>The released leaflet that it leads to.</summary>
    public Guid LeafletId { get; private set; }

    /// <summary>SHA-256 of the secret, in hexadecimal.</summary>
    public string Digest { get; private set; } = "";

    /// <summary>Who made it.</summary>
    public string MadeBy { get; private set; } = "";

    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; private set; }

    /// <summary>From when on it is refused.</summary>
    public DateTimeOffset ExpiresAt { get; private set; }

    /// <summary>When it was taken back; null while it holds.</summary>
    public DateTimeOffset? RevokedAt { get; private set; }

    /// <summary>Makes a link.</summary>
    /// <param name="patient">Whose.</param>
    /// <param name="leaflet">The released leaflet.</param>
    /// <param name="days">How long it holds, 1 to <see cref="MostDays"/>.</param>
    /// <param name="by">Who makes it.</param>
    /// <param name="at">When.</param>
    /// <returns>The link, and its secret, which is told this once.</returns>
    /// <exception cref="RuleBrokenException">The life is too long or none.</exception>
    public static (PatientLink Link, string Secret) Make(
        Guid patient, Guid leaflet, int days, Actor by, DateTimeOffset at)
    {
        PracticeRules.ALinkEnds.Keep(
            days is >= 1 and <= MostDays, $"A link holds between 1 and {MostDays} days. Give a number of days.");
        string secret = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(SecretBytes));
        var link = new PatientLink
        {
            Id = Guid.CreateVersion7(at),
            PatientId = patient,
            LeafletId = leaflet,
            Digest = DigestOf(secret),
            MadeBy = by.Name,
            MadeAt = at,
            ExpiresAt = at.AddDays(days),
        };
        return (link, secret);
    }

    /// <summary>The digest of a secret.</summary>
    public static string DigestOf(string secret) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    /// <summary>True while the link opens the page.</summary>
    public bool HoldsAt(DateTimeOffset now) => RevokedAt is null && now < ExpiresAt;

    /// <summary>Takes the link back; a second time changes nothing.</summary>
    public void Revoke(DateTimeOffset at) => RevokedAt ??= at;
}
