using System.Text.Json;
using Archwright.Practice.Tests;
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
