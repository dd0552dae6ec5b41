using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Bench;
using Archwright.Practice.Bench;

namespace Archwright.Practice.Tests.Bench;

/// <summary>Wires on the bench. Rests on the tests of the mechanics that it runs, and on what cannot be otherwise.
/// </summary>
public sealed class BenchTestsTests
{
    [Fact, Trait("basis", "independent")]
    public void Its_curves_are_those_of_the_mechanics()
    {
        CatalogueWire wire = Wire("ss-019x025");
        BenchSheet sheet = BenchTests.Run(wire, 36, "022");

        BendResult bent = BendTest.Run(wire.WholeWire, 10, 36, [BendStep.To(3.1, 1, 3.1), BendStep.To(0, 1)]);
        double[] torque = TwistTest.Run(
            wire.WholeWire, 0.022 * 25.4, 0.030 * 25.4, 5, [Angle.FromDegrees(10), Angle.FromDegrees(20)]);
        Assert.Equal(bent.Readings[0].Force, sheet.Bend.At(1, back: false)!.Value, 1e-3 * bent.Readings[0].Force);
        Assert.Equal(bent.ForceAtTop, sheet.Bend.There[^1].Y, 1e-3 * bent.ForceAtTop);
        Assert.Equal(bent.Residual, sheet.Set!.Value, 1e-2);
        Assert.Equal(torque[1], sheet.Twist.At(20, back: false)!.Value, 1e-2 * torque[1]);
        Assert.Equal(Angle.ToDegrees(wire.Section.TorquePlay(0.022 * 25.4)), sheet.Play!.Value, 1e-9);
    }

    [Fact, Trait("basis", "law")]
    public void A_wire_that_transforms_comes_back_straight_by_another_way_and_steel_stays_bent()
    {
        BenchSheet niti = BenchTests.Run(Wire("niti-016"), 36, "022");
        BenchSheet steel = BenchTests.Run(Wire("ss-016"), 36, "022");

        Assert.Equal(0, niti.Set!.Value, 0.02);
        Assert.True(niti.Bend.At(1, back: true) < 0.8 * niti.Bend.At(1, back: false));
        Assert.True(niti.Bend.At(1, back: true) > 0.1);
        Assert.True(steel.Set > 0.5);
        Assert.True(steel.Edges.At(8, back: false) > niti.Edges.At(8, back: false));
        Assert.All(niti.Twist.There, point => Assert.Equal(0, point.Y, 1e-6));
    }

    [Fact, Trait("basis", "law")]
    public void The_plateau_rises_with_the_temperature_and_steel_does_not_care()
    {
        Assert.True(Top("niti-016", 20) < Top("niti-016", 36));
        Assert.True(Top("niti-016", 36) < Top("niti-016", 55));
        Assert.Equal(Top("ss-016", 5), Top("ss-016", 55), 1e-9);

        static double Top(string id, double temperature) =>
            BenchTests.Bend(Wire(id), temperature, out _).At(2, back: false)!.Value;
    }

    [Fact, Trait("basis", "law")]
    public void A_wire_too_thick_for_the_slot_is_bent_all_the_same_and_says_why_it_is_neither_twisted_nor_slid()
    {
        BenchSheet sheet = BenchTests.Run(Wire("ss-0215x028"), 36, "018");

        Assert.True(sheet.Bend.IsThere);
        Assert.Contains("not go into the slot: it is 0.546 mm thick", sheet.Twist.WhyNot, StringComparison.Ordinal);
        Assert.Contains("0.457 mm high", sheet.Edges.WhyNot, StringComparison.Ordinal);
        Assert.Null(sheet.Play);
    }

    [Theory, Trait("basis", "law")]
    [InlineData(-1, "022")]
    [InlineData(61, "022")]
    [InlineData(36, "020")]
    public void What_is_out_of_range_is_refused(double temperature, string slot) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BenchTests.Run(Wire("ss-016"), temperature, slot));

    [Fact, Trait("basis", "law")]
    public void It_gives_up_when_nobody_waits() => Assert.Throws<OperationCanceledException>(
        () => BenchTests.Run(Wire("ss-016"), 36, "022", new CancellationToken(canceled: true)));

    private static CatalogueWire Wire(string id) =>
        WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? wire : throw new ArgumentException(id);
}
