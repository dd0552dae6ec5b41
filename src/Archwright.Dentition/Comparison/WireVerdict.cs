namespace Archwright.Dentition.Comparison;

/// <summary>What to think of a wire on an arch; the order is that of the ranking.</summary>
public enum WireVerdict
{
    /// <summary>Goes in, stays elastic, no tooth above its ceiling.</summary>
    WithinLimits,

    /// <summary>Goes in and stays elastic (or transforms without harm), but loads a tooth above its
    /// ceiling.</summary>
    AboveCeiling,

    /// <summary>Goes in, but would bend for good.</summary>
    BendsForGood,

    /// <summary>Cannot be engaged.</summary>
    NotEngaged,
}
