using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>A new wire with memory is engaged from a guessed shape in one go, as an elastic one is: its fibres are
/// loaded once, so the way hardly matters. Law: where strains only grow, an incremental law and its closed form are the
/// same. Held against the way of committed steps from rest, on the reference arches, with walls and play. The ends are
/// stopped: along the arch a free wire of this kind rests at places tenths of a millimetre apart for a thousandth of a
/// newton, and the loads there differ.</summary>
[Trait("basis", "law")]
public sealed class DirectLoadingTests
{
    // Twice the default accuracy of a mesh: the two ways end on different ones.
    private const double Share = 6e-3;

    [Theory]
    [InlineData("arch-edges-13-labial", 0)]
    [InlineData("arch-edges-13-rotated", 0.02)]
    [InlineData("arch-edges-22-all", 0.02)]
    public void A_superelastic_wire_engaged_at_once_loads_the_teeth_as_one_led_there_in_steps(
        string id, double leastTransformed)
    {
        Arrangement arch = BenchmarkFile.Arch(BenchmarkFile.Case("arch", id));
        arch = arch.Each(s => s with { Hold = Hold.Walls, Height = 0.4572, Depth = 0.6 }) with
        {
            Ends = WireEnds.Stopped,
            Wire = arch.Wire with { Alloy = Alloy() },
        };

        EngagementResult atOnce = new Engager(arch).Engage();
        EngagementResult inSteps = new Engager(arch, new EngagementOptions { StartFromGuess = false }).Engage();

        Assert.True(atOnce.Converged, atOnce.Obstacle?.Reason);
        Assert.True(inSteps.Converged, inSteps.Obstacle?.Reason);
        Assert.True(atOnce.TransformedShare >= leastTransformed, "Too little transformed to show much.");
        double difference = LawCases.Difference(inSteps, atOnce);
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{id}: {difference:e1}, iterations {atOnce.Iterations} at once, {inSteps.Iterations} in steps");
        Assert.Equal(0, difference, Share);

        // One that has to be led there in steps after its guess failed takes those of the steps and of the guess.
        Assert.True(atOnce.Iterations < inSteps.Iterations, "It was led there in steps after all.");
    }

    // Alloy A of mechanics-benchmarks.json.
    private static Superelastic Alloy() => new(new SuperelasticFigures
    {
        YoungAustenite = 50_000,
        YoungMartensite = 30_000,
        Poisson = 0.33,
        TransformationStrain = 0.045,
        ForwardStart = 430,
        ForwardFinish = 500,
        ReverseStart = 240,
        ReverseFinish = 160,
        ClausiusClapeyron = 6.5,
        ReferenceTemperature = 36,
        Asymmetry = 0,
    });
}
