namespace Archwright.Validation.Record;

/// <summary>What came of a check.</summary>
public enum Verdict
{
    /// <summary>The computed figure lies in what is accepted.</summary>
    In,

    /// <summary>It does not, and why is not understood.</summary>
    Out,

    /// <summary>It does not, and the reason is known and written down, or the published figure is from memory
    /// alone.</summary>
    Explained,
}

/// <summary>A difference that is known: a row of <c>Record/differences.csv</c>.</summary>
/// <param name="Check">Id of the check.</param>
/// <param name="Computed">Where the computed figure lies; for one that leaves this range nothing is said.</param>
/// <param name="Verdict">Explained where the reason is understood; out where it is not.</param>
/// <param name="Reason">Why it differs, or what is known and what is not, in whole sentences.</param>
public sealed record KnownDifference(string Check, Interval Computed, Verdict Verdict, string Reason);

/// <summary>A check and what was computed.</summary>
/// <param name="Check">The published figure.</param>
/// <param name="Computed">Ours, in the unit of the check.</param>
/// <param name="Verdict">In, out or explained.</param>
/// <param name="Reason">What is known of the difference; may be empty.</param>
public sealed record CheckResult(PublishedCheck Check, double Computed, Verdict Verdict, string Reason);

/// <summary>A constant of the catalogue that was fitted to a published figure, which is then no check: a row of
/// <c>Record/fits.csv</c>.</summary>
/// <param name="Constant">Which.</param>
/// <param name="Value">As fitted, with its unit.</param>
/// <param name="FittedTo">The published figure.</param>
/// <param name="Source">Where that is from.</param>
public sealed record Fit(string Constant, string Value, string FittedTo, string Source);
