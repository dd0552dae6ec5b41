using System.Text.Json.Nodes;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Results;
using Archwright.Exchange.Tests.Schemas;

namespace Archwright.Exchange.Tests.Results;

/// <summary>A twist test, as a file.</summary>
public sealed class TwistJsonTests
{
    private static readonly TwistCase Test = Texts.ReadTwist(Texts.Twist).Value!;

    [Fact, Trait("basis", "docs")]
    public void A_twist_test_follows_its_schema_and_has_the_keys_of_the_contract()
    {
        JsonNode written = Written(Test, [0, 0, 9.158, 43.352]);

        Assert.Empty(Schema.Load("archwright-twist-1").Errors(written));
        Assert.Equal(
            ["format", "readings", "play_deg", "compliance_deg_per_N_mm", "area_mm2",
                "second_moment_over_thickness_mm4",
                "second_moment_over_width_mm4",
                "torsion_constant_mm4"],
            written.AsObject().Select(member => member.Key));
        Assert.Equal([5.0, 10, 20, 30], written["readings"]!.AsArray()
            .Select(r => r!["twist_deg"]!.GetValue<double>()));
        Assert.Equal([0, 0, 9.158, 43.352], written["readings"]!.AsArray()
            .Select(r => r!["torque_N_mm"]!.GetValue<double>()));
    }

    /// <summary>Reference set, torsion-019x025-in-022-steel: printed to six digits.</summary>
    [Fact, Trait("basis", "independent")]
    public void Play_and_constants_of_the_section_are_those_of_the_reference_set()
    {
        JsonNode written = Written(Test, [0, 0, 0, 0]);

        Assert.Equal(8.6608, written["play_deg"]!.GetValue<double>(), 5e-5);
        Assert.Equal(0.304305, written["area_mm2"]!.GetValue<double>(), 1e-6);
        Assert.Equal(0.00583393, written["second_moment_over_thickness_mm4"]!.GetValue<double>(), 1e-8);
        Assert.Equal(0.0100958, written["second_moment_over_width_mm4"]!.GetValue<double>(), 1e-7);
        Assert.Equal(0.0127343, written["torsion_constant_mm4"]!.GetValue<double>(), 2e-6);
    }

    [Fact, Trait("basis", "law")]
    public void A_round_wire_never_locks_and_has_no_play_to_write()
    {
        TwistCase round = Texts.ReadTwist(
            Texts.Edited(Texts.Twist, c => c["wire"] = Texts.Json("""{ "catalogue": "ss-016" }"""))).Value!;

        JsonNode written = Written(round, [0, 0, 0, 0]);

        Assert.True(written.AsObject().ContainsKey("play_deg") && written["play_deg"] is null);
        Assert.Empty(Schema.Load("archwright-twist-1").Errors(written));
    }

    [Fact, Trait("basis", "law")]
    public void One_torque_a_twist_is_wanted_and_finite_ones_alone()
    {
        Assert.Throws<ArgumentException>(() => TwistJson.Write(Test, [0, 0, 0], Stream.Null));
        Assert.Throws<ArgumentOutOfRangeException>(() => TwistJson.Write(Test, [0, 0, 0, double.NaN], Stream.Null));
    }

    private static JsonNode Written(TwistCase test, double[] torques)
    {
        using var stream = new MemoryStream();
        TwistJson.Write(test, torques, stream);
        return JsonNode.Parse(stream.ToArray())!;
    }
}
