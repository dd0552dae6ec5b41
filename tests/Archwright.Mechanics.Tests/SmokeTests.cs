namespace Archwright.Mechanics.Tests;

public sealed class SmokeTests
{
    [Fact]
    public void It_builds() => Assert.True(true);
}
