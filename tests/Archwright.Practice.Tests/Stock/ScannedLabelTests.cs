using Archwright.Practice.Stock;

namespace Archwright.Practice.Tests.Stock;

/// <summary>Labels as a scanner types them. Rests on the GS1 General Specifications (application identifiers,
/// separators, dates, check digit), from memory; 09506000134352 is the article that GS1 uses in its own examples, from
/// memory too, and its last digit checks.</summary>
[Trait("basis", "published")]
public sealed class ScannedLabelTests
{
    private const string Gtin = "09506000134352";
    private static readonly DateOnly Today = new(2026, 3, 2);

    [Theory]
    [InlineData("0109506000134352" + "17271231" + "10ABC-123")]
    [InlineData("0109506000134352" + "10ABC-123\u001d" + "17271231")]
    [InlineData("]d20109506000134352" + "17271231" + "10ABC-123")]
    [InlineData("]C10109506000134352" + "11250101" + "17271231" + "21S-9\u001d" + "10ABC-123\r\n")]
    [InlineData("\u001d0109506000134352" + "3102000150" + "17271231" + "240XYZ\u001d" + "10ABC-123")]
    [InlineData("(01)09506000134352(17)271231(10)ABC-123")]
    public void Article_expiry_and_lot_are_read_in_any_order(string text)
    {
        ScannedLabel label = ScannedLabel.Read(text, Today);

        Assert.Equal((Gtin, "ABC-123", new DateOnly(2027, 12, 31), false, ""),
            (label.Gtin, label.Lot, label.Expires, label.IsPlain, label.Problem));
    }

    [Theory]
    [InlineData("270200", "2027-02-28")] // day 00: the last of the month
    [InlineData("280200", "2028-02-29")]
    [InlineData("760131", "2076-01-31")] // 50 ahead: this century
    [InlineData("770131", "1977-01-31")] // 51 ahead: the last one
    public void A_date_has_its_month_and_century(string date, string day) => Assert.Equal(
        DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture),
        ScannedLabel.Read("(17)" + date, Today).Expires);

    [Theory]
    [InlineData("LOT 4711")]
    [InlineData("0109506000134353")] // looks like it, and does not check
    [InlineData("01234")]
    [InlineData("")]
    public void Any_other_text_stands_as_the_lot(string text)
    {
        ScannedLabel label = ScannedLabel.Read(text, Today);

        Assert.Equal((true, text, ""), (label.IsPlain, label.Lot, label.Gtin));
    }

    [Theory]
    [InlineData("(01)09506000134353(10)A", "does not check")]
    [InlineData("(17)271331(10)A", "no day")]
    [InlineData("]d201095060001", "not be read whole")]
    [InlineData("]d2AB", "not be read whole")]
    [InlineData("(1)5", "not be read whole")]
    public void What_is_wrong_is_told_and_not_guessed(string text, string told) =>
        Assert.Contains(told, ScannedLabel.Read(text, Today).Problem, StringComparison.Ordinal);

    // Whatever a scanner types, it is read or told; seed of its own.
    [Fact, Trait("basis", "law")]
    public void No_text_brings_it_down() => CsCheck.Check.Sample(
        CsCheck.Gen.String[CsCheck.Gen.Char["01()]dC 7A\u001d29"], 0, 60],
        text => Assert.NotNull(ScannedLabel.Read(text, Today)), seed: "0000KfJ1wF92", iter: 20_000);

    [Theory]
    [InlineData("09506000134352", true)]
    [InlineData("09506000134325", false)] // two digits changed places
    [InlineData("9506000134352", false)]
    public void The_check_digit_is_checked(string digits, bool holds) =>
        Assert.Equal(holds, ScannedLabel.IsGtin(digits));
}
