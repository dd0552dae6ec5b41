namespace Archwright.Web.Api;

/// <summary>What the API computes on a case.</summary>
public enum CaseTask
{
    /// <summary>Force and moment on every tooth.</summary>
    Solve,

    /// <summary>Every wire on this arch, ranked.</summary>
    Compare,

    /// <summary>Where the teeth will be, week by week.</summary>
    Forecast,

    /// <summary>Keep, step up, step down or look first.</summary>
    Visit,
}

/// <summary>A case that another program sent, and what it asks about it. The case has been read once by the reader
/// of case files, which refuses what it does not understand.</summary>
public sealed record CaseQuestion
{
    /// <summary>What is asked.</summary>
    public required CaseTask Task { get; init; }

    /// <summary>The case file as it was sent.</summary>
    public required string CaseText { get; init; }

    /// <summary>How far a forecast looks ahead.</summary>
    public int Weeks { get; init; }

    /// <summary>Forecasts by chance, for ranges; 0 for one at the median rate.</summary>
    public int Draws { get; init; }

    /// <summary>The same number gives the same draws.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Another wire of the catalogue in place of the one of the case; null for that one.</summary>
    public string? Wire { get; init; }

    /// <summary>Whether a forecast follows the alloy with its plateau, its unloading and its history.</summary>
    public bool WholeLaw { get; init; }

    /// <summary>Ids of the wires to choose among; null for the catalogue, or for the stock that the case names.
    /// </summary>
    public IReadOnlyList<string>? Stock { get; init; }
}
