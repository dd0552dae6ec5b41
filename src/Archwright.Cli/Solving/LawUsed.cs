namespace Archwright.Cli.Solving;

/// <summary>How much of the law of a wire the figures rest on.</summary>
internal enum LawKind
{
    /// <summary>The whole law: plateau, yielding, memory.</summary>
    Whole,

    /// <summary>The elastic part; the wire stays in it, where the whole law says the same.</summary>
    Elastic,

    /// <summary>The first modulus, as if the wire were elastic without end.</summary>
    FirstModulus,

    /// <summary>The law that the case writes out.</summary>
    AsWritten,
}

/// <summary>How much of the law of a wire the figures rest on, and why.</summary>
/// <param name="Kind">How much.</param>
/// <param name="WhyNotWhole">Why the whole law gave no answer though it was asked; null where it did, or was not
/// asked.</param>
internal sealed record LawUsed(LawKind Kind, string? WhyNotWhole = null)
{
    /// <summary>How a file writes it.</summary>
    public string Code => Kind switch
    {
        LawKind.Whole => "whole",
        LawKind.Elastic => "elastic",
        LawKind.FirstModulus => "first-modulus",
        _ => "as-written",
    };
}
