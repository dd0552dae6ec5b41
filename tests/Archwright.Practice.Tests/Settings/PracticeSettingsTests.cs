using Archwright.Practice.Leaflets;
using Archwright.Practice.Rules;
using Archwright.Practice.Settings;

namespace Archwright.Practice.Tests.Settings;

/// <summary>In which language a patient is written to. Rests on what the practice settled.</summary>
[Trait("basis", "law")]
public sealed class PracticeSettingsTests
{
    [Theory]
    [InlineData("Polish", "pl")]
    [InlineData("spanish", "de")] // there are texts, and the practice does not offer them
    [InlineData("Turkish", "de")]
    [InlineData("", "de")]
    public void A_patient_is_written_to_in_their_language_where_it_is_offered_else_in_the_usual_one(
        string theirs, string code)
    {
        PracticeSettings settings = new PracticeSettings().Speaking(["pl", "de"], "de");

        Assert.Equal(code, settings.LanguageFor(theirs));
        Assert.Equal(theirs == "Polish", settings.Offers(theirs));
        Assert.Equal(["de", "pl"], settings.Offered); // in the order of the program
    }

    [Fact]
    public void A_practice_that_settled_nothing_offers_all_and_writes_english_else()
    {
        Assert.Equal(LeafletTexts.Codes, new PracticeSettings().Offered);
        Assert.Equal("en", new PracticeSettings().LanguageFor("Turkish"));
    }

    [Theory]
    [InlineData("en")]
    [InlineData("de", "pl")]
    [InlineData("xx", "xx")]
    public void Without_a_language_or_with_a_usual_one_that_is_not_offered_nothing_is_settled(
        string usual, params string[] offered) =>
        Assert.Throws<RuleBrokenException>(() => new PracticeSettings().Speaking(offered, usual));
}
