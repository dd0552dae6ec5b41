using Archwright.Cli.Running;
using Archwright.Dentition.Catalogue;

namespace Archwright.Cli.Tests.Running;

public sealed class WireNamesTests
{
    [Theory, Trait("basis", "ours")]
    [InlineData("ss-019x025")]
    [InlineData("SS-019X025")]
    [InlineData("ss 019x025")]
    [InlineData("ss .019x.025")]
    [InlineData("ss-0.019x0.025")]
    [InlineData("ss 19×25")]
    [InlineData("ss 0.019 × 0.025 in")]
    public void A_size_may_be_spelled_as_people_speak_it(string typed) =>
        Assert.Equal("ss-019x025", WireNames.Find(WireCatalogue.Default, typed).Id);

    [Theory, Trait("basis", "ours")]
    [InlineData("ss 16", "ss-016")]
    [InlineData("cuniti35 014", "cuniti35-014")]
    [InlineData("ss 0.0215x0.028", "ss-0215x028")]
    [InlineData("ss 21.5x28", "ss-0215x028")]
    public void Round_wires_and_half_thousandths_too(string typed, string id) =>
        Assert.Equal(id, WireNames.Find(WireCatalogue.Default, typed).Id);

    [Fact, Trait("basis", "ours")]
    public void Every_wire_of_the_catalogue_is_found_by_its_id() =>
        Assert.All(WireCatalogue.Default.Wires, wire =>
            Assert.Same(wire, WireNames.Find(WireCatalogue.Default, wire.Id)));

    [Fact, Trait("basis", "ours")]
    public void An_unknown_wire_is_refused_with_its_neighbours()
    {
        Refusal refusal = Assert.Throws<Refusal>(() => WireNames.Find(WireCatalogue.Default, "ss-019x026"));

        Assert.Equal(ExitCode.BadInput, refusal.Code);
        Assert.Contains("ss-019x025", refusal.Complaints[0].Mend, StringComparison.Ordinal);
    }
}
