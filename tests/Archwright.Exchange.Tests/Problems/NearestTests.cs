using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Tests.Problems;

/// <summary>The word that was probably meant.</summary>
[Trait("basis", "law")]
public sealed class NearestTests
{
    [Theory]
    [InlineData("height", "height_mm")]
    [InlineData("heigth_mm", "height_mm")]
    [InlineData("higth_mm", "height_mm")]
    [InlineData("Width_mm", "width_mm")]
    [InlineData("frictoin", "friction")]
    [InlineData("teeth", "tooth")]
    [InlineData("colour", null)]
    [InlineData("", null)]
    public void A_key_of_a_slot(string given, string? meant) => Assert.Equal(meant, Nearest.To(given, CaseKeys.Slot.Keys));

    [Theory]
    [InlineData("center_mm", "centre_mm")]
    [InlineData("centre", "centre_mm")]
    [InlineData("outwards", "outward")]
    public void A_key_of_a_frame(string given, string meant) => Assert.Equal(meant, Nearest.To(given, CaseKeys.Frame.Keys));

    [Fact]
    public void A_known_word_is_nearest_to_itself() => Assert.All(
        CaseKeys.OfCase.SelectMany(set => set.Keys.Select(key => (key, set.Keys))),
        pair => Assert.Equal(pair.key, Nearest.To(pair.key, pair.Keys)));
}
