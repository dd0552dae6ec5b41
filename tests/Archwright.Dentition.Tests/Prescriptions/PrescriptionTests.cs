using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Units;

namespace Archwright.Dentition.Tests.Prescriptions;

/// <summary>Published sets of angles and what they mean for teeth that are not there yet.</summary>
public sealed class PrescriptionTests
{
    private static IEnumerable<ToothNumber> Teeth =>
        ToothNumber.UpperArch.Concat(ToothNumber.LowerArch).Where(tooth => tooth.Position <= 7);

    /// <summary>Values seen in a source (found): L. F. Andrews 1979 and 1989; R. H. Roth 1987; R. P. McLaughlin,
    /// J. C. Bennett, H. J. Trevisi 1997.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData("andrews", 13, 11, -7)]
    [InlineData("andrews", 42, 2, -1)]
    [InlineData("andrews", 37, 2, -35)]
    [InlineData("roth", 23, 13, -2)]
    [InlineData("roth", 33, 7, -11)]
    [InlineData("mclaughlin-bennett-trevisi", 11, 4, 17)]
    [InlineData("mclaughlin-bennett-trevisi", 22, 8, 10)]
    [InlineData("mclaughlin-bennett-trevisi", 47, 0, -10)]
    public void A_set_has_its_published_angles(string id, int iso, double tip, double torque)
    {
        Assert.True(Prescription.TryFind(id, out Prescription? set));
        PrescribedAngles angles = set.Of(ToothNumber.FromIso(iso));

        Assert.Equal(tip, angles.TipDegrees.Value);
        Assert.Equal(torque, angles.TorqueDegrees.Value);
    }

    [Fact, Trait("basis", "ours")]
    public void All_three_sets_cover_every_tooth_up_to_the_second_molar_with_sources()
    {
        Assert.Equal(
            ["andrews", "roth", "mclaughlin-bennett-trevisi"], Prescription.All.Select(set => set.Id));
        foreach (Prescription set in Prescription.All)
        {
            foreach (ToothNumber tooth in Teeth)
            {
                PrescribedAngles angles = set.Of(tooth);
                Assert.InRange(angles.TipDegrees.Value, -5, 15);
                Assert.InRange(angles.TorqueDegrees.Value, -40, 20);
                Assert.NotEmpty(angles.TorqueDegrees.Source);
                Assert.True(Brackets.SlotWidth(tooth).Value is > 2 and < 5);
            }

            Assert.Throws<ArgumentOutOfRangeException>(() => set.Of(ToothNumber.FromIso(18)));
        }
    }

    [Fact, Trait("basis", "law")]
    public void A_crown_at_the_prescribed_angles_is_in_its_planned_place()
    {
        var tooth = ToothNumber.FromIso(13);
        PrescribedAngles planned = Prescription.Default.Of(tooth);

        ClinicalOffset offset = Prescription.Default.OffsetOf(tooth, new CrownAngles(planned.Tip, planned.Torque));

        Assert.Equal(ClinicalOffset.Zero, offset);
    }

    [Fact, Trait("basis", "law")]
    public void A_crown_too_upright_has_its_slot_turned_the_same_way()
    {
        // An upper central incisor of the first set is planned at 7° of torque. One that stands at 0° has its crown
        // 7° too far lingually, so the slot's offset is −7° of torque. An angle not measured gives no offset.
        ClinicalOffset offset = Prescription.Default.OffsetOf(
            ToothNumber.FromIso(11), new CrownAngles(Tip: null, Torque: 0));

        Assert.Equal(-7, Angle.ToDegrees(offset.Torque), 1e-9);
        Assert.Equal(0, offset.Tip);
    }

    [Fact, Trait("basis", "ours")]
    public void A_bracket_may_be_chosen_otherwise_with_a_reason()
    {
        var lateral = ToothNumber.FromIso(12);
        Assert.True(Prescription.TryFind("Roth", out Prescription? set));

        Prescription inverted = set.With(lateral, 9, -8, "lateral stands in: bracket inverted");

        Assert.Equal(-8, inverted.Of(lateral).TorqueDegrees.Value);
        Assert.Contains("inverted", inverted.Of(lateral).Reason, StringComparison.Ordinal);
        Assert.Equal(8, set.Of(lateral).TorqueDegrees.Value);
        Assert.Throws<ArgumentException>(() => set.With(lateral, 9, -8, " "));
        Assert.Throws<ArgumentOutOfRangeException>(() => set.With(lateral, double.NaN, 0, "why"));
    }

    /// <summary>Slot sizes in inches: 0.018 and 0.022 by 0.025 to 0.030 deep (trade sizes); 1 in = 25.4 mm.</summary>
    [Fact, Trait("basis", "published")]
    public void Slots_have_their_nominal_sizes()
    {
        Assert.Equal(0.4572, SlotSize.In018.Height, 12);
        Assert.Equal(0.5588, SlotSize.In022.Height, 12);
        Assert.InRange(SlotSize.In018.Depth, 0.635, 0.762);
        Assert.InRange(SlotSize.In022.Depth, 0.7112 - 1e-12, 0.762);
    }
}
