using System.Collections.Immutable;
using Archwright.Dentition.Comparison;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Decisions;

/// <summary>Everything that was computed for a visit; what is advised follows from it, the question and the policy
/// without further mechanics.</summary>
public sealed record ArchFigures
{
    /// <summary>Weeks looked ahead.</summary>
    public required int Weeks { get; init; }

    /// <summary>The wire in place; null when there is none or it is not known.</summary>
    public WireFigures? Present { get; init; }

    /// <summary>The wires to choose from, in the order of the question; the one in place left out.</summary>
    public required ImmutableArray<WireFigures> Wires { get; init; }

    /// <summary>Wires of the catalogue that are not in stock, looked at only where nothing in stock suits.</summary>
    public ImmutableArray<WireFigures> BeyondStock { get; init; } = [];

    /// <summary>The wire in place first, then the others, then those beyond the stock.</summary>
    public IEnumerable<WireFigures> All => (Present is { } present ? new[] { present } : [])
        .Concat(Wires).Concat(BeyondStock);

    /// <summary>The figures of a wire; null when it was not looked at.</summary>
    public WireFigures? Of(string wireId) => All.FirstOrDefault(
        one => string.Equals(one.Wire.Id, wireId, StringComparison.OrdinalIgnoreCase));
}

/// <summary>How a visit is to be computed.</summary>
public sealed record VisitOptions
{
    /// <summary>By what it is judged.</summary>
    public VisitPolicy Policy { get; init; } = VisitPolicy.Default;

    /// <summary>How forces and teeth read in sentences.</summary>
    public SentenceStyle Style { get; init; } = SentenceStyle.Default;

    /// <summary>Weeks looked ahead; null: the usual interval of the present wire, or of a first round wire.</summary>
    public int? Weeks { get; init; }

    /// <summary>Whether every wire is computed to its end, even those that cannot come out first.</summary>
    public bool Exhaustive { get; init; }

    /// <summary>Whether, where nothing in stock suits, the rest of the catalogue is looked at for what would.</summary>
    public bool LooksBeyondStock { get; init; } = true;

    /// <summary>Most threads; null: as many as the machine likes. What is advised does not depend on it.</summary>
    public int? Threads { get; init; }
}

/// <summary>How far the computing of a visit has come.</summary>
/// <param name="Done">Wires engaged or followed.</param>
/// <param name="Of">All that are to be, as far as is known.</param>
public readonly record struct VisitProgress(int Done, int Of);
