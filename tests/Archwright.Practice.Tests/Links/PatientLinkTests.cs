using Archwright.Practice.Links;

namespace Archwright.Practice.Tests.Links;

/// <summary>Links to leaflets. Rests on what a private link must be.</summary>
[Trait("basis", "law")]
public sealed class PatientLinkTests
{
    [Fact]
    public void A_link_keeps_the_digest_of_its_secret_and_not_the_secret()
    {
        (PatientLink link, string secret) = Make();

        Assert.Equal(43, secret.Length); // 32 bytes, six bits a letter
        Assert.Equal(PatientLink.DigestOf(secret), link.Digest);
        Assert.DoesNotContain(secret, link.Digest, StringComparison.Ordinal);
    }

    [Fact]
    public void No_two_secrets_are_alike() =>
        Assert.Equal(1000, Enumerable.Range(0, 1000).Select(_ => Make().Secret).Distinct().Count());

    [Fact]
    public void It_holds_until_it_expires_or_is_taken_back()
    {
        (PatientLink link, _) = Make();
        (PatientLink taken, _) = Make();
        taken.Revoke(Samples.Now.AddDays(1));
        taken.Revoke(Samples.Now.AddDays(2));

        Assert.True(link.HoldsAt(Samples.Now.AddDays(30).AddSeconds(-1)));
        Assert.False(link.HoldsAt(Samples.Now.AddDays(30)));
        Assert.False(taken.HoldsAt(Samples.Now.AddDays(1)));
        Assert.Equal(Samples.Now.AddDays(1), taken.RevokedAt);
    }

    // SHA-256 of "abc" as in FIPS 180-4, example of the standard (from memory).
    [Fact, Trait("basis", "published")]
    public void The_digest_is_sha_256() => Assert.Equal(
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", PatientLink.DigestOf("abc"));

    private static (PatientLink Link, string Secret) Make() =>
        PatientLink.Make(Guid.NewGuid(), Guid.NewGuid(), 30, Samples.Orthodontist, Samples.Now);
}
