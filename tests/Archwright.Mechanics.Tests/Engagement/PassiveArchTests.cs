using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>A wire made to run through its slots does nothing while they stand where it was made for: law. The rest
/// curve is passive by construction; the solver leaves restraints unfulfilled by up to 2e-8 mm, and stopped or held
/// ends turn that into forces by the wire's stiffness of some 10 N/mm over all. That, and no more, is what may be
/// left.</summary>
[Trait("basis", "law")]
public sealed class PassiveArchTests
{
    private const double Rounding = 1e-6;

    // Within the play nothing tells the wire where to lie, so it may be drawn by the play of its starting shape; from
    // rest it stays.
    [Fact]
    public void From_rest_a_passive_wire_does_not_move_at_all()
    {
        Arrangement arch = AtRest(new RandomArch(1));
        EngagementResult result = new Engager(arch, new EngagementOptions { StartFromGuess = false })
            .Engage();

        Assert.All(result.Slots, s => Assert.Equal(0, s.Drawn, tolerance: 1e-7));
        Assert.Equal(0, result.StoredEnergy, tolerance: Rounding);
    }

    // Random arches carry prescribed torque of up to 20° and tip of up to 5° in their rest slots, so the rest curve
    // twists.
    [Fact]
    public void A_wire_through_slots_with_torque_and_tip_is_passive()
    {
        int twisted = 0;
        for (int number = 1; number <= 40; number++)
        {
            Arrangement arch = AtRest(new RandomArch(number));
            EngagementResult result = new Engager(arch).Engage();

            Assert.True(result.Converged, $"#{number}");
            Assert.All(result.Slots, s => Assert.Equal(0, s.OnTooth.Force.Length, tolerance: Rounding));
            Assert.All(result.Slots, s => Assert.Equal(0, s.OnTooth.Moment.Length, tolerance: 10 * Rounding));
            Assert.Equal(0, result.StoredEnergy, tolerance: Rounding);
            Assert.Equal(0, result.LargestStrain, tolerance: 1e-7);
            twisted += Twists(arch) ? 1 : 0;
        }

        Assert.True(twisted > 10, "Hardly any rest curve twisted, so nothing is shown of twist.");
    }

    /// <summary>A straight ribbon at rest in slots that are twisted against each other: the wire is made twisted, and
    /// passive. The same slots make a wire that was made without twist resist with GJ times twist by length. The length
    /// is a little more than the gap: the twisted wire slides out of the slots and presses with N = −T²/(2GJ), as a
    /// bent one with −M²/(2EI), so that 3e-5 more of it lies between them.</summary>
    [Fact]
    public void A_wire_made_with_twist_is_passive_where_one_made_without_is_not()
    {
        const double twist = 0.4;
        var axis = new Vector3(1, 0, 0);
        SlotFrame first = SlotFrame.Create(default, axis, new Vector3(0, 1, 0));
        SlotFrame second = SlotFrame.Create(axis * 9, axis, new Vector3(0, 1, 0).Turned(axis * twist));
        Section section = Section.Rectangular(0.4, 0.6);
        Arrangement made = new()
        {
            Wire = new Wire(section, new LinearElastic(200000, 0.3)),
            Rest = new RestShape.Straight(),
            Slots = [Full("a", first, first, section), Full("b", second, second, section)],
        };
        Arrangement forced = made with
        {
            Slots = [made.Slots[0], Full("b", SlotFrame.Create(axis * 9, axis, new Vector3(0, 1, 0)), second, section)],
        };

        EngagementResult passive = new Engager(made).Engage();
        EngagementResult active = new Engager(forced).Engage();

        Assert.Equal(0, passive.Slots[1].OnTooth.Moment.Length, tolerance: Rounding);
        double stiffness = 200000 / 2.6 * section.Torsion;
        double torque = stiffness * twist / 6;
        torque *= 1 - torque * torque / (2 * stiffness) / (200000 * section.Area);
        Assert.Equal(-torque, Vector3.Dot(active.Slots[1].OnTooth.Moment, axis), tolerance: 1e-7 * torque);
    }

    // Fills the slot in both directions, so it leaves no play.
    private static Slot Full(string label, SlotFrame rest, SlotFrame actual, Section section) => new()
    {
        Label = label,
        Rest = rest,
        Actual = actual,
        Width = 3,
        Height = section.Thickness,
        Depth = section.Width,
        Hold = Hold.EdgesOnly,
    };

    // Ties that seat pull the wire to the base with a force of their own, which is no action of the wire.
    private static Arrangement AtRest(RandomArch arch) =>
        (arch.Arrangement with { Rest = new RestShape.ThroughRestSlots() }).Each(
            s => s with { Actual = s.Rest, Tie = s.Tie.Stiffness > 0 ? Tie.Closed() : s.Tie });

    private static bool Twists(Arrangement arch) =>
        arch.Slots.Length > 1
        && Math.Abs(arch.Slots[0].Rest.Outward.Z - arch.Slots[1].Rest.Outward.Z) > 0.1
        && !arch.Wire.Section.IsRound;
}
