namespace Archwright.Exchange.Problems;

/// <summary>A kind of problem.</summary>
/// <param name="Code">Stable: once released, a code never changes its meaning and is never given anew.</param>
/// <param name="Title">What it is about, in a few words: the heading of its entry in <c>docs/problems.md</c>.</param>
public sealed record ProblemCode(string Code, string Title)
{
    /// <inheritdoc/>
    public override string ToString() => Code;
}
