using Archwright.Cli.Running;
using CsCheck;

namespace Archwright.Cli.Tests.Running;

public sealed class WrapTests
{
    [Fact, Trait("basis", "law")]
    public void Wrapping_loses_no_word_and_keeps_to_the_width()
    {
        Gen<string> text = Gen.Char['a', 'c'].Array[1, 9].Select(letters => new string(letters)).Array[1, 30]
            .Select(words => string.Join(' ', words));
        text.Sample(
            words =>
            {
                string[] lines = [.. Wrap.Lines(words, 20)];
                return string.Join(' ', lines) == words && lines.All(line => line.Length <= 20);
            },
            seed: "0N0XIzNsQ0O2");
    }

    [Fact, Trait("basis", "ours")]
    public void A_unit_stays_with_its_figure() =>
        Assert.Equal(["a force of", "140 cN, then", "0.86 % of"], Wrap.Lines("a force of 140 cN, then 0.86 % of", 12));
}
