using System.Text.Json.Nodes;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Results;
using Archwright.Exchange.Tests.Schemas;

namespace Archwright.Exchange.Tests.Results;

/// <summary>A comparison of wires, as a file.</summary>
[Trait("basis", "docs")]
public sealed class CompareJsonTests
{
    private static readonly CaseFile Case = Texts.Good(Texts.Arch);

    private static readonly ComparedWire Engaged = new()
    {
        Wire = Wire("ss-019x025"),
        Engaged = true,
        Verdict = default,
        LargestForce = 3.5,
        LargestForceSlot = 1,
        LargestMoment = 12,
        LargestMomentSlot = 0,
        TeethAboveCeiling =
        [
            new ToothAboveCeiling(1, LoadKind.IntrusionForce, 3.5, 1),
            new ToothAboveCeiling(1, LoadKind.TipMoment, 12, 5),
            new ToothAboveCeiling(0, LoadKind.ExtrusionForce, 3, 1),
        ],
        MaxStrain = 0.003,
        StrainLimit = 0.01,
        TorquePlay = Math.PI / 18,
        Sentence = "It goes in.",
    };

    private static readonly ComparedWire Blocked = new()
    {
        Wire = Wire("ss-016"),
        Engaged = false,
        WhyNot = "The tie at tooth 12 opens.",
        Verdict = default,
        StrainLimit = 0.01,
        TorquePlay = double.PositiveInfinity,
        Sentence = "It does not go in.",
    };

    [Fact]
    public void A_comparison_follows_its_schema_and_keeps_the_order()
    {
        JsonNode written = Written([Engaged, Blocked]);

        Assert.Empty(Schema.Load("archwright-compare-1").Errors(written));
        Assert.Equal("archwright-compare/1", written["format"]!.GetValue<string>());
        Assert.Equal(["ss-019x025", "ss-016"], written["options"]!.AsArray()
            .Select(o => o!["wire"]!.GetValue<string>()));
    }

    [Fact]
    public void The_keys_are_those_of_the_contract() => Assert.Equal(
        ["wire", "engaged", "why_not", "largest_force_N", "largest_force_tooth", "largest_moment_N_mm",
            "teeth_above_ceiling",
            "max_strain", "set_mm", "torque_play_deg", "sentence",
            "working_force_N", "working_force_tooth", "working_moment_N_mm", "teeth_above_ceiling_working",
            "transformed_share", "upper_bound", "lasting"],
        Written([Engaged])["options"]![0]!.AsObject().Select(member => member.Key));

    [Fact]
    public void The_working_state_and_how_the_force_lasts_are_told_beside_engagement()
    {
        JsonNode option = Written(
        [
            Engaged with
            {
                Working = new ForceFigures(
                    2.5, 0, 9, 1, [new ToothAboveCeiling(0, LoadKind.ExtrusionForce, 2, 1)], 2),
                Lasting = [new RemainingForce(1, 3.5, 3.5, 1), new RemainingForce(0.8, 2.1, 2.5, 0)],
            },
        ])["options"]![0]!;

        Assert.Empty(Schema.Load("archwright-compare-1").Errors(Written([Engaged with { Working = null }])));
        Assert.Equal(2.5, option["working_force_N"]!.GetValue<double>());
        Assert.Equal("13", option["working_force_tooth"]!.GetValue<string>());
        Assert.Equal(9, option["working_moment_N_mm"]!.GetValue<double>());
        Assert.Equal(["13"], option["teeth_above_ceiling_working"]!.AsArray().Select(t => t!.GetValue<string>()));
        Assert.Equal(
            [1, 0.8], option["lasting"]!.AsArray().Select(one => one!["offset_left_share"]!.GetValue<double>()));
        Assert.Equal(2.1, option["lasting"]![1]!["force_N"]!.GetValue<double>());
        Assert.Equal("13", option["lasting"]![1]!["largest_force_tooth"]!.GetValue<string>());
        Assert.Null(Written([Engaged])["options"]![0]!["teeth_above_ceiling_working"]);
    }

    [Fact]
    public void Teeth_are_named_once_and_angles_are_in_degrees()
    {
        JsonNode option = Written([Engaged])["options"]![0]!;

        Assert.Equal("12", option["largest_force_tooth"]!.GetValue<string>());
        Assert.Equal(["12", "13"], option["teeth_above_ceiling"]!.AsArray().Select(t => t!.GetValue<string>()));
        Assert.Equal(10, option["torque_play_deg"]!.GetValue<double>(), 1e-12);
    }

    [Fact]
    public void What_a_wire_would_do_that_does_not_go_in_is_null_and_not_zero()
    {
        JsonNode option = Written([Blocked])["options"]![0]!;

        Assert.False(option["engaged"]!.GetValue<bool>());
        Assert.Equal("The tie at tooth 12 opens.", option["why_not"]!.GetValue<string>());
        string[] keys =
        [
            "largest_force_N", "largest_force_tooth", "largest_moment_N_mm", "max_strain", "set_mm", "torque_play_deg",
        ];
        foreach (string key in keys)
            Assert.True(option.AsObject().ContainsKey(key) && option[key] is null, key);
    }

    private static JsonNode Written(ComparedWire[] options)
    {
        using var stream = new MemoryStream();
        CompareJson.Write(options, Case.Arrangement, stream);
        return JsonNode.Parse(stream.ToArray())!;
    }

    private static CatalogueWire Wire(string id) =>
        WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? wire : throw new InvalidOperationException(id);
}
