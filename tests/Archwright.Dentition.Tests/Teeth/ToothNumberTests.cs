using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Tests.Teeth;

/// <summary>Tooth numbers on all 32 teeth. The rules: ISO 3950 (two digits, quadrant and position); universal
/// numbering 1–16 from the upper right third molar to the upper left, 17–32 from the lower left to the lower right;
/// how we have it: found, encyclopaedic tables of dental notation.</summary>
[Trait("basis", "published")]
public sealed class ToothNumberTests
{
    private static readonly (int Iso, int Universal, string Palmer)[] All =
    [
        (18, 1, "UR8"), (17, 2, "UR7"), (16, 3, "UR6"), (15, 4, "UR5"),
        (14, 5, "UR4"), (13, 6, "UR3"), (12, 7, "UR2"), (11, 8, "UR1"),
        (21, 9, "UL1"), (22, 10, "UL2"), (23, 11, "UL3"), (24, 12, "UL4"),
        (25, 13, "UL5"), (26, 14, "UL6"), (27, 15, "UL7"), (28, 16, "UL8"),
        (38, 17, "LL8"), (37, 18, "LL7"), (36, 19, "LL6"), (35, 20, "LL5"),
        (34, 21, "LL4"), (33, 22, "LL3"), (32, 23, "LL2"), (31, 24, "LL1"),
        (41, 25, "LR1"), (42, 26, "LR2"), (43, 27, "LR3"), (44, 28, "LR4"),
        (45, 29, "LR5"), (46, 30, "LR6"), (47, 31, "LR7"), (48, 32, "LR8"),
    ];

    [Fact]
    public void All_32_teeth_read_the_same_in_three_notations()
    {
        Assert.Equal(32, All.Length);
        foreach ((int iso, int universal, string palmer) in All)
        {
            Assert.True(ToothNumber.TryParse($"{iso}", out ToothNumber tooth));
            Assert.Equal(iso, tooth.Iso);
            Assert.Equal($"{iso}", tooth.Show(ToothNotation.Iso));
            Assert.Equal($"{universal}", tooth.Show(ToothNotation.Universal));
            Assert.Equal(palmer, tooth.Show(ToothNotation.Palmer));
        }
    }

    [Fact]
    public void Arches_run_from_the_patients_right_to_the_left()
    {
        Assert.Equal(
            [18, 17, 16, 15, 14, 13, 12, 11, 21, 22, 23, 24, 25, 26, 27, 28],
            ToothNumber.UpperArch.Select(tooth => tooth.Iso));
        Assert.Equal(
            [48, 47, 46, 45, 44, 43, 42, 41, 31, 32, 33, 34, 35, 36, 37, 38],
            ToothNumber.LowerArch.Select(tooth => tooth.Iso));
        Assert.All(ToothNumber.UpperArch, tooth => Assert.True(tooth.IsUpper));
        Assert.All(ToothNumber.LowerArch, tooth => Assert.False(tooth.IsUpper));
        Assert.All(ToothNumber.UpperArch.Take(8), tooth => Assert.True(tooth.IsRight));
        Assert.All(ToothNumber.LowerArch.Skip(8), tooth => Assert.False(tooth.IsRight));
    }

    [Theory]
    [InlineData(13, "upper right canine")]
    [InlineData(21, "upper left central incisor")]
    [InlineData(36, "lower left first molar")]
    [InlineData(48, "lower right third molar")]
    public void A_tooth_has_a_name(int iso, string name) => Assert.Equal(name, ToothNumber.FromIso(iso).Name);

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("1")]
    [InlineData("19")]
    [InlineData("10")]
    [InlineData("51")]
    [InlineData("UR3")]
    [InlineData("+3")]
    [InlineData(" 13")]
    [InlineData("113")]
    public void What_is_no_permanent_tooth_is_refused(string? text)
    {
        Assert.False(ToothNumber.TryParse(text, out ToothNumber tooth));
        Assert.Equal(0, tooth.Iso);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    [InlineData(19)]
    [InlineData(51)]
    [InlineData(-13)]
    [InlineData(113)]
    public void A_number_that_is_no_permanent_tooth_is_refused(int iso) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ToothNumber.FromIso(iso));

    [Fact]
    public void The_default_is_no_tooth_and_says_so() => Assert.Equal("no tooth", default(ToothNumber).Name);
}
