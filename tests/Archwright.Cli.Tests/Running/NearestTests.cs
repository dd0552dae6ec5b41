using Archwright.Cli.Running;
using CsCheck;

namespace Archwright.Cli.Tests.Running;

public sealed class NearestTests
{
    [Theory, Trait("basis", "ours")]
    [InlineData("slove", "solve")]
    [InlineData("--jsno", "--json")]
    [InlineData("comp", "compare")]
    [InlineData("WIRES", "wires")]
    public void A_slip_of_the_finger_is_guessed(string typed, string meant) =>
        Assert.Equal(meant, Nearest.To(typed, ["solve", "compare", "twist", "wires", "arch", "--json", "--plot"])[0]);

    [Fact, Trait("basis", "ours")]
    public void Nothing_is_guessed_where_nothing_is_near() =>
        Assert.Equal("", Nearest.Sentence("banana", ["solve", "compare"]));

    [Fact, Trait("basis", "law")]
    public void The_number_of_edits_is_a_distance()
    {
        Gen<string> word = Gen.Char['a', 'd'].Array[0, 6].Select(letters => new string(letters));
        Gen.Select(word, word).Sample(
            (a, b) =>
            {
                int edits = Nearest.Edits(a, b);
                return edits == Nearest.Edits(b, a) && edits == 0 == (a == b) && edits <= Math.Max(a.Length, b.Length)
                    && edits >= Math.Abs(a.Length - b.Length);
            },
            seed: "0N0XIzNsQ0O2");
    }
}
