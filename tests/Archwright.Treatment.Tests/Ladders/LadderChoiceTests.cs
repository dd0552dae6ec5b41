using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Tests.Decisions;

namespace Archwright.Treatment.Tests.Ladders;

/// <summary>Rests on the rules of the choice itself.</summary>
[Trait("basis", "law")]
public sealed class LadderChoiceTests
{
    private static readonly CatalogueWire Working = VisitSamples.Wire("ss-019x025");

    [Fact]
    public void A_drawer_is_looked_at_as_it_is()
    {
        ImmutableArray<LadderWire> wires = LadderChoice.Of(VisitSamples.Wires(VisitSamples.Usual), Working);

        Assert.Equal(
            VisitSamples.Usual.Order(), wires.SelectMany(one => one.Twins.Prepend(one.Wire)).Select(w => w.Id).Order());
    }

    [Fact]
    public void Of_the_whole_catalogue_no_wire_is_far_from_one_that_is_looked_at()
    {
        ImmutableArray<LadderWire> wires = LadderChoice.Of(WireCatalogue.Default.Wires, Working);

        foreach (CatalogueWire wire in WireCatalogue.Default.Wires.Where(one => WireSize.Compare(Working, one) < 0))
        {
            double nearest = wires
                .Where(one => one.Wire.Section.IsRound == wire.Section.IsRound || one.Wire.Id == Working.Id)
                .Min(one => Math.Abs(Math.Log(WireSize.Stiffness(one.Wire) / WireSize.Stiffness(wire))));
            Assert.True(nearest < Math.Log(1.26), wire.Id);
        }
    }

    [Fact]
    public void Wires_of_one_modulus_and_section_are_looked_at_once()
    {
        ImmutableArray<LadderWire> wires = LadderChoice.Of(VisitSamples.Wires("niti-014", "haniti-014"), Working);

        LadderWire soft = Assert.Single(wires, one => one.Wire.Id != Working.Id);
        Assert.Equal("haniti-014", Assert.Single(soft.Twins).Id);
    }

    [Fact]
    public void The_working_wire_stands_last_and_nothing_stiffer_is_there()
    {
        ImmutableArray<LadderWire> wires = LadderChoice.Of(WireCatalogue.Default.Wires, Working);

        Assert.Equal(Working.Id, wires[^1].Wire.Id);
        Assert.Equal(wires.Select(one => WireSize.Stiffness(one.Wire)).Order(),
            wires.Select(one => WireSize.Stiffness(one.Wire)));
    }

    [Fact]
    public void Slots_of_018_usually_work_with_016x022_and_slots_of_022_with_019x025()
    {
        ArchToday arch = VisitSamples.Question(null).Arch;

        Assert.Equal("ss-019x025", WorkingWires.Usual(arch).Id);
        Assert.Equal("ss-016x022", WorkingWires.Usual(arch with
        {
            Arrangement = arch.Arrangement with
            {
                Slots = [.. arch.Arrangement.Slots.Select(slot => slot with { Height = 0.018 * 25.4 })],
            },
        }).Id);
    }
}
