using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Units;
using CsCheck;

namespace Archwright.Dentition.Tests.Positions;

/// <summary>Five contact displacements become an arch that has just those.</summary>
public sealed class ContactInversionTests
{
    [Theory, Trait("basis", "law")]
    [InlineData(Jaw.Upper, new[] { 2.0, 1.5, 0.5, 1.0, 3.0 })]
    [InlineData(Jaw.Lower, new[] { 2.0, 1.5, 0.5, 1.0, 3.0 })]
    [InlineData(Jaw.Lower, new[] { 0.0, 0.0, 0.0, 0.0, 0.0 })]
    [InlineData(Jaw.Lower, new[] { 3.0, 0.0, 0.0, 0.0, 0.0 })]
    [InlineData(Jaw.Lower, new[] { 0.0, 0.0, 3.9, 0.0, 0.0 })]
    [InlineData(Jaw.Lower, new[] { 0.0, 1e-40, 4.0, 1e-9, 0.0 })]
    [InlineData(Jaw.Upper, new[] { 4.0, 4.0, 0.0, 0.0, 0.0 })]
    [InlineData(Jaw.Lower, new[] { 1.8, 1.8, 1.8, 1.8, 1.8 })]
    public void The_built_arch_has_the_displacements_asked_for(Jaw jaw, double[] displacements)
    {
        ArchSetup arch = Build(jaw, displacements);

        ImmutableArray<double> found = arch.Irregularity!.Displacements;
        for (int i = 0; i < 5; i++)
            Assert.Equal(displacements[i], found[i], 1e-9);
        Assert.Equal(displacements.Sum(), arch.Irregularity.Sum, 1e-9);
    }

    /// <summary>Far into very severe irregularity (10 and more in R. M. Little's scale, 1975); half of the contacts
    /// not displaced at all.</summary>
    [Fact, Trait("basis", "law")]
    public void Any_displacements_up_to_six_millimetres_each_are_met() => Gen.Select(
        Gen.Bool, Gen.Select(Gen.Bool, Gen.Double[0.001, 6], (isIn, size) => isIn ? size : 0).Array[5]).Sample(
        (isUpper, displacements) =>
        {
            ArchSetup arch = Build(isUpper ? Jaw.Upper : Jaw.Lower, displacements);

            for (int i = 0; i < 5; i++)
                Assert.Equal(displacements[i], arch.Irregularity!.Displacements[i], 1e-9);
            foreach (ClinicalOffset offset in arch.Offsets)
            {
                Assert.InRange(offset.Labial, -7, 7);
                Assert.InRange(Math.Abs(Angle.ToDegrees(offset.Rotation)), 0, 69);
                Assert.Equal(0, offset.Occlusal);
                Assert.Equal(0, offset.Torque);
            }
        }, iter: 200);

    [Fact, Trait("basis", "law")]
    public void Only_incisors_move()
    {
        ArchSetup arch = Build(Jaw.Lower, [2, 1, 1, 2, 1]);

        for (int i = 0; i < arch.Teeth.Length; i++)
            Assert.Equal(arch.Teeth[i].Position > 2, arch.Offsets[i] == ClinicalOffset.Zero);
    }

    [Fact, Trait("basis", "law")]
    public void A_symmetric_finding_gives_a_symmetric_arch_with_the_laterals_in()
    {
        ArchSetup arch = Build(Jaw.Upper, [2, 1.5, 0, 1.5, 2]);

        for (int i = 0; i < arch.Offsets.Length; i++)
        {
            ClinicalOffset one = arch.Offsets[i];
            ClinicalOffset other = arch.Offsets[^(i + 1)];
            Assert.Equal(one.Labial, other.Labial, 1e-6);
            Assert.Equal(one.Mesial, other.Mesial, 1e-6);
            Assert.Equal(one.Rotation, other.Rotation, 1e-6);
        }

        Assert.True(arch.Offsets[arch.Teeth.IndexOf(ToothNumber.FromIso(12))].Labial < -0.5);
    }

    [Fact, Trait("basis", "law")]
    public void The_same_finding_gives_the_same_arch_to_the_last_bit() => Assert.Equal(
        Build(Jaw.Lower, [2, 1, 0.7, 2, 1]).Offsets.AsEnumerable(), Build(Jaw.Lower, [2, 1, 0.7, 2, 1]).Offsets);

    /// <summary>Words of R. M. Little, Am J Orthod 1975;68:554–563 (found): 0 perfect, 1–3 minimal, 4–6 moderate, 7–9
    /// severe, 10 or more very severe.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(0, "perfect")]
    [InlineData(1, "minimal")]
    [InlineData(3, "minimal")]
    [InlineData(4, "moderate")]
    [InlineData(6, "moderate")]
    [InlineData(7, "severe")]
    [InlineData(9, "severe")]
    [InlineData(10, "very severe")]
    public void The_index_has_its_authors_word(double sum, string word) =>
        Assert.Equal(word, Build(Jaw.Lower, [sum / 5, sum / 5, sum / 5, sum / 5, sum / 5]).Irregularity!.Category);

    [Fact, Trait("basis", "law")]
    public void Without_all_six_front_teeth_there_is_no_index()
    {
        ArchSetup arch = ArchBuilder.Build(
            ArchBuilderTests.Request(Jaw.Upper) with { Without = [ToothNumber.FromIso(12)] });

        Assert.Null(arch.Irregularity);
        Assert.NotNull(arch.IntercanineWidth);
    }

    [Fact, Trait("basis", "law")]
    public void A_vertical_step_does_not_count()
    {
        ArchSetup arch = ArchBuilder.Build(ArchBuilderTests.Request(Jaw.Upper) with
        {
            Positions = ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty
                .Add(ToothNumber.FromIso(13), new ClinicalOffset(Occlusal: -3)),
        });

        Assert.Equal(0, arch.Irregularity!.Sum, 1e-12);
    }

    [Fact, Trait("basis", "law")]
    public void Sizes_of_lists_must_agree() => Assert.Throws<ArgumentException>(
        () => IrregularityIndex.TryOf([], Build(Jaw.Upper, [1, 1, 1, 1, 1]).Slots, out _));

    private static ArchSetup Build(Jaw jaw, double[] displacements) => ArchBuilder.Build(
        ArchBuilderTests.Request(jaw) with { Contacts = [.. displacements] });
}
