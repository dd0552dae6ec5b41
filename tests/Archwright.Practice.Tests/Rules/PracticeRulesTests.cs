using System.Reflection;
using System.Text.RegularExpressions;
using Archwright.Practice.Rules;

namespace Archwright.Practice.Tests.Rules;

/// <summary>Every rule holds: it lets through what keeps it and stops what breaks it. Rests on the rules' own
/// sentences.</summary>
[Trait("basis", "law")]
public sealed class PracticeRulesTests
{
    public static TheoryData<string> Codes => [.. PracticeRules.All.Select(rule => rule.Code)];

    [Fact]
    public void Every_rule_is_in_the_list_and_has_its_cases()
    {
        IEnumerable<string> declared = typeof(PracticeRules).GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(field => field.Name).Order(StringComparer.Ordinal);

        Assert.Equal(declared, PracticeRules.All.Select(rule => rule.Code).Order(StringComparer.Ordinal));
        Assert.Equal(
            PracticeRules.All.Select(rule => rule.Code), RuleCases.All.Select(rule => rule.Rule.Code));
        Assert.All(RuleCases.All, rule => Assert.NotEmpty(rule.Breaks));
    }

    [Theory, MemberData(nameof(Codes))]
    public void What_keeps_a_rule_is_let_through(string code) => Case(code).Keeps();

    [Theory, MemberData(nameof(Codes))]
    public void What_breaks_a_rule_is_stopped_with_words_of_help(string code)
    {
        foreach (Action act in Case(code).Breaks)
        {
            RuleBrokenException broken = Assert.Throws<RuleBrokenException>(act);
            Assert.Equal(code, broken.Rule.Code);
            Assert.EndsWith(".", broken.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_tooth_is_named_in_words_beside_its_number_in_every_message()
    {
        string[] messages =
        [
            .. RuleCases.All.SelectMany(rule => rule.Breaks)
                .Select(act => Assert.Throws<RuleBrokenException>(act).Message),
        ];

        Assert.Contains(messages, message => message.Contains("(ISO 13)", StringComparison.Ordinal));
        // Two digits that could be a tooth, without its name before them, and no part of a date, a count or a measure.
        Assert.All(messages, message => Assert.DoesNotMatch(
            @"(?<!(upper|lower) (right|left) [a-z ]+ \(ISO )(?<![\d.-])[1-4][1-8](?![\d°]|\.\d|-| mm| years| MB| days)",
            Regex.Replace(message, @"1 to 26|age of \d\d", "")));
    }

    private static (Rule Rule, Action Keeps, Action[] Breaks) Case(string code) =>
        RuleCases.All.Single(rule => rule.Rule.Code == code);
}
