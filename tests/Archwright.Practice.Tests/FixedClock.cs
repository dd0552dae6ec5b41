namespace Archwright.Practice.Tests;

/// <summary>It is always the moment of the samples.</summary>
internal sealed class FixedClock : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => Samples.Now;
}
