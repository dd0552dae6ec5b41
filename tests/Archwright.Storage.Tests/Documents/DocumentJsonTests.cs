using System.Text.Json;
using System.Text.Json.Nodes;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
using Archwright.Practice.Tests;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Documents;

namespace Archwright.Storage.Tests.Documents;

/// <summary>What is written is what is read. Rests on the round trip.</summary>
[Trait("basis", "law")]
public sealed class DocumentJsonTests
{
    [Fact]
    public void A_visit_is_read_as_it_was_written()
    {
        string json = DocumentJson.Write(Samples.Complete);

        Assert.Equal(Samples.Complete, DocumentJson.Read<VisitContent>(json));
        Assert.Equal(json, DocumentJson.Write(DocumentJson.Read<VisitContent>(json)));
    }

    [Fact]
    public void An_advice_is_read_whole_and_one_of_an_earlier_program_is_still_read()
    {
        VisitContent whole = Samples.With(arch => arch with
        {
            Advised = Samples.Advice() with
            {
                Because = "Nearly full.",
                Interval = new AdvisedInterval(5, 6, 8),
                PartialTies = Listing<ToothNumber>.Of([ToothNumber.FromIso(13)]),
                Missing = Listing<string>.Of(["Ask."]),
            },
        });
        Assert.Equal(whole, DocumentJson.Read<VisitContent>(DocumentJson.Write(whole)));
        VisitContent bare = Samples.With(arch => arch with
        {
            Bare = ToothMap<BareTooth>.Empty.With(ToothNumber.FromIso(12), BareTooth.NotBonded),
        });
        Assert.Contains("\"bare\":{\"12\":\"not-bonded\"}", DocumentJson.Write(bare), StringComparison.Ordinal);
        Assert.Equal(bare, DocumentJson.Read<VisitContent>(DocumentJson.Write(bare)));

        JsonNode earlier = JsonNode.Parse(DocumentJson.Write(Samples.Complete))!;
        JsonObject advice = earlier["upper"]!["advised"]!.AsObject();
        foreach (string member in new[] { "because", "partial_ties", "missing" })
            Assert.True(advice.Remove(member), member);
        Assert.True(advice["inputs"]!.AsObject().Remove("bare"));
        foreach (JsonNode? option in advice["options"]!.AsArray())
        {
            foreach (string member in new[] { "why_not", "findings", "ties_with_first" })
                Assert.True(option!.AsObject().Remove(member), member);
        }

        Assert.Equal(Samples.Complete, DocumentJson.Read<VisitContent>(earlier.ToJsonString()));
    }

    [Fact]
    public void Words_and_units_stand_in_the_text_so_that_people_can_read_it()
    {
        string json = DocumentJson.Write(Samples.Complete);

        Assert.Contains("\"13\":{", json, StringComparison.Ordinal);
        Assert.Contains("\"occlusal_mm\":-1", json, StringComparison.Ordinal);
        Assert.Contains("\"right_end\":\"cinched\"", json, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"upper":{"ties":{"99":"steel"}}}""")]
    [InlineData("""{"upper":{"ties":{"13":"glue"}}}""")]
    [InlineData("""{"upper":{"ties":{"13":2}}}""")]
    [InlineData("""{"colour":"red"}""")]
    [InlineData("null")]
    public void A_damaged_document_is_refused_and_never_half_read(string json) =>
        Assert.Throws<JsonException>(() => DocumentJson.Read<VisitContent>(json));
}
