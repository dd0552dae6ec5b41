using Archwright.Practice.Clients;

namespace Archwright.Practice.Tests.Clients;

/// <summary>Tokens of other programs. Rests on what a token must be.</summary>
[Trait("basis", "law")]
public sealed class ApiClientTests
{
    [Fact]
    public void A_client_keeps_the_digest_of_its_token_and_not_the_token()
    {
        (ApiClient client, string token) = Make();

        Assert.StartsWith(ApiClient.Mark, token, StringComparison.Ordinal);
        Assert.Equal(ApiClient.Mark.Length + 43, token.Length); // 32 bytes, six bits a letter
        Assert.Equal(ApiClient.DigestOf(token), client.Digest);
        Assert.NotEqual(Make().Token, token);
    }

    [Fact]
    public void It_holds_until_it_expires_or_is_taken_back()
    {
        (ApiClient client, _) = Make();
        (ApiClient taken, _) = Make();
        taken.Revoke(Samples.Now.AddDays(1));
        taken.Revoke(Samples.Now.AddDays(2));

        Assert.True(client.HoldsAt(Samples.Now.AddDays(30).AddSeconds(-1)));
        Assert.False(client.HoldsAt(Samples.Now.AddDays(30)));
        Assert.False(taken.HoldsAt(Samples.Now.AddDays(1)));
        Assert.Equal(Samples.Now.AddDays(1), taken.RevokedAt);
    }

    [Fact]
    public void A_scope_that_is_given_twice_is_held_once_and_each_has_its_word()
    {
        (ApiClient client, _) = ApiClient.Make(
            " Lab ", [ApiScope.Visits, ApiScope.Compute, ApiScope.Visits], 1, Samples.Orthodontist, Samples.Now);

        Assert.Equal([ApiScope.Compute, ApiScope.Visits], client.Scopes);
        Assert.Equal("Lab", client.Name);
        Assert.Equal(ApiScopes.All.Count, ApiScopes.All.Select(scope => scope.Word()).Distinct().Count());
    }

    private static (ApiClient Client, string Token) Make() =>
        ApiClient.Make("Lab", [ApiScope.Compute], 30, Samples.Orthodontist, Samples.Now);
}
