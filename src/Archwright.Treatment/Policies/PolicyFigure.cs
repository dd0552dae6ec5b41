using Archwright.Dentition.Tables;

namespace Archwright.Treatment.Policies;

/// <summary>One figure of a policy: what it means, and where it comes from.</summary>
/// <param name="Name">How the file calls it, such as <c>spent_speed</c>.</param>
/// <param name="Meaning">In one sentence.</param>
/// <param name="Figure">Value, unit, source and how it was had.</param>
public sealed record PolicyFigure(string Name, string Meaning, Sourced Figure)
{
    /// <summary>The value, in the unit of <see cref="Figure"/>.</summary>
    public double Value => Figure.Value;
}

/// <summary>Which load of a wire ceilings are held against.</summary>
public enum JudgedLoad
{
    /// <summary>Once the ligament has given: the load that stays.</summary>
    OnceGiven,

    /// <summary>On tying in, as if teeth were rigid: the load of the moment.</summary>
    OnTyingIn,
}

/// <summary>Weeks to the next visit: the shortest that makes sense, the usual, the longest.</summary>
/// <param name="For">What it is for.</param>
/// <param name="Low">Shortest [weeks].</param>
/// <param name="Usual">Usual [weeks].</param>
/// <param name="High">Longest [weeks].</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="How">How the figures were had.</param>
public sealed record PolicyInterval(
    IntervalKind For, int Low, int Usual, int High, string Source, string How);

/// <summary>What an interval is for.</summary>
public enum IntervalKind
{
    /// <summary>A round wire of an alloy that transforms.</summary>
    TransformingRound,

    /// <summary>A rectangular wire of an alloy that transforms.</summary>
    TransformingRectangular,

    /// <summary>A wire of steel, cobalt-chromium or titanium-molybdenum, round or stranded.</summary>
    OtherRound,

    /// <summary>A rectangular wire of those.</summary>
    OtherRectangular,

    /// <summary>A patient to be seen sooner: sore, an alert, or a tooth tied at a distance.</summary>
    Cautious,
}

/// <summary>What an alert does to the advice.</summary>
public enum AlertAct
{
    /// <summary>No wire is put forward before the clinician has looked.</summary>
    LookFirst,

    /// <summary>No wire heavier than the present one is put forward.</summary>
    NoStepUp,

    /// <summary>Wires above the share of nickel are not put forward.</summary>
    NoNickel,

    /// <summary>The ceilings are lowered.</summary>
    LowerCeilings,
}

/// <summary>How the practice deals with an alert.</summary>
/// <param name="Alert">Which.</param>
/// <param name="Act">What it does.</param>
/// <param name="Sentence">What is said to the clinician.</param>
/// <param name="Source">Why.</param>
/// <param name="How">How the reason was had.</param>
public sealed record PolicyAlert(
    Decisions.PatientAlert Alert, AlertAct Act, string Sentence, string Source, string How);

/// <summary>How sore people are at a time after a new wire, against the worst time.</summary>
/// <param name="Hour">Hours after the visit.</param>
/// <param name="Share">Of the peak, 0 to 1.</param>
public readonly record struct SorenessPoint(double Hour, double Share);
