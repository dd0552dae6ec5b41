namespace Archwright.Validation.Record;

/// <summary>One published figure and how it is computed here: a row of <c>Record/checks.csv</c>.</summary>
public sealed record PublishedCheck
{
    /// <summary>Short name, unique.</summary>
    public required string Id { get; init; }

    /// <summary>What it belongs to, such as "Brackets".</summary>
    public required string Chapter { get; init; }

    /// <summary>What is compared, in words.</summary>
    public required string Title { get; init; }

    /// <summary>Figure or range as published.</summary>
    public required Interval Published { get; init; }

    /// <summary>Unit of published and computed figure; "1" for a plain number.</summary>
    public required string Unit { get; init; }

    /// <summary>Scatter or remark of the source, in words; may be empty.</summary>
    public required string Spread { get; init; }

    /// <summary>What is taken as agreement, and was settled before the figure was computed.</summary>
    public required Interval Accept { get; init; }

    /// <summary>The same as it was written: <c>±0.1</c>, <c>±5 %</c> or <c>1.1..1.6</c>.</summary>
    public required string AcceptWords { get; init; }

    /// <summary>Why so wide; may be empty where the digits of the source say it.</summary>
    public required string Why { get; init; }

    /// <summary>Authors, title, journal, year.</summary>
    public required string Source { get; init; }

    /// <summary>How the published figure was had: found, from memory or computed from a definition.</summary>
    public required string How { get; init; }

    /// <summary>Name of the set-up that computes it.</summary>
    public required string Compute { get; init; }

    /// <summary>Figures of the set-up.</summary>
    public required SetUp With { get; init; }

    /// <summary>True when nobody has seen the published figure: such a row fails nothing by itself.</summary>
    public bool IsFromMemory => How.StartsWith("from memory", StringComparison.Ordinal);
}
