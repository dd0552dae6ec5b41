using System.Text.Json.Nodes;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Tests.Sections;

/// <summary>
/// The torsion cases of mechanics-benchmarks.json: area and second moments by quadrature, the torsion constant by
/// harmonic polynomials and poles fitted to the edge, the play by a bracketing root finder; another program, another
/// method. Printed to six digits; stated uncertainty 1e-5.
/// </summary>
public sealed class TorsionBenchmarkTests
{
    private const double Uncertainty = 1e-5;

    public static TheoryData<string> Ids => [.. BenchmarkFile.Ids("torsion")];

    [Theory, Trait("basis", "independent")]
    [MemberData(nameof(Ids))]
    public void Section_constants_and_play(string id)
    {
        JsonObject problem = BenchmarkFile.Case("torsion", id);
        JsonNode given = problem["inputs"]!;
        JsonNode expected = problem["reference"]!;

        Section wire = Section.Rectangular(
            given.Number("thickness_mm"), given.Number("width_mm"), given.Number("edge_radius_mm"));
        double play = wire.TorquePlay(given.Number("slot_height_mm"));

        AssertClose(expected.Number("area_mm2"), wire.Area);
        AssertClose(expected.Number("second_moment_over_thickness_mm4"), wire.BendingOverThickness);
        AssertClose(expected.Number("second_moment_over_width_mm4"), wire.BendingOverWidth);
        AssertClose(expected.Number("torsion_constant_mm4"), wire.Torsion);
        AssertClose(expected.Number("play_each_slot_deg"), double.RadiansToDegrees(play));
        AssertClose(expected.Number("depth_needed_when_turned_by_play_mm"), 2 * wire.HalfDepth(play));
    }

    [Fact, Trait("basis", "independent")]
    public void All_three_torsion_cases_of_the_file_are_checked() =>
        Assert.Equal(3, BenchmarkFile.Ids("torsion").Count());

    private static void AssertClose(double expected, double actual) =>
        Assert.Equal(1, actual / expected, tolerance: Uncertainty);
}
