using Archwright.Dentition.Teeth;
using Archwright.Practice.Settings;
using Archwright.Web.Words;

namespace Archwright.Web.Tests.Words;

/// <summary>Numbers and words of the screens. Rests on the definitions of the units.</summary>
[Trait("basis", "law")]
public sealed class FiguresTests
{
    [Theory]
    [InlineData(1.5, ShownForce.Centinewton, "150 cN")]
    [InlineData(1.5, ShownForce.Newton, "1.50 N")]
    [InlineData(1.5, ShownForce.GramForce, "153 gf")] // 1.5 N over 9.80665 mN
    [InlineData(-0.001, ShownForce.Newton, "0.00 N")]
    public void A_force_is_shown_with_its_unit(double newtons, ShownForce unit, string shown) =>
        Assert.Equal(shown, Figures.Force(newtons, unit));

    [Fact]
    public void A_sign_is_shown_where_it_matters_and_never_on_nothing()
    {
        Assert.Equal("+85 cN", Figures.SignedForce(0.85, ShownForce.Centinewton));
        Assert.Equal("−85 cN", Figures.SignedForce(-0.85, ShownForce.Centinewton));
        Assert.Equal("0 cN", Figures.SignedForce(-0.001, ShownForce.Centinewton));
        Assert.Equal("−3.1 N·mm", Figures.SignedMoment(-3.1));
    }

    [Theory]
    [InlineData(ToothNotation.Iso, "upper right canine (13, ISO)")]
    [InlineData(ToothNotation.Universal, "upper right canine (6, Universal)")]
    [InlineData(ToothNotation.Palmer, "upper right canine (UR3, Palmer)")]
    public void A_tooth_is_never_named_by_a_bare_number(ToothNotation notation, string shown) =>
        Assert.Equal(shown, Say.Tooth(ToothNumber.FromIso(13), notation));

    [Theory]
    [InlineData("niti-016x022-reverse", "superelastic NiTi 0.016 × 0.022 in, reverse")]
    [InlineData("our own wire", "our own wire")]
    [InlineData("ours-1", "ours-1")]
    [InlineData("niti-014-", "niti-014-")]
    public void A_form_of_the_practices_own_is_named_after_the_wire_it_is_made_of(string id, string shown) =>
        Assert.Equal(shown, Say.Wire(id));

    [Fact]
    public void A_sentence_names_wires_in_words_and_leaves_what_only_looks_like_one() => Assert.Equal(
        "Heat-activated NiTi 0.014 in and superelastic NiTi 0.014 in, not xniti-014 nor niti-014b.",
        Say.Sentence("haniti-014 and niti-014, not xniti-014 nor niti-014b."));
}
