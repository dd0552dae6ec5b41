using Archwright.Practice.Leaflets;

namespace Archwright.Practice.Tests.Leaflets;

/// <summary>Every text of a leaflet can be read in a whole one. Rests on the list of texts.</summary>
[Trait("basis", "law")]
public sealed class SampleLeafletsTests
{
    public static TheoryData<string> Codes => [.. LeafletTexts.Codes];

    private static IEnumerable<string> Keys => LeafletTexts.EditableKeys.Where(key =>
        key != "answers" && !key.StartsWith("answers.", StringComparison.Ordinal)
        && !key.StartsWith("page.", StringComparison.Ordinal));

    [Theory, MemberData(nameof(Codes))]
    public void Every_text_of_a_leaflet_is_read_in_a_whole_one_and_framed_where_it_stands(string code)
    {
        foreach (string key in Keys)
        {
            (Leaflet leaflet, IReadOnlySet<string> here) = Of(code, key, LeafletTexts.In(code).Ours(key))!.Value;

            Assert.True(leaflet.Sections.Count >= 6, key);
            Assert.NotEmpty(here);
            Assert.All(here, line => Assert.Contains(line, leaflet.AllLines()));
        }
    }

    [Fact]
    public void Words_on_the_screen_stand_in_the_leaflet_beside_those_that_are_kept()
    {
        OwnText kept = new("en", "clean.text", "Brush well.");

        (Leaflet leaflet, IReadOnlySet<string> here) = SampleLeaflets.Of(
            new OwnText("en", "did.kept", "It stays: {wire}!"), [kept, new("en", "did.kept", "Old words.")],
            "Fernhollow", Samples.Today)!.Value;

        Assert.Contains("Brush well.", leaflet.AllLines());
        Assert.DoesNotContain(leaflet.AllLines(), line => line.Contains("Old words.", StringComparison.Ordinal));
        Assert.Contains("It stays: a round, springy wire", Assert.Single(here), StringComparison.Ordinal);
        Assert.Contains("Fernhollow", leaflet.Foot, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_that_is_left_empty_is_ours_and_one_of_no_leaflet_has_none()
    {
        Assert.Equal(["What may I eat?"], Of("en", "eat", " ")!.Value.Here);
        Assert.Null(Of("en", "page.now", "Now"));
    }

    private static (Leaflet Leaflet, IReadOnlySet<string> Here)? Of(string code, string key, string text) =>
        SampleLeaflets.Of(new OwnText(code, key, text), [], "Fernhollow", Samples.Today);
}
