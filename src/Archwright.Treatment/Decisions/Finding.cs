namespace Archwright.Treatment.Decisions;

/// <summary>What a rule finds.</summary>
public enum FindingKind
{
    /// <summary>Speaks for the wire, or says nothing against it.</summary>
    For,

    /// <summary>Worth knowing; does not rule the wire out.</summary>
    Note,

    /// <summary>Rules the wire out.</summary>
    Against,
}

/// <summary>The finding of one rule on one wire: a figure, what it is held against, and the sentence that a clinician
/// would say.</summary>
/// <param name="Rule">Name of the rule, such as <c>ceilings</c>.</param>
/// <param name="Kind">Whether it speaks against the wire.</param>
/// <param name="Sentence">In words.</param>
/// <param name="Figure">What was found; null where there is no figure.</param>
/// <param name="Limit">What it is held against; null where nothing is.</param>
/// <param name="Unit">Unit of both; empty where there is none.</param>
public sealed record Finding(
    string Rule, FindingKind Kind, string Sentence, double? Figure = null, double? Limit = null, string Unit = "");
