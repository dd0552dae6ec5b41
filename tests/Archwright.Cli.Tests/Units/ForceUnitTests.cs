using Archwright.Cli.Units;

namespace Archwright.Cli.Tests.Units;

public sealed class ForceUnitTests
{
    /// <summary>Standard gravity is 9.80665 m/s² by definition (3rd CGPM 1901, declaration on the unit of mass; from
    /// memory), so a gram-force is 9.80665 mN; centi is a hundredth (SI prefix).</summary>
    [Theory, Trait("basis", "published")]
    [InlineData("cN", 1, 100)]
    [InlineData("gf", 0.00980665, 1)]
    [InlineData("N", 2.5, 2.5)]
    public void Units_follow_their_definitions(string symbol, double newtons, double figure)
    {
        ForceUnit unit = Assert.IsType<ForceUnit>(ForceUnit.Find(symbol));

        Assert.Equal(figure, unit.Of(newtons), tolerance: 1e-12);
    }

    [Theory, Trait("basis", "ours")]
    [InlineData("cN", 1.4349, "143 cN")]
    [InlineData("gf", 1.4349, "146 gf")]
    [InlineData("N", 1.4349, "1.43 N")]
    [InlineData("N", -1.4349, "−1.43 N")]
    [InlineData("cN", -0.001, "0 cN")]
    public void A_force_is_written_with_its_unit_and_never_as_minus_nothing(string symbol, double force, string text) =>
        Assert.Equal(text, Assert.IsType<ForceUnit>(ForceUnit.Find(symbol)).Force(force));

    [Theory, Trait("basis", "ours")]
    [InlineData("cN", "1234 cN·mm")]
    [InlineData("gf", "1258 gf·mm")]
    [InlineData("N", "12.3 N·mm")]
    public void A_moment_follows_the_unit_of_forces(string symbol, string text) =>
        Assert.Equal(text, Assert.IsType<ForceUnit>(ForceUnit.Find(symbol)).Moment(12.34));

    [Fact, Trait("basis", "ours")]
    public void Symbols_are_found_in_any_case_and_nothing_else_is()
    {
        Assert.Same(ForceUnit.Newton, ForceUnit.Find("n"));
        Assert.Null(ForceUnit.Find("lb"));
    }
}
