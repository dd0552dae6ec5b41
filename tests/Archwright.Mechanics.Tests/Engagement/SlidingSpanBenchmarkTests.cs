using System.Text.Json.Nodes;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>
/// A wire clamped at one end that slides through a support at the other: mechanics-benchmarks.json, fixed_sliding_span.
/// Reference by collocation of the inextensible elastica, uncertainty 1e-6. The refined wire has a third of the
/// diameter and the same EI, so that it hardly stretches either (ε²/8 with ε below 0.02).
/// </summary>
[Trait("basis", "independent")]
public sealed class SlidingSpanBenchmarkTests
{
    private const double DefaultShare = 0.003;

    private const double RefinedShare = 1e-4;

    private static readonly EngagementOptions Refined = new() { ElementsPerGap = 16, ElementsPerSlot = 8 };

    public static TheoryData<double> Offsets => [0.5, 1, 2, 3];

    [Fact]
    public void All_offsets_of_the_file_are_checked()
    {
        Assert.Equal(["clamp-to-point", "clamp-to-sleeve"], BenchmarkFile.Ids("fixed_sliding_span"));
        foreach (string id in BenchmarkFile.Ids("fixed_sliding_span"))
            Assert.Equal(Offsets.Count, BenchmarkFile.Case("fixed_sliding_span", id)["reference"]!.AsArray().Count);
    }

    [Theory]
    [MemberData(nameof(Offsets))]
    public void From_a_clamp_through_a_point(double offset)
    {
        JsonNode expected = Row("clamp-to-point", offset);
        foreach ((EngagementOptions options, double thinner, double share) in
            ((EngagementOptions, double, double)[])
            [(EngagementOptions.Default, 1, DefaultShare), (Refined, 3, RefinedShare)])
        {
            Engager engager = Span(8, offset, Hold.Point, 3, thinner, options);
            EngagementResult result = Engage(engager);
            Vector3 force = result.Slots[1].OnTooth.Force;
            Station at = engager.Rod.Contacts.Stations[0];

            Compare(expected, force, share);
            double moment = Math.Abs(result.Slots[0].OnTooth.Moment.Z);
            Assert.Equal(1, moment / expected.Number("clamp_moment_N_mm"), tolerance: share);
            double slope = Math.Atan2(at.P.Y, at.P.X) * 180 / Math.PI;
            Assert.Equal(1, slope / expected.Number("end_slope_deg"), tolerance: share);
            Assert.Equal(expected.Number("wire_length_between_mm"), at.S, tolerance: share * offset);
        }
    }

    /// <summary>By symmetry the wire bends into a sleeve at offset d over a span L as two wires bend through a point at
    /// d/2 over L/2, if it feels the push M²/(2EI) at the sleeve's mouth: force and clamp moment are the same. Solved
    /// as the latter, compared with the reference of the former.</summary>
    [Theory]
    [MemberData(nameof(Offsets))]
    public void From_a_clamp_into_a_sleeve_by_symmetry(double offset)
    {
        JsonNode expected = Row("clamp-to-sleeve", offset);
        EngagementResult result = Engage(Span(4, offset / 2, Hold.Point, 3, thinner: 3, Refined));

        Compare(expected, result.Slots[1].OnTooth.Force, RefinedShare);
        double moment = Math.Abs(result.Slots[0].OnTooth.Moment.Z);
        Assert.Equal(1, moment / expected.Number("clamp_moment_N_mm"), tolerance: RefinedShare);
    }

    /// <summary>The sleeve itself: two points w apart, the first at the mouth. The wire turns a little at the mouth, as
    /// if it were longer by w/3; what is linear and quadratic in w is taken out by solving with three widths. The push
    /// at the mouth is not put in: the two points make it.</summary>
    [Theory]
    [MemberData(nameof(Offsets))]
    public void From_a_clamp_into_a_sleeve_made_of_two_points(double offset)
    {
        JsonNode expected = Row("clamp-to-sleeve", offset);
        Vector3 Force(double width) =>
            Engage(Span(8, offset, Hold.EdgePoints, width, thinner: 3, Refined)).Slots[1].OnTooth.Force;

        Vector3 force = (Force(0.3) * 8 - Force(0.6) * 6 + Force(1.2)) / 3;

        // Cubic in w is left: (w/L)³ of the narrowest, weighted, below 1e-3.
        Compare(expected, force, 1e-3);
        double without = expected.Number("force_y_without_axial_term_N");
        TestContext.Current.TestOutputHelper?.WriteLine($"without the push it would be {without}");
        if (offset >= 2)
            Assert.True(Math.Abs(force.Y - without) > 0.1 * Math.Abs(without));
    }

    private static JsonNode Row(string id, double offset) => BenchmarkFile.Case("fixed_sliding_span", id)["reference"]!
        .AsArray().Select(row => row!).Single(row => row.Number("offset_mm") == offset);

    private static void Compare(JsonNode expected, Vector3 force, double share)
    {
        var reference = new Vector3(expected.Number("force_x_N"), expected.Number("force_y_N"), 0);
        double error = (force - reference).Length / reference.Length;
        TestContext.Current.TestOutputHelper?.WriteLine($"force {error:e1}");
        Assert.True(error <= share, $"force {error:e2} off: {force}");
    }

    private static EngagementResult Engage(Engager engager)
    {
        EngagementResult result = engager.Engage();
        Assert.True(result.Converged, result.Obstacle?.Reason);
        return result;
    }

    // Clamped at the origin, y up; the support's first touching place stands at x = span.
    private static Engager Span(
        double span, double offset, Hold hold, double width, double thinner, EngagementOptions options)
    {
        JsonObject problem = BenchmarkFile.Case("fixed_sliding_span", "clamp-to-point");
        double diameter = problem.Number("diameter_mm") / thinner;
        double young = problem.Number("young_MPa") * Math.Pow(thinner, 4);
        double centre = span + (hold == Hold.EdgePoints ? width / 2 : 0);
        Slot Make(string label, double x, double y, Hold held) => new()
        {
            Label = label,
            Rest = SlotFrame.Create(new Vector3(x, 0, 0), new Vector3(1, 0, 0), new Vector3(0, 1, 0)),
            Actual = SlotFrame.Create(new Vector3(x, y, 0), new Vector3(1, 0, 0), new Vector3(0, 1, 0)),
            Width = held == Hold.EdgePoints ? width : 3,
            Hold = held,
        };

        return new Engager(
            new Arrangement
            {
                Wire = new Wire(Section.Round(diameter), new LinearElastic(young, 0.3)),
                Rest = new RestShape.Straight(),
                Slots = [Make("clamp", 0, 0, Hold.Clamped), Make("support", centre, offset, hold)],
            },
            options);
    }
}
