using Archwright.Dentition.Tables;
using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Tests.Teeth;

/// <summary>The table of average teeth.</summary>
public sealed class AnatomyTests
{
    private static IEnumerable<ToothNumber> Teeth =>
        ToothNumber.UpperArch.Concat(ToothNumber.LowerArch).Where(tooth => tooth.Position <= 7);

    /// <summary>M. M. Ash, S. J. Nelson, Wheeler's Dental Anatomy, suggested measurements; these seen in tables
    /// after the book (found).</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(11, 10.5, 13.0, 8.5, 7.0)]
    [InlineData(22, 9.0, 13.0, 6.5, 6.0)]
    [InlineData(14, 8.5, 14.0, 7.0, 9.0)]
    [InlineData(25, 8.5, 14.0, 7.0, 9.0)]
    [InlineData(41, 9.0, 12.5, 5.0, 6.0)]
    [InlineData(16, 7.5, 12.5, 10.0, 11.0)]
    public void Crowns_and_roots_are_those_of_the_book(int iso, double crown, double root, double width, double depth)
    {
        Anatomy tooth = Anatomy.Of(ToothNumber.FromIso(iso));

        Assert.Equal(crown, tooth.CrownHeight.Value);
        Assert.Equal(root, tooth.RootLength.Value);
        Assert.Equal(width, tooth.CrownWidth.Value);
        Assert.Equal(depth, tooth.CrownDepth.Value);
    }

    /// <summary>A second book: J. B. Woelfel's means of extracted teeth (from memory). Crown widths of two books
    /// differ by at most half a millimetre, less than people do.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(11, 8.6)]
    [InlineData(12, 6.6)]
    [InlineData(13, 7.6)]
    [InlineData(15, 6.6)]
    [InlineData(16, 10.4)]
    [InlineData(31, 5.3)]
    [InlineData(33, 6.8)]
    [InlineData(36, 11.4)]
    public void Crown_widths_agree_with_a_second_book(int iso, double width) =>
        Assert.Equal(width, Anatomy.Of(ToothNumber.FromIso(iso)).CrownWidth.Value, 0.5);

    [Fact, Trait("basis", "law")]
    public void Slot_height_and_slot_to_neck_make_up_the_crown() => Assert.All(
        Teeth.Select(Anatomy.Of),
        tooth => Assert.Equal(tooth.CrownHeight.Value, tooth.SlotHeight.Value + tooth.SlotToNeck.Value, 1e-9));

    /// <summary>One third of the embedded root for one-rooted teeth (Yoshida 2001, found: 0.33), crest 1.5 mm below
    /// the neck; one decimal printed.</summary>
    [Fact, Trait("basis", "published")]
    public void The_centre_of_resistance_lies_a_third_down_the_embedded_root() => Assert.All(
        Teeth.Where(tooth => !tooth.IsMolar).Select(Anatomy.Of),
        tooth => Assert.Equal(
            tooth.SlotToNeck.Value + 1.5 + 0.33 * (tooth.RootLength.Value - 1.5), tooth.SlotToResistance.Value, 0.06));

    [Fact, Trait("basis", "ours")]
    public void Right_and_left_are_the_same_and_each_figure_has_a_source()
    {
        foreach (ToothNumber tooth in Teeth)
        {
            Anatomy one = Anatomy.Of(tooth);
            Anatomy other = Anatomy.Of(ToothNumber.FromIso(tooth.Iso + (tooth.Quadrant % 2 == 1 ? 10 : -10)));
            Assert.Equal(one.CrownWidth, other.CrownWidth);
            Sourced[] figures =
            [
                one.CrownHeight, one.RootLength, one.CrownWidth, one.NeckWidth, one.CrownDepth, one.NeckDepth,
                one.SlotHeight, one.SlotToNeck, one.SlotToResistance,
            ];
            Assert.All(figures, figure => Assert.True(figure.Source.Length > 0 && figure.How.Length > 0));
            Assert.True(one.NeckWidth.Value < one.CrownWidth.Value);
        }
    }

    [Fact, Trait("basis", "ours")]
    public void Third_molars_are_not_in_the_table()
    {
        Assert.False(Anatomy.TryOf(default, out _));
        Assert.Throws<ArgumentOutOfRangeException>(() => Anatomy.Of(default));
    }

    [Theory, Trait("basis", "ours")]
    [InlineData("upper,1,crown_width,8.5,in,,book,found", "in mm")]
    [InlineData("upper,9,crown_width,8.5,mm,,book,found", "position is 9")]
    [InlineData("middle,1,crown_width,8.5,mm,,book,found", "jaw is 'middle'")]
    [InlineData("upper,1,crown_width,8.5,mm,,,found", "no source")]
    [InlineData("upper,1,crown_width,8.5,mm,,book,found", "has no 'crown_height'")]
    public void A_faulty_row_is_refused_with_its_reason(string row, string reason)
    {
        var fault = Assert.Throws<TableException>(() => Anatomy.Read(Table.Parse(
            "teeth.csv", "jaw,position,quantity,value,unit,spread,source,how\n" + row), []));
        Assert.Contains(reason, fault.Message, StringComparison.Ordinal);
    }
}
