using Archwright.Validation.Record;

namespace Archwright.Validation.Figures;

/// <summary>A picture of a part of the record: computed lines, published marks. Whoever draws it decides how.</summary>
public sealed record RecordFigure
{
    /// <summary>Short name, for files.</summary>
    public required string Name { get; init; }

    /// <summary>What there is to see.</summary>
    public required string Title { get; init; }

    /// <summary>How it was made, and what to look at.</summary>
    public required string Caption { get; init; }

    /// <summary>Words and unit along the bottom.</summary>
    public required string Across { get; init; }

    /// <summary>Words and unit along the left.</summary>
    public required string Up { get; init; }

    /// <summary>What was computed.</summary>
    public required IReadOnlyList<FigureLine> Lines { get; init; }

    /// <summary>What was published.</summary>
    public required IReadOnlyList<FigureMark> Marks { get; init; }
}

/// <summary>A computed line.</summary>
/// <param name="Name">For the legend.</param>
/// <param name="Points">In order.</param>
/// <param name="IsDashed">For a second set-up of the same wire.</param>
/// <param name="IsDots">Points that no line joins.</param>
public sealed record FigureLine(
    string Name, IReadOnlyList<(double X, double Y)> Points, bool IsDashed = false, bool IsDots = false);

/// <summary>A set of published figures of one kind.</summary>
/// <param name="Name">For the legend.</param>
/// <param name="Values">Place along the bottom, and figure or range.</param>
public sealed record FigureMark(string Name, IReadOnlyList<(double X, Interval Y)> Values);
