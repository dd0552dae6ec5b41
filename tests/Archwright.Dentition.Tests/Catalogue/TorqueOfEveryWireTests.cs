using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Bench;

namespace Archwright.Dentition.Tests.Catalogue;

/// <summary>Torque against twist, there and back, for the rectangular wires of the catalogue with their whole law in
/// every slot where they lock.</summary>
public sealed class TorqueOfEveryWireTests
{
    private const double Gap = 5;
    private const int Steps = 6;

    // Beyond the play, there: as far as a bracket is turned to torque a root.
    private static readonly double Beyond = Angle.FromDegrees(20);

    private static readonly double MostPlay = Angle.FromDegrees(25);

    /// <summary>What holds for any wire that gives no energy: no torque within the play of both slots, it grows on the
    /// way in, and is no larger on the way back.</summary>
    [Fact, Trait("basis", "law")]
    public void Every_wire_twists_there_and_back_in_every_slot_that_takes_it()
    {
        int pairs = 0;
        foreach ((CatalogueWire wire, SlotSize slot) in Pairs())
        {
            string name = $"{wire.Id} in {slot.Code}";
            double play = wire.Wire.Section.TorquePlay(slot.Height);
            double[] there =
                [0, .. Enumerable.Range(0, Steps + 1).Select(i => 2 * play + Beyond * i / Steps)];
            double[] path = [.. there, .. there.Reverse().Skip(1)];
            double[] torques = TwistTest.Run(wire.WholeWire, slot.Height, slot.Depth, Gap, path);

            pairs++;
            double largest = torques.Max();
            double tolerance = 2e-3 * largest + 1e-6;
            Assert.True(largest > 0, name);
            Assert.Equal(0, torques[0], tolerance);
            Assert.InRange(Math.Abs(torques[1]), 0, 0.02 * largest);
            for (int i = 1; i < there.Length; i++)
                Assert.True(torques[i] >= torques[i - 1] - tolerance, $"{name} at {path[i]}");
            for (int i = 0; i < there.Length; i++)
                Assert.True(torques[path.Length - 1 - i] <= torques[i] + tolerance, $"{name}, back at {there[i]}");
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{pairs} wires in slots");
        Assert.True(pairs >= 90, $"Only {pairs} pairs were seen.");
    }

    private static IEnumerable<(CatalogueWire Wire, SlotSize Slot)> Pairs() =>
        WireCatalogue.Default.Wires
            .Where(wire => !wire.Wire.Section.IsRound)
            .SelectMany(wire => new[] { SlotSize.In018, SlotSize.In022 }, (wire, slot) => (wire, slot))
            .Where(pair => pair.wire.Wire.Section.Thickness < pair.slot.Height
                && pair.wire.Wire.Section.Width < pair.slot.Depth

                // A thin square wire never locks in a high slot, or only just, and then turns through.
                && pair.wire.Wire.Section.TorquePlay(pair.slot.Height) < MostPlay);
}
