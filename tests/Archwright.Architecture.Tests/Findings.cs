namespace Archwright.Architecture.Tests;

/// <summary>Turns what a rule found into one message that names each place and teaches the reason.</summary>
internal static class Findings
{
    /// <summary>Fails with every finding, one a line, below the reason of the rule.</summary>
    public static void None(string reason, IEnumerable<string> findings)
    {
        List<string> found = [.. findings];
        if (found.Count > 0)
            Assert.Fail($"{reason}\n  {string.Join("\n  ", found)}");
    }

    /// <summary>Fails when a rule that ought to look at something had nothing to look at.</summary>
    public static IReadOnlyList<T> Some<T>(string what, IEnumerable<T> items)
    {
        List<T> all = [.. items];
        Assert.True(all.Count > 0, $"The rule found no {what}: it looks in the wrong place, or they were moved.");
        return all;
    }
}
