using Archwright.Dentition.Catalogue;
using Archwright.Exchange.CaseFiles;

namespace Archwright.Exchange.Tests.CaseFiles;

/// <summary>Bend cases.</summary>
[Trait("basis", "docs")]
public sealed class BendCaseReaderTests
{
    [Fact]
    public void A_wire_of_the_catalogue_has_its_whole_law()
    {
        BendCase read = Texts.ReadBend(
            Texts.Edited(Texts.Bend, c => c["wire"] = Texts.Json("""{ "catalogue": "niti-016" }"""))).Value!;

        Assert.True(WireCatalogue.Default.TryFind("niti-016", out CatalogueWire? wire));
        Assert.Equal(wire.WholeWire, read.Wire);
        Assert.NotEqual(wire.Wire, read.Wire);
    }

    [Theory]
    [InlineData("\"to_mm\": 3,", "\"to_mm\": 5,", "AW-BEND-001", "path[0].to_mm")]
    [InlineData("\"to_mm\": 3,", "\"to_mn\": 3,", "AW-KEY-001", "path[0].to_mn")]
    [InlineData("{ \"temperature_degC\": 10 }", "{ \"temperature_degC\": 100 }", "AW-VALUE-002",
        "path[2].temperature_degC")]
    [InlineData("\"span_mm\": 10", "\"span_mm\": 0.4", "AW-VALUE-002", "span_mm")]
    [InlineData("\"forward_start_MPa\": 430", "\"forward_start_MPa\": 530", "AW-ALLOY-004",
        "wire.alloy.forward_finish_MPa")]
    [InlineData("\"reverse_finish_MPa\": 160", "\"reverse_finish_MPa\": -450", "AW-ALLOY-004",
        "wire.alloy.reverse_finish_MPa")]
    public void What_cannot_be_is_told_with_its_path(string passage, string by, string code, string path)
    {
        var read = Texts.ReadBend(Texts.Replaced(Texts.Bend, passage, by));

        Assert.Null(read.Value);
        Assert.Contains(read.Problems, problem => problem.Code == code && problem.Path == path);
    }

    [Fact]
    public void The_path_may_not_be_empty_and_a_bend_has_no_bent_wire()
    {
        Assert.NotEmpty(Texts.ReadBend(Texts.Edited(Texts.Bend, c => c["path"] = Texts.Json("[]"))).Problems);
        Assert.NotEmpty(Texts.ReadBend(Texts.Edited(Texts.Bend, c => c["wire"]!["ends"] = "cinched")).Problems);
    }
}
