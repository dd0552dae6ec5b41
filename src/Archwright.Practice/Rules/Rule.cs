namespace Archwright.Practice.Rules;

/// <summary>A rule of the practice, named by its sentence.</summary>
/// <param name="Code">How tests, logs and pages name it.</param>
/// <param name="Sentence">The rule in words.</param>
public sealed record Rule(string Code, string Sentence);

/// <summary>Somebody asked for what a rule forbids. The message says what and how to mend it, for the screen.</summary>
public sealed class RuleBrokenException : InvalidOperationException
{
    /// <summary>A broken rule.</summary>
    /// <param name="rule">Which.</param>
    /// <param name="message">What was asked, and what to do instead, in the reader's words.</param>
    public RuleBrokenException(Rule rule, string message)
        : base(message) => Rule = rule;

    /// <summary>Which rule.</summary>
    public Rule Rule { get; }
}
