using System.Text.RegularExpressions;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Tests.Leaflets;

/// <summary>What a leaflet says of a visit. Rests on the decision itself and on what a leaflet must never
/// say.</summary>
[Trait("basis", "law")]
public sealed partial class LeafletWriterTests
{
    // Most that a leaflet may ask of its reader; orthodontic leaflets in use ask for 7.2 (J. Seehra et al., Progress
    // in Orthodontics 2016;17:15, found in excerpt).
    private const double MostGrade = 7;

    public static TheoryData<string> Codes => [.. LeafletTexts.Codes];

    [Fact]
    public void It_tells_what_was_decided()
    {
        for (int i = 0; i < LeafletSamples.Decisions.Count; i++)
            Assert.Equal(LeafletSamples.Decisions[i].Change, WireChanges.Of(LeafletSamples.Arch(i)));
    }

    [Fact]
    public void A_kept_wire_is_told_as_kept_and_a_new_one_as_new()
    {
        string kept = Text(LeafletSamples.Visit(new VisitContent { Upper = LeafletSamples.Arch(1) }));
        string stronger = Text(LeafletSamples.Visit(new VisitContent { Upper = LeafletSamples.Arch(2) }));
        string lighter = Text(LeafletSamples.Visit(new VisitContent { Lower = LeafletSamples.Arch(3) }));

        Assert.Contains("Top teeth: We kept the wire", kept, StringComparison.Ordinal);
        Assert.DoesNotContain("new, firmer", kept, StringComparison.Ordinal);
        Assert.Contains(
            "Top teeth: You got a new, firmer wire: a round, springy wire, 0.46 mm thick.", stronger,
            StringComparison.Ordinal);
        Assert.Contains("Bottom teeth: You got a softer wire again", lighter, StringComparison.Ordinal);
        Assert.DoesNotContain("Top teeth", lighter, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_told_before_something_is_decided() =>
        Assert.Null(LeafletWriter.Write(
            LeafletSamples.Visit(new VisitContent { Upper = ArchVisit.Blank }), LeafletTexts.In("en"), "Fernhollow"));

    [Fact]
    public void Every_english_leaflet_reads_at_grade_seven_or_below()
    {
        foreach (Visit visit in LeafletSamples.Visits())
        {
            Leaflet leaflet = Leaflet(visit);

            Assert.InRange(ReadingGrade.Of(leaflet.AllLines()), 0, MostGrade);
            Assert.All(
                leaflet.Sections.Where(section => section.Key != "call"),
                section => Assert.InRange(ReadingGrade.Of(section.Lines), -4, MostGrade + 2));
        }
    }

    [Theory, MemberData(nameof(Codes))]
    public void No_place_is_left_open_and_no_dose_is_ever_named(string code)
    {
        foreach (Visit visit in LeafletSamples.Visits())
        {
            string text = string.Join('\n', Leaflet(visit, code).AllLines());

            Assert.DoesNotContain('{', text);
            Assert.DoesNotMatch(Dose(), text);
        }
    }

    [Fact]
    public void A_planted_dose_is_found() => Assert.Matches(Dose(), "Take 2 tablets of 400 mg.");

    [Theory, MemberData(nameof(Codes))]
    public void Pain_relief_and_nickel_defer_to_the_practice(string code)
    {
        LeafletTexts texts = LeafletTexts.In(code);
        Leaflet leaflet = Leaflet(
            LeafletSamples.Visit(new VisitContent { Upper = LeafletSamples.Arch(0) }), code);

        Assert.Contains(texts["feel.relief"], leaflet.Sections.Single(one => one.Key == "feel").Lines);
        Assert.Equal([texts["nickel.much"]], leaflet.Sections.Single(one => one.Key == "nickel").Lines);
    }

    [Theory]
    [InlineData("bti-017x025", "nickel.none")]
    [InlineData("ss-016", "nickel.bound")]
    [InlineData("niti-016", "nickel.much")]
    [InlineData("cc-016", "nickel.much")]
    public void The_wire_in_place_decides_what_is_said_of_nickel(string wire, string key)
    {
        Leaflet leaflet = Leaflet(LeafletSamples.Visit(new VisitContent
        {
            Upper = new ArchVisit { Decided = new Decision(WireAct.Fit, wire, Guid.NewGuid(), "") },
        }));

        Assert.Equal(
            [LeafletTexts.In("en")[key]], leaflet.Sections.Single(one => one.Key == "nickel").Lines);
    }

    [Fact]
    public void The_next_visit_stands_in_each_language_s_own_way()
    {
        var content = new VisitContent { Upper = LeafletSamples.Arch(1), NextInWeeks = 6 };

        Assert.Contains("13 April 2026", Next("en"), StringComparison.Ordinal);
        Assert.Contains("13 de abril de 2026", Next("es"), StringComparison.Ordinal);
        Assert.Contains("13. April 2026", Next("de"), StringComparison.Ordinal);
        Assert.Contains("13 kwietnia 2026", Next("pl"), StringComparison.Ordinal);
        Assert.Contains("13/4/2026", Next("ar"), StringComparison.Ordinal);

        string Next(string code) => Leaflet(LeafletSamples.Visit(content), code).Sections[^1].Lines[0];
    }

    [Fact]
    public void The_practice_s_own_words_take_the_place_of_ours_in_their_language_alone()
    {
        var own = Listing<OwnText>.Of([new OwnText("en", "eat.text", "Soup."), new OwnText("en", "no.such", "x")]);
        Visit visit = LeafletSamples.Visit(new VisitContent { Upper = LeafletSamples.Arch(1) });

        Leaflet english = LeafletWriter.Write(visit, LeafletTexts.In("en", own), "F", "Well done with the elastics.")!;
        Leaflet german = LeafletWriter.Write(visit, LeafletTexts.In("de", own), "F")!;

        Assert.Equal(["Soup."], english.Sections.Single(one => one.Key == "eat").Lines);
        Assert.Equal("Well done with the elastics.", english.Sections[0].Lines[^1]);
        Assert.NotEqual(["Soup."], german.Sections.Single(one => one.Key == "eat").Lines);
    }

    private static string Text(Visit visit) => string.Join('\n', Leaflet(visit).AllLines());

    private static Leaflet Leaflet(Visit visit, string code = "en") =>
        LeafletWriter.Write(visit, LeafletTexts.In(code), "Fernhollow")!; // every sample is decided

    [GeneratedRegex(@"\d\s*(mg|ml|µg|tablet|comprimido|قرص|ملغ)", RegexOptions.IgnoreCase)]
    private static partial Regex Dose();
}
