using Archwright.Web.Keeping;

namespace Archwright.Web.Tests.Keeping;

/// <summary>When ladders are worked out by themselves. Rests on the hours that the class names.</summary>
[Trait("basis", "law")]
public sealed class NightlyLaddersTests
{
    [Theory]
    [InlineData("2026-03-02T01:59", null, false)]
    [InlineData("2026-03-02T02:00", null, true)]
    [InlineData("2026-03-02T04:59", "2026-03-01", true)]
    [InlineData("2026-03-02T03:00", "2026-03-02", false)]
    [InlineData("2026-03-02T05:00", "2026-03-01", false)]
    [InlineData("2026-03-02T14:00", null, false)]
    public void Once_a_night_and_never_by_day(string now, string? last, bool expected) => Assert.Equal(
        expected,
        NightlyLadders.IsTime(
            DateTime.Parse(now, System.Globalization.CultureInfo.InvariantCulture),
            last is null ? null : DateOnly.Parse(last, System.Globalization.CultureInfo.InvariantCulture)));
}
