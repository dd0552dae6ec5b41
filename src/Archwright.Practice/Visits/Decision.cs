using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Values;

namespace Archwright.Practice.Visits;

/// <summary>What the clinician does with the wire of an arch.</summary>
public enum WireAct
{
    /// <summary>The wire that was found goes back in.</summary>
    Keep,

    /// <summary>Another piece is fitted, taken from stock.</summary>
    Fit,

    /// <summary>The arch is left without a wire.</summary>
    LeaveOut,
}

/// <summary>What the clinician decided for one arch.</summary>
/// <param name="Act">What is done.</param>
/// <param name="WireId">The wire in place afterwards; empty when there is none.</param>
/// <param name="LotId">The lot it is taken from; null when no piece is taken.</param>
/// <param name="Reason">Why, where it differs from the advice; empty otherwise.</param>
public sealed record Decision(WireAct Act, string WireId, Guid? LotId, string Reason);

/// <summary>The wire that was found in the mouth.</summary>
/// <param name="WireId">Which.</param>
/// <param name="Since">When it was fitted.</param>
public sealed record WireFound(string WireId, DateOnly Since)
{
    /// <summary>Whole weeks in the mouth on a day.</summary>
    public int WeeksOn(DateOnly day) => (day.DayNumber - Since.DayNumber) / 7;
}

/// <summary>One arch at one visit: what was found and seen, what was advised, what was decided and done.</summary>
public sealed record ArchVisit
{
    /// <summary>Nothing noted yet.</summary>
    public static ArchVisit Blank { get; } = new();

    /// <summary>The wire found; null when there was none.</summary>
    public WireFound? Found { get; init; }

    /// <summary>Positions seen; null while nobody has looked.</summary>
    public ArchSeen? Seen { get; init; }

    /// <summary>Places that hold no bracket today; of a tooth not named the appliance counts. Null while nobody has
    /// said anything, which is as last time.</summary>
    public ToothMap<BareTooth>? Bare { get; init; }

    /// <summary>The advice as it was given; null when none was asked for.</summary>
    public Recommendation? Advised { get; init; }

    /// <summary>What was decided; null while open.</summary>
    public Decision? Decided { get; init; }

    /// <summary>Tie of each bonded tooth; a tooth not named is not noted yet.</summary>
    public ToothMap<TieKind> Ties { get; init; } = ToothMap<TieKind>.Empty;

    /// <summary>The wire's end on the patient's right; null while not noted.</summary>
    public WireEnds? RightEnd { get; init; }

    /// <summary>The wire's end on the patient's left; null while not noted.</summary>
    public WireEnds? LeftEnd { get; init; }

    /// <summary>How the ends are held; where right and left differ, the freer of both.</summary>
    public WireEnds FreerEnd => (RightEnd, LeftEnd) switch
    {
        (WireEnds.Cinched, WireEnds.Cinched) => WireEnds.Cinched,
        (WireEnds.Stopped, WireEnds.Stopped) => WireEnds.Stopped,
        _ => WireEnds.Free,
    };

    /// <summary>True when an advice rests on the positions and brackets noted here.</summary>
    public bool Bears(Recommendation advice) => Seen is { } seen
        && advice.Inputs.Positions.Equals(seen.Positions)
        && advice.Inputs.Bare.Equals(Bare ?? ToothMap<BareTooth>.Empty);
}

/// <summary>Everything that is noted at one visit. Immutable: an edit makes a new one.</summary>
public sealed record VisitContent
{
    /// <summary>Nothing noted yet.</summary>
    public static VisitContent Blank { get; } = new();

    /// <summary>The upper arch; null when it carries no appliance.</summary>
    public ArchVisit? Upper { get; init; }

    /// <summary>The lower arch; null when it carries no appliance.</summary>
    public ArchVisit? Lower { get; init; }

    /// <summary>Discomfort since the last visit; null when not asked.</summary>
    public Discomfort? Discomfort { get; init; }

    /// <summary>How clean; null when not noted.</summary>
    public Hygiene? Hygiene { get; init; }

    /// <summary>What had broken.</summary>
    public Listing<Breakage> Breakages { get; init; } = Listing<Breakage>.Empty;

    /// <summary>Photographs taken.</summary>
    public Listing<Photo> Photos { get; init; } = Listing<Photo>.Empty;

    /// <summary>Ids of the alerts that were read.</summary>
    public Listing<Guid> AlertsRead { get; init; } = Listing<Guid>.Empty;

    /// <summary>Anything else worth writing down.</summary>
    public string Note { get; init; } = "";

    /// <summary>Weeks to the next visit; null while not settled.</summary>
    public int? NextInWeeks { get; init; }

    /// <summary>One of the two arches.</summary>
    public ArchVisit? Arch(Jaw jaw) => jaw == Jaw.Upper ? Upper : Lower;

    /// <summary>This with one of the two arches replaced.</summary>
    public VisitContent With(Jaw jaw, ArchVisit? arch) =>
        jaw == Jaw.Upper ? this with { Upper = arch } : this with { Lower = arch };
}
