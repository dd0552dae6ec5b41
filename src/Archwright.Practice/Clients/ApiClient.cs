using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Values;

namespace Archwright.Practice.Clients;

/// <summary>Another program that may ask the API, and what for. Its token is made by chance and is not kept: only its
/// digest is, so that the records alone open nothing.</summary>
public sealed class ApiClient
{
    /// <summary>Longest life of a token [days].</summary>
    public const int MostDays = 366;

    /// <summary>What every token begins with, so that one that was left somewhere is known for what it is.</summary>
    public const string Mark = "awt_";

    // 256 bits: nobody guesses one, however long they try.
    private const int SecretBytes = 32;

    private ApiClient()
    {
    }

    /// <summary>Identity.</summary>
    public Guid Id { get; private set; }

    /// <summary>What the practice calls the other program.</summary>
    public string Name { get; private set; } = "";

    /// <summary>What it may ask for.</summary>
    public Listing<ApiScope> Scopes { get; private set; } = Listing<ApiScope>.Empty;

    /// <summary>SHA-256 of the token, in hexadecimal.</summary>
    public string Digest { get; private set; } = "";

    /// <summary>Who made it.</summary>
    public string MadeBy { get; private set; } = "";

    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; private set; }

    /// <summary>From when on it is refused.</summary>
    public DateTimeOffset ExpiresAt { get; private set; }

    /// <summary>When it was taken back; null while it holds.</summary>
    public DateTimeOffset? RevokedAt { get; private set; }

    /// <summary>Day on which it was last used; null when never.</summary>
    public DateOnly? LastUsedOn { get; private set; }

    /// <summary>Makes a client.</summary>
    /// <param name="name">What the practice calls the other program.</param>
    /// <param name="scopes">What it may ask for; one at least.</param>
    /// <param name="days">How long its token holds, 1 to <see cref="MostDays"/>.</param>
    /// <param name="by">Who makes it; an orthodontist.</param>
    /// <param name="at">When.</param>
    /// <returns>The client, and its token, which is told this once.</returns>
    /// <exception cref="RuleBrokenException">Not an orthodontist, no name, no scope, or too long a life.</exception>
    public static (ApiClient Client, string Token) Make(
        string name, IEnumerable<ApiScope> scopes, int days, Actor by, DateTimeOffset at)
    {
        Listing<ApiScope> given = Listing<ApiScope>.Of(scopes.Distinct().Order());
        PracticeRules.OnlyAnOrthodontistLetsAProgramIn.Keep(
            by.Role == StaffRole.Orthodontist, $"{by.Name} cannot make tokens; an orthodontist does.");
        PracticeRules.ATokenSaysForWhomWhatAndHowLong.Keep(
            name.Trim().Length is > 0 and <= 100, "Give the other program a name, up to 100 letters.");
        PracticeRules.ATokenSaysForWhomWhatAndHowLong.Keep(
            given.Count > 0, "Choose at least one thing that the program may do.");
        PracticeRules.ATokenSaysForWhomWhatAndHowLong.Keep(
            days is >= 1 and <= MostDays, $"A token holds between 1 and {MostDays} days. Give a number of days.");
        string token = Mark + Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(SecretBytes));
        var client = new ApiClient
        {
            Id = Guid.CreateVersion7(at),
            Name = name.Trim(),
            Scopes = given,
            Digest = DigestOf(token),
            MadeBy = by.Name,
            MadeAt = at,
            ExpiresAt = at.AddDays(days),
        };
        return (client, token);
    }

    /// <summary>The digest of a token.</summary>
    public static string DigestOf(string token) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));

    /// <summary>True while the token is taken.</summary>
    public bool HoldsAt(DateTimeOffset now) => RevokedAt is null && now < ExpiresAt;

    /// <summary>Takes the token back; a second time changes nothing.</summary>
    public void Revoke(DateTimeOffset at) => RevokedAt ??= at;

    /// <summary>Notes that it was used.</summary>
    /// <returns>True when that was not known yet.</returns>
    public bool Used(DateOnly day)
    {
        bool isNew = LastUsedOn != day;
        LastUsedOn = day;
        return isNew;
    }

    /// <summary>The client as audit lines name it.</summary>
    public Actor ToActor() => new(Id, $"{Name} (program)", StaffRole.Reception);
}
