using System.Text.Json.Nodes;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>
/// A straight, uniform, elastic wire with free ends that slides without friction presses along itself with
/// N = −M²/(2EI) everywhere: the Hamiltonian of the elastica is nil at the free ends and does not change at a contact,
/// whose force is normal to the wire. The push at a sleeve's mouth is the same law: D. Bigoni, F. Dal Corso, F. Bosi,
/// D. Misseroni, "Eshelby-like forces acting on elastic structures", Mech. Mater. 80 (2015) (from memory).
/// </summary>
[Trait("basis", "law")]
public sealed class AxialForceTests
{
    [Theory]
    [InlineData("three-slots-016-in-022", 1, Hold.EdgesOnly)]
    [InlineData("three-slots-016-in-022", 3, Hold.Walls)]
    [InlineData("three-slots-018-in-018-no-play", 2, Hold.EdgesOnly)]
    [InlineData("three-slots-016-in-022-uneven", 2, Hold.EdgesOnly)]
    public void A_sliding_wire_presses_along_itself_with_half_the_square_of_its_moment(
        string id, double offset, Hold hold)
    {
        JsonObject inputs = BenchmarkFile.Case("three_slots", id)["inputs"]!.AsObject();
        Arrangement arrangement = BenchmarkFile.ThreeSlots(inputs, offset, hold);
        double coarse = Worst(new Engager(arrangement, StraightWire.Refined));
        var twice = new EngagementOptions { ElementsPerGap = 32, ElementsPerSlot = 16 };
        double fine = Worst(new Engager(arrangement, twice));

        TestContext.Current.TestOutputHelper?.WriteLine(
            $"16 a gap: {coarse:e1}, 32 a gap: {fine:e1} of the largest M²/(2EI)");
        Assert.True(coarse < 0.01, $"{coarse:e2}");
        Assert.True(fine < 0.004 && fine < 0.7 * coarse, $"{fine:e2}");
    }

    // Mean of the two Gauss points of each element: the stretch of a bent cubic swings about its mean from one to the
    // other.
    private static double Worst(Engager engager)
    {
        Assert.True(engager.Engage().Converged);
        Equilibrium rod = engager.Rod;
        Section section = engager.Arrangement.Wire.Section;
        double young = engager.Arrangement.Wire.Alloy.Young;
        double worst = 0;
        double largest = 0;
        for (int e = 0; e < rod.Mesh.Elements; e++)
        {
            double axial = 0;
            double expected = 0;
            for (int g = 0; g < RodMesh.Points; g++)
            {
                SectionStrain strain = RodAssembly.StrainAt(rod.Mesh, rod.State, RodMesh.Points * e + g);
                double square = strain.OverThickness * strain.OverThickness + strain.OverWidth * strain.OverWidth;
                axial += young * section.Area * strain.Axial / RodMesh.Points;
                expected -= young * section.BendingOverThickness * square / 2 / RodMesh.Points;
            }

            worst = Math.Max(worst, Math.Abs(axial - expected));
            largest = Math.Max(largest, -expected);
        }

        Assert.True(largest > 0.3, "Too small a force to speak of.");
        return worst / largest;
    }
}
