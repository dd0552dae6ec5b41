using System.Collections.Immutable;
using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Tests.Positions;

/// <summary>Arches built from the tables.</summary>
public sealed class ArchBuilderTests
{
    public static TheoryData<Jaw> Jaws => [Jaw.Upper, Jaw.Lower];

    [Theory, MemberData(nameof(Jaws)), Trait("basis", "law")]
    public void A_planned_arch_is_plane_symmetric_and_in_place(Jaw jaw)
    {
        ArchSetup arch = ArchBuilder.Build(Request(jaw));

        Assert.Equal(14, arch.Slots.Length);
        Assert.Equal(jaw.Teeth().Where(tooth => tooth.Position < 8), arch.Teeth);
        for (int i = 0; i < 14; i++)
        {
            Slot slot = arch.Slots[i];
            Slot mirror = arch.Slots[13 - i];
            Assert.Equal(arch.Teeth[i].ToIso(), slot.Label);
            Assert.Equal(slot.Rest, slot.Actual);
            Assert.Equal(0, slot.Rest.Centre.Z, 1e-12);
            Assert.Equal(-1, slot.Rest.Third.Z, 1e-12);
            Assert.Equal(-slot.Rest.Centre.X, mirror.Rest.Centre.X, 1e-9);
            Assert.Equal(slot.Rest.Centre.Y, mirror.Rest.Centre.Y, 1e-9);
            Assert.Equal(slot.Rest.Along.X, mirror.Rest.Along.X, 1e-9);
        }

        Assert.All(arch.Irregularity!.Displacements, step => Assert.Equal(0, step, 1e-12));
    }

    /// <summary>Crown centre to crown centre along the arch, from the textbook widths (half of two
    /// neighbours).</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(Jaw.Upper, new[] { 9.5, 8.5, 7.0, 7.25, 7.0, 7.5, 8.5 })]
    [InlineData(Jaw.Lower, new[] { 10.75, 9.0, 7.0, 7.0, 6.25, 5.25, 5.0 })]
    public void Crown_centres_are_half_of_two_crown_widths_apart(Jaw jaw, double[] distances)
    {
        for (int i = 0; i < 7; i++)
        {
            ToothNumber right = jaw.Teeth()[1 + i];
            ToothNumber left = jaw.Teeth()[2 + i];
            Assert.Equal(distances[i], CrownRow.Arc(right) - CrownRow.Arc(left), 1e-9);
        }
    }

    /// <summary>Free spans at the level of the crown centres, computed from the same widths: lower incisors
    /// 2.4–2.7, lower 2-3 3.4, upper 1-1 4.9, 1-2 4.2, 2-3 3.9, premolars 3.8–4.0 mm (distances of crown centres
    /// less half of two bracket widths). Slots lie labially of that curve and so stand farther apart, by the offset
    /// times the turn: 0.5 to 1.5 mm at the front, next to nothing at the sides. Measured distances were not to be
    /// had.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData(Jaw.Lower, 31, 41, 2.4)]
    [InlineData(Jaw.Lower, 31, 32, 2.65)]
    [InlineData(Jaw.Lower, 32, 33, 3.35)]
    [InlineData(Jaw.Upper, 11, 21, 4.9)]
    [InlineData(Jaw.Upper, 21, 22, 4.2)]
    [InlineData(Jaw.Upper, 22, 23, 3.85)]
    [InlineData(Jaw.Upper, 23, 24, 4.0)]
    [InlineData(Jaw.Upper, 24, 25, 3.8)]
    [InlineData(Jaw.Lower, 34, 35, 3.8)]
    public void Free_spans_are_those_of_the_crowns_and_a_little_more_round_the_front(
        Jaw jaw, int one, int other, double span)
    {
        ArchSetup arch = ArchBuilder.Build(Request(jaw));
        int i = Math.Min(Index(arch, one), Index(arch, other));

        Assert.Equal(1, Math.Abs(Index(arch, one) - Index(arch, other)));
        Assert.InRange(arch.FreeSpans[i] - span, -0.05, 1.5);
    }

    [Theory, MemberData(nameof(Jaws)), Trait("basis", "law")]
    public void Every_free_span_is_between_two_and_eight_millimetres(Jaw jaw) =>
        Assert.All(ArchBuilder.Build(Request(jaw)).FreeSpans, span => Assert.InRange(span, 2, 8));

    /// <summary>Typical adult intercanine widths, cusp tips (after Moyers 1976 and Bishara 1997, rounded, from
    /// memory): 33 to 34.5 upper, 25 to 26 lower.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(Jaw.Upper, 33, 34.5)]
    [InlineData(Jaw.Lower, 25, 26)]
    public void The_planned_canines_are_as_wide_apart_as_in_typical_adults(Jaw jaw, double low, double high) =>
        Assert.InRange(ArchBuilder.Build(Request(jaw)).IntercanineWidth!.Value, low - 1e-9, high);

    [Fact, Trait("basis", "law")]
    public void A_canine_displaced_labially_widens_the_arch_there()
    {
        double planned = ArchBuilder.Build(Request(Jaw.Upper)).IntercanineWidth!.Value;
        ArchSetup arch = ArchBuilder.Build(Request(Jaw.Upper) with
        {
            Positions = Positions((13, new ClinicalOffset(Labial: 1, Occlusal: -2))),
        });
        Slot canine = arch.Slots[Index(arch, 13)];

        Assert.True(arch.IntercanineWidth > planned + 0.5);
        Assert.Equal(2, (canine.Actual.Centre - canine.Rest.Centre).Z, 1e-9);
        Assert.Equal(new ClinicalOffset(Labial: 1, Occlusal: -2), arch.Offsets[Index(arch, 13)]);
    }

    [Fact, Trait("basis", "ours")]
    public void Slots_wire_ties_and_ends_are_those_asked_for()
    {
        Tie elastic = Tie.Seating(TieKind.Elastic, 2, 1);
        ArchSetup arch = ArchBuilder.Build(Request(Jaw.Lower) with
        {
            Slot = SlotSize.In018,
            WireId = "ss-016x022",
            SecondMolars = false,
            Without = [ToothNumber.FromIso(34), ToothNumber.FromIso(44)],
            Ties = ImmutableDictionary<ToothNumber, Tie>.Empty.Add(ToothNumber.FromIso(33), elastic),
            Ends = Mechanics.Rods.WireEnds.Cinched,
        });

        Assert.Equal([46, 45, 43, 42, 41, 31, 32, 33, 35, 36], arch.Teeth.Select(tooth => tooth.Iso));
        Assert.All(arch.Slots, slot => Assert.Equal(0.4572, slot.Height, 12));
        Assert.Equal(elastic, arch.Slots[Index(arch, 33)].Tie);
        Assert.Equal(Tie.Closed(), arch.Slots[Index(arch, 43)].Tie);
        Assert.Equal("ss-016x022", arch.Wire.Id);
        Assert.Equal(Mechanics.Rods.WireEnds.Cinched, arch.Arrangement.Ends);
        Assert.NotNull(arch.Irregularity);
        Assert.Equal(arch.Slots.Length, arch.Axes.Length);
    }

    [Fact, Trait("basis", "law")]
    public void Leaving_a_tooth_out_leaves_its_place_open()
    {
        ArchSetup whole = ArchBuilder.Build(Request(Jaw.Upper));
        ArchSetup gap = ArchBuilder.Build(Request(Jaw.Upper) with { Without = [ToothNumber.FromIso(14)] });

        Assert.Equal(whole.Slots[Index(whole, 13)].Rest, gap.Slots[Index(gap, 13)].Rest);
        Assert.Equal(whole.Slots[Index(whole, 15)].Rest, gap.Slots[Index(gap, 15)].Rest);
    }

    [Fact, Trait("basis", "law")]
    public void A_prescription_enters_through_teeth_not_yet_at_their_angles()
    {
        ArchSetup arch = ArchBuilder.Build(Request(Jaw.Upper) with
        {
            Crowns = ImmutableDictionary<ToothNumber, CrownAngles>.Empty
                .Add(ToothNumber.FromIso(11), new CrownAngles(Tip: null, Torque: 0)),
            Positions = Positions((11, new ClinicalOffset(Labial: 0.5, Torque: 0.1))),
        });

        ClinicalOffset offset = arch.Offsets[Index(arch, 11)];
        Assert.Equal(0.5, offset.Labial);
        Assert.Equal(0.1 - Prescription.Default.Of(ToothNumber.FromIso(11)).Torque, offset.Torque, 1e-12);
        Assert.All(arch.Slots, slot => Assert.Equal(0, slot.Rest.Along.Z, 1e-12));
    }

    [Fact, Trait("basis", "ours")]
    public void A_beta_arch_may_be_chosen()
    {
        ArchSetup arch = ArchBuilder.Build(Request(Jaw.Upper) with { Form = new BetaArch(60, 42.8) });

        Assert.All(arch.FreeSpans, span => Assert.InRange(span, 2, 8));
        Assert.True(arch.IntercanineWidth < ArchBuilder.Build(Request(Jaw.Upper)).IntercanineWidth);
    }

    public static TheoryData<string, ArchRequest> Faulty => new()
    {
        { "no wire 'xx'", Request(Jaw.Upper) with { WireId = "xx" } },
        {
            "31 (lower left central incisor) has no place",
            Request(Jaw.Upper) with { Without = [ToothNumber.FromIso(31)] }
        },
        { "18", Request(Jaw.Upper) with { Positions = Positions((18, ClinicalOffset.Zero)) } },
        {
            "not a finite number",
            Request(Jaw.Upper) with { Positions = Positions((13, new ClinicalOffset(double.NaN))) }
        },
        { "3 contact displacements", Request(Jaw.Upper) with { Contacts = [1, 2, 3] } },
        { "is -1 mm", Request(Jaw.Upper) with { Contacts = [1, 2, -1, 0, 0] } },
        { "is NaN mm", Request(Jaw.Upper) with { Contacts = [1, 2, double.NaN, 0, 0] } },
        { "cannot stand", Request(Jaw.Lower) with { Contacts = [0, 0, 10, 0, 0] } },
        {
            "12 is left out",
            Request(Jaw.Upper) with { Contacts = [1, 1, 1, 1, 1], Without = [ToothNumber.FromIso(12)] }
        },
        { "two teeth", Request(Jaw.Upper) with { Without = [.. ToothNumber.UpperArch.Where(t => t.Position < 8)] } },
        { "wider or deeper", Request(Jaw.Upper) with { Form = new BetaArch(50, 30) } },
    };

    [Theory, MemberData(nameof(Faulty), DisableDiscoveryEnumeration = true), Trait("basis", "ours")]
    public void A_request_that_does_not_hold_together_is_refused_with_a_reason(string reason, ArchRequest request)
    {
        var fault = Assert.Throws<ArgumentException>(() => ArchBuilder.Build(request));
        Assert.Contains(reason, fault.Message, StringComparison.Ordinal);
    }

    internal static ArchRequest Request(Jaw jaw) => new() { Jaw = jaw, Slot = SlotSize.In022, WireId = "niti-014" };

    private static ImmutableDictionary<ToothNumber, ClinicalOffset> Positions(
        params ReadOnlySpan<(int Iso, ClinicalOffset Offset)> positions)
    {
        var builder = ImmutableDictionary.CreateBuilder<ToothNumber, ClinicalOffset>();
        foreach ((int iso, ClinicalOffset offset) in positions)
        {
            Assert.True(iso > 0);
            builder.Add(ToothNumber.FromIso(iso), offset);
        }

        return builder.ToImmutable();
    }

    private static int Index(ArchSetup arch, int iso) => arch.Teeth.IndexOf(ToothNumber.FromIso(iso));
}
