namespace Archwright.Treatment.Ladders;

/// <summary>What a sequence of wires is good for.</summary>
public enum LadderKind
{
    /// <summary>No sequence with fewer visits was found.</summary>
    FewestVisits,

    /// <summary>No sequence with a clearly lower worst comfort index was found.</summary>
    Gentlest,

    /// <summary>No sequence with fewer weeks was found.</summary>
    Fastest,

    /// <summary>The clinician's own.</summary>
    Asked,

    /// <summary>None keeps to the ceilings; this one passes them least.</summary>
    Nearest,
}

/// <summary>Words of the kinds.</summary>
public static class LadderKinds
{
    /// <summary>The word in files: "fewest-visits".</summary>
    public static string Word(this LadderKind kind) => kind switch
    {
        LadderKind.FewestVisits => "fewest-visits",
        LadderKind.Gentlest => "gentlest",
        LadderKind.Fastest => "fastest",
        LadderKind.Asked => "asked",
        LadderKind.Nearest => "nearest",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind."),
    };

    /// <summary>In a sentence: "fewest visits".</summary>
    public static string Name(this LadderKind kind) => kind switch
    {
        LadderKind.FewestVisits => "fewest visits",
        LadderKind.Asked => "your own",
        LadderKind.Nearest => "nearest to the ceilings",
        _ => kind.Word(),
    };
}
