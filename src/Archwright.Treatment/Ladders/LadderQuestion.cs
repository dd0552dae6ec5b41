using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Ladders;

/// <summary>What is asked: which wires, from today to the working wire.</summary>
public sealed record LadderQuestion
{
    /// <summary>The visit of today: arch, wire in place, wires to choose from, facts of the patient.</summary>
    public required VisitQuestion Today { get; init; }

    /// <summary>The wire that the ladder is to end with; null: the one of today's question, or the usual one for the
    /// slots.</summary>
    public CatalogueWire? To { get; init; }

    /// <summary>Whether the wire in place was decided today, so that it stays until the next visit whatever else might
    /// go in. Counts only where a wire is in place.</summary>
    public bool PresentStays { get; init; }

    /// <summary>The clinician's own sequence, to be set beside what is found; empty where none is asked about. It need
    /// not end with the working wire.</summary>
    public ImmutableArray<CatalogueWire> Asked { get; init; } = [];

    /// <summary>What wires cost; null where that is not known.</summary>
    public WirePrices? Prices { get; init; }

    /// <summary>The working wire of this question, and whether it was taken for granted.</summary>
    public (CatalogueWire Wire, bool IsAssumed) Working => To is { } to ? (to, false)
        : Today.WorkingWire is { } named ? (named, false)
        : (WorkingWires.Usual(Today.Arch), true);
}

/// <summary>How ladders are to be found.</summary>
public sealed record LadderOptions
{
    /// <summary>By what each visit is judged, and how far ladders are looked for (its figures <c>ladder_…</c>).
    /// </summary>
    public VisitPolicy Policy { get; init; } = VisitPolicy.Default;

    /// <summary>How forces and teeth read in sentences.</summary>
    public SentenceStyle Style { get; init; } = SentenceStyle.Default;

    /// <summary>Patients by chance over whom weeks are told; 0: a slow, a usual and a quick one.</summary>
    public int Draws { get; init; }

    /// <summary>The same number gives the same patients.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>Most threads; null: as many as the machine likes. The answer does not depend on it.</summary>
    public int? Threads { get; init; }

    /// <summary>Most draws.</summary>
    public const int MostDraws = 2000;

    /// <exception cref="ArgumentException">The first figure that makes no sense.</exception>
    internal void Check()
    {
        if (Draws is < 0 or > MostDraws)
            throw new ArgumentException($"There are 0 to {MostDraws} draws, not {Draws}.", nameof(Draws));
    }
}
