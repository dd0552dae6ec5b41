using System.Text.Json;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Tests.Sections;

/// <summary>
/// The torsion cases of mechanics-benchmarks.json: area and second moments by quadrature, the torsion constant by
/// harmonic polynomials and poles fitted to the edge, the play by bisection; another program, another method. Printed
/// to six digits; stated uncertainty 1e-5.
/// </summary>
public sealed class TorsionBenchmarkTests
{
    private const double Uncertainty = 1e-5;

    [Theory, Trait("basis", "independent")]
    [InlineData("torsion-019x025-in-022-steel")]
    [InlineData("torsion-016x022-in-018-beta")]
    [InlineData("torsion-017x025-in-018-steel-sharp")]
    public void Section_constants_and_play(string id)
    {
        using JsonDocument file = ReadBenchmarks();
        JsonElement given = Case(file, id).GetProperty("inputs");
        JsonElement expected = Case(file, id).GetProperty("reference");

        Section wire = Section.Rectangular(
            Number(given, "thickness_mm"), Number(given, "width_mm"), Number(given, "edge_radius_mm"));
        double play = wire.TorquePlay(Number(given, "slot_height_mm"));

        AssertClose(Number(expected, "area_mm2"), wire.Area);
        AssertClose(Number(expected, "second_moment_over_thickness_mm4"), wire.BendingOverThickness);
        AssertClose(Number(expected, "second_moment_over_width_mm4"), wire.BendingOverWidth);
        AssertClose(Number(expected, "torsion_constant_mm4"), wire.Torsion);
        AssertClose(Number(expected, "play_each_slot_deg"), double.RadiansToDegrees(play));
        AssertClose(Number(expected, "depth_needed_when_turned_by_play_mm"), 2 * wire.HalfDepth(play));
    }

    [Fact, Trait("basis", "independent")]
    public void Every_torsion_case_of_the_file_is_checked()
    {
        using JsonDocument file = ReadBenchmarks();

        Assert.Equal(3, file.RootElement.GetProperty("torsion").GetArrayLength());
    }

    private static JsonDocument ReadBenchmarks() => JsonDocument.Parse(
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "mechanics-benchmarks.json")));

    private static JsonElement Case(JsonDocument file, string id) => file.RootElement.GetProperty("torsion")
        .EnumerateArray().Single(x => x.GetProperty("id").GetString() == id);

    private static double Number(JsonElement element, string name) => element.GetProperty(name).GetDouble();

    private static void AssertClose(double expected, double actual) =>
        Assert.Equal(1, actual / expected, tolerance: Uncertainty);
}
