namespace Archwright.Practice.People;

/// <summary>What an alert is about. The first five change what the program advises; the last is for people to read.
/// </summary>
public enum AlertKind
{
    /// <summary>Reacts to nickel.</summary>
    Nickel,

    /// <summary>Roots have become shorter.</summary>
    RootShortening,

    /// <summary>A medicine that matters for tooth movement.</summary>
    Medicine,

    /// <summary>Poor hygiene, bleeding gums.</summary>
    Hygiene,

    /// <summary>Less bone than usual around some roots.</summary>
    ReducedSupport,

    /// <summary>Anything else worth reading before a decision.</summary>
    Other,
}

/// <summary>Something to know before anything is decided.</summary>
/// <param name="Id">Its identity.</param>
/// <param name="Kind">What it is about.</param>
/// <param name="Text">In words.</param>
/// <param name="Since">Day from which it is known.</param>
/// <param name="EndedOn">Day from which it no longer holds; null while it holds.</param>
/// <param name="EndedBecause">Why it no longer holds, and who says so; null while it holds.</param>
public sealed record Alert(
    Guid Id, AlertKind Kind, string Text, DateOnly Since, DateOnly? EndedOn = null, string? EndedBecause = null)
{
    /// <summary>True on a day on which it holds.</summary>
    public bool HoldsOn(DateOnly day) => EndedOn is null || day < EndedOn;
}

/// <summary>Words of the kinds of alert.</summary>
public static class AlertKinds
{
    /// <summary>In a word or two: "nickel".</summary>
    public static string Word(this AlertKind kind) => kind switch
    {
        AlertKind.Nickel => "nickel",
        AlertKind.RootShortening => "roots",
        AlertKind.Medicine => "medicine",
        AlertKind.Hygiene => "hygiene",
        AlertKind.ReducedSupport => "reduced bone",
        AlertKind.Other => "note",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind of alert."),
    };
}
