using Archwright.Dentition.Units;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Bench;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>Torque play, found by twisting a wire between two slots until they answer. The formula of play is used
/// to place the two readings, and nowhere else.</summary>
internal static class Play
{
    // Deep enough for every wire turned by its play.
    private const double Depth = 1.2;
    private const double Gap = 5;
    private const double Step = 1 * Math.PI / 180;

    /// <summary>Play of <c>slots</c> slots (1 when left out) of height <c>slot</c> in thousandths of an inch or
    /// <c>slot_mm</c> [degrees].</summary>
    public static double InDegrees(SetUp given) => given.Number("slots", 1) * Angle.ToDegrees(
        OfOneSlot(SectionFigures.Of(given), given.Has("slot_mm") ? given.Number("slot_mm") : given.Mils("slot")));

    /// <summary>Half the twist at which the torque of two slots, drawn back in a straight line, is nil [rad].</summary>
    public static double OfOneSlot(Section section, double slotHeight)
    {
        if (section.Thickness >= slotHeight)
            return 0;

        double near = 2 * section.TorquePlay(slotHeight);
        double[] torques = TwistTest.Run(
            new Wire(section, new LinearElastic(200_000, 0.3)), slotHeight, Depth, Gap, [near + Step, near + 2 * Step]);
        return (near + Step - Step * torques[0] / (torques[1] - torques[0])) / 2;
    }
}
