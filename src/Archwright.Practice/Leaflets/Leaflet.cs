using Archwright.Practice.Values;

namespace Archwright.Practice.Leaflets;

/// <summary>A question of a leaflet and what is said to it.</summary>
/// <param name="Key">Which question: "eat".</param>
/// <param name="Heading">The question.</param>
/// <param name="Lines">The answer; each line stands by itself.</param>
public sealed record LeafletSection(string Key, string Heading, Listing<string> Lines);

/// <summary>What a patient takes home from a visit. It holds no name and no birth date: who prints it adds the
/// name.</summary>
public sealed record Leaflet
{
    /// <summary>Code of its language.</summary>
    public required string Language { get; init; }

    /// <summary>True when it is written from right to left.</summary>
    public required bool IsRightToLeft { get; init; }

    /// <summary>That a speaker has yet to review the texts; empty where that is done.</summary>
    public required string ReviewNote { get; init; }

    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>Day of the visit.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>Questions and answers.</summary>
    public required Listing<LeafletSection> Sections { get; init; }

    /// <summary>Who wrote it, and that it does not replace what the team says.</summary>
    public required string Foot { get; init; }

    /// <summary>Everything it says, in order, a line a sentence group.</summary>
    public IEnumerable<string> AllLines() =>
        [Title, .. Sections.SelectMany(section => section.Lines.Prepend(section.Heading)), Foot];
}
