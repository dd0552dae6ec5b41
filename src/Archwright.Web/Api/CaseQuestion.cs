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

    /// <summary>Sequences of wires from today to the working wire.</summary>
    Ladder,
}

/// <summary>A case that another program sent, and what it asks about it. The case has been read once by the reader
/// of case files, which refuses what it does not understand.</summary>
public sealed record CaseQuestion
{
    /// <summary>What is asked.</summary>
    public required CaseTask Task { get; init; }

    /// <summary>The case file as it was sent.</summary>
    public required string CaseText { get; init; }

    /// <summary>How far a forecast looks ahead [weeks].</summary>
    public int Weeks { get; init; }

    /// <summary>Forecasts by chance, for ranges; 0 for one at the median rate. Of a ladder: patients by chance; 0 for
    /// a slow, a usual and a quick one.</summary>
    public int Draws { get; init; }

    /// <summary>The same number gives the same draws.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Another wire of the catalogue in place of the one of the case; null for that one.</summary>
    public string? Wire { get; init; }

    /// <summary>Whether a forecast follows the alloy with its plateau, its unloading and its history.</summary>
    public bool WholeLaw { get; init; }

    /// <summary>How wires rub: none, wet, dry or a coefficient; null: as the case says.</summary>
    public string? Friction { get; init; }

    /// <summary>Firmness of lips and cheeks over that of average people; null: as the case says.</summary>
    public double? SoftTissue { get; init; }

    /// <summary>Ids of the wires to choose among; null for the catalogue, or for the stock that the case names.
    /// </summary>
    public IReadOnlyList<string>? Stock { get; init; }

    /// <summary>Tooth of the case whose chain of figures a visit is to tell, ISO number; null for none.</summary>
    public string? Explain { get; init; }

    /// <summary>Id of the wire of which a visit is to tell what each rule finds; null for none.</summary>
    public string? WhyNot { get; init; }

    /// <summary>Whether a visit is to tell which inputs would turn the recommendation.</summary>
    public bool Sensitivity { get; init; }

    /// <summary>Id of the wire that a ladder is to end with; null for the one of the case, or the usual one.</summary>
    public string? To { get; init; }

    /// <summary>Ids of the wires of the clinician's own sequence, in order; null where none is asked about.</summary>
    public IReadOnlyList<string>? Sequence { get; init; }

    /// <summary>What wires cost, by id, in one currency; null where that is not known.</summary>
    public IReadOnlyDictionary<string, decimal>? Prices { get; init; }
}
