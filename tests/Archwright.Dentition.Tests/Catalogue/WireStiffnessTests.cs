using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Sections;
using Archwright.Tests.Published;

namespace Archwright.Dentition.Tests.Catalogue;

/// <summary>Stiffness numbers, play and range against what is printed.</summary>
public sealed class WireStiffnessTests
{
    [Theory, Trait("basis", "published")]
    [MemberData(nameof(CrossSectionNumbers.Round), MemberType = typeof(CrossSectionNumbers))]
    public void Round_wires_have_the_printed_cross_section_number(double mils, double number)
    {
        Section section = Section.Round(Mils(mils));

        Assert.Equal(number, WireStiffness.CrossSectionNumber(section.BendingOverThickness), 0.01);
    }

    [Theory, Trait("basis", "published")]
    [MemberData(nameof(CrossSectionNumbers.Rectangular), MemberType = typeof(CrossSectionNumbers))]
    public void Rectangular_wires_have_the_printed_cross_section_numbers(
        double thickness, double width, double secondOrder, double firstOrder)
    {
        Section section = Section.Rectangular(Mils(thickness), Mils(width));

        Assert.Equal(secondOrder, WireStiffness.CrossSectionNumber(section.BendingOverThickness), 0.01);
        Assert.Equal(firstOrder, WireStiffness.CrossSectionNumber(section.BendingOverWidth), 0.01);
    }

    [Theory, Trait("basis", "published")]
    [InlineData("ss-016", 256.00)]
    [InlineData("ss-020", 625.00)]
    public void A_round_steel_wire_of_the_catalogue_is_worth_its_cross_section_number(string id, double number)
    {
        WireStiffness wire = Stiffness(id);

        Assert.Equal(number, wire.RelativeUpDown, 0.01);
        Assert.Equal(number, wire.RelativeInOut, 0.01);
        Assert.Equal(number, wire.RelativeTorsion, 0.01);
    }

    /// <summary>Edges of 0.002 in cost a rectangular wire 2 to 4 % of its bending stiffness by geometry. B. K.
    /// Rucker, R. P. Kusy (Am J Orthod Dentofacial Orthop 2002;122:528–541; found, abstract) measured 15 to 19 %
    /// together with 7 to 8 % of area: their wires were rounded far more. Ours errs to the stiff side, and says so
    /// in the docs.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData("ss-016x022", 597.57)]
    [InlineData("ss-019x025", 1137.13)]
    public void Rounded_edges_cost_stiffness_but_less_than_the_most_rounded_wires_measured(string id, double sharp)
    {
        double loss = 1 - Stiffness(id).RelativeUpDown / sharp;

        Assert.InRange(loss, 0.015, 0.15);
    }

    /// <summary>An edge radius of 0.0055 to 0.006 in would explain both losses that Rucker and Kusy measured at once:
    /// 7 to 8 % of area and 15 to 19 % of bending stiffness (Am J Orthod Dentofacial Orthop 2002;122:528–541; found,
    /// abstract; sizes of their wires not stated there, so two usual ones are taken).</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(16, 22, 5.5)]
    [InlineData(17, 25, 6)]
    public void Measured_losses_of_area_and_stiffness_belong_to_one_edge_radius(
        double thickness, double width, double radius)
    {
        Section sharp = Section.Rectangular(Mils(thickness), Mils(width));
        Section round = Section.Rectangular(Mils(thickness), Mils(width), Mils(radius));

        Assert.InRange(1 - round.Area / sharp.Area, 0.07, 0.08);
        Assert.InRange(1 - round.BendingOverThickness / sharp.BendingOverThickness, 0.15, 0.19);
        Assert.InRange(1 - round.BendingOverWidth / sharp.BendingOverWidth, 0.15, 0.19);
    }

    /// <summary>Play by geometry with 0.002 in edges: (h − 2r) cos α + (w − 2r) sin α + 2r = H; one decimal
    /// printed, in degrees, accepted ± 0.06. How we have it: computed from the equation by its own program, for
    /// 0.018 and 0.022 in slots.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData("ss-016x022", 6.6, 22.6)]
    [InlineData("ss-017x022", 3.3, 18.3)]
    [InlineData("ss-017x025", 2.8, 15.0)]
    [InlineData("ss-018x025", 0.0, 11.8)]
    [InlineData("ss-016x016", 10.6, double.PositiveInfinity)]
    public void Play_is_that_of_the_geometry_in_both_slots(string id, double in018, double in022)
    {
        WireStiffness wire = Stiffness(id);

        Assert.Equal(in018, Degrees(wire.TorquePlay(WireStiffness.Slot018)), 0.06);
        Assert.Equal(in022, Degrees(wire.TorquePlay(WireStiffness.Slot022)), 0.06);
    }

    [Theory, Trait("basis", "independent")]
    [InlineData("ss-019x025", 8.7)]
    [InlineData("ss-020x020", 7.7)]
    [InlineData("ss-020x025", 5.7)]
    [InlineData("ss-021x025", 2.8)]
    [InlineData("ss-0215x028", 1.2)]
    public void A_wire_for_the_large_slot_does_not_go_into_the_small_one(string id, double in022)
    {
        WireStiffness wire = Stiffness(id);

        Assert.Null(wire.TorquePlay(WireStiffness.Slot018));
        Assert.Equal(in022, Degrees(wire.TorquePlay(WireStiffness.Slot022)), 0.06);
    }

    [Fact, Trait("basis", "law")]
    public void A_round_wire_never_locks() =>
        Assert.Equal(double.PositiveInfinity, Stiffness("ss-018").TorquePlay(WireStiffness.Slot018));

    /// <summary>R. P. Kusy, A. R. Greenberg, Am J Orthod 1982;82:199–205: range goes as (yield/E)/d; from
    /// memory.</summary>
    [Fact, Trait("basis", "published")]
    public void Range_goes_as_elastic_strain_over_thickness()
    {
        Assert.Equal(20.0 / 16, Stiffness("ss-016").ElasticRange() / Stiffness("ss-020").ElasticRange(), 1e-9);
        Assert.Equal(4, Stiffness("ss-016").ElasticRange(20) / Stiffness("ss-016").ElasticRange(10), 1e-9);
        Assert.True(Stiffness("bti-016").ElasticRange() > Stiffness("ss-016").ElasticRange());
        // 0.016 in steel: 0.0075 · 100 / (6 · 0.4064) mm.
        Assert.Equal(0.3076, Stiffness("ss-016").ElasticRange(), 1e-4);
        Assert.Equal(0.4826 / 2 / 0.0075, Stiffness("ss-019x025").TightestRadiusUpDown, 1e-9);
        Assert.Equal(0.6350 / 2 / 0.0075, Stiffness("ss-019x025").TightestRadiusInOut, 1e-9);
    }

    /// <summary>Strength : stiffness : range against steel of the same section, beta-titanium 0.6 : 0.3 : 1.8
    /// (W. R. Proffit, H. W. Fields, Contemporary Orthodontics, after Kusy's nomograms; from memory). Ranges of the
    /// two alloys overlap: accepted ± 25 %.</summary>
    [Fact, Trait("basis", "published")]
    public void Beta_titanium_is_a_third_as_stiff_and_reaches_farther()
    {
        WireStiffness steel = Stiffness("ss-016");
        WireStiffness beta = Stiffness("bti-016");

        Assert.Equal(0.3, beta.RelativeUpDown / steel.RelativeUpDown, 0.075);
        Assert.Equal(1.8, beta.ElasticRange() / steel.ElasticRange(), 0.45);
    }

    private static WireStiffness Stiffness(string id)
    {
        Assert.True(WireCatalogue.Default.TryFind(id, out CatalogueWire? wire));
        return WireStiffness.Of(wire);
    }

    private static double Mils(double mils) => Millimetres.FromInches(mils / 1000);

    private static double Degrees(double? radians)
    {
        Assert.NotNull(radians);
        return Angle.ToDegrees(radians.Value);
    }
}
