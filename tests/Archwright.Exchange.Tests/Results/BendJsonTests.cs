using System.Text.Json.Nodes;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Results;
using Archwright.Exchange.Tests.Schemas;
using Archwright.Mechanics.Bench;

namespace Archwright.Exchange.Tests.Results;

/// <summary>A bend, as a file.</summary>
public sealed class BendJsonTests
{
    /// <summary>The path is that of the reference set, superelastic_history, as far as its cold drink: 1.6782, 0.97518
    /// and 0.96998 N, uncertainty 0.1 %.</summary>
    [Fact, Trait("basis", "independent")]
    public void A_bend_with_a_cold_drink_follows_its_schema_and_the_reference()
    {
        BendCase test = Texts.ReadBend(Texts.Bend).Value!;

        JsonNode written = Written(BendTest.Run(test.Wire, test.Span, test.Temperature, test.Path));

        Assert.Empty(Schema.Load("archwright-bend-1").Errors(written));
        Assert.Equal(
            ["format", "readings", "force_at_top_N", "residual_mm"],
            written.AsObject().Select(member => member.Key));
        JsonArray readings = written["readings"]!.AsArray();
        Assert.Equal([3.0, 2, 2], readings.Select(r => r!["deflection_mm"]!.GetValue<double>()));
        Assert.Equal([36.0, 36, 10], readings.Select(r => r!["temperature_degC"]!.GetValue<double>()));
        double[] expected = [1.6782, 0.97518, 0.96998];
        for (int i = 0; i < expected.Length; i++)
            Assert.Equal(expected[i], readings[i]!["force_N"]!.GetValue<double>(), 0.006);
        Assert.Equal(1.6782, written["force_at_top_N"]!.GetValue<double>(), 0.006);
    }

    private static JsonNode Written(BendResult bend)
    {
        using var stream = new MemoryStream();
        BendJson.Write(bend, stream);
        return JsonNode.Parse(stream.ToArray())!;
    }
}
