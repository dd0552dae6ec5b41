using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;

namespace Archwright.Treatment.Ladders;

/// <summary>One wire at one visit: its figures and what the rules say of it.</summary>
internal sealed record LadderFit
{
    private readonly bool? _keepsThickerOut;

    public required WireFigures Figures { get; init; }

    /// <summary>What speaks against it, in the order of the rules; empty when it may go in.</summary>
    public ImmutableArray<Finding> Against { get; init; } = [];

    /// <summary>Whether the mechanics speaks against it: it does not go in, takes a set, or passes a ceiling.</summary>
    public bool IsRuledOut { get; init; }

    /// <summary>Whether every wire of its alloy whose section holds its own is kept out as well.</summary>
    public bool KeepsThickerOut
    {
        get => _keepsThickerOut ?? IsRuledOut;
        init => _keepsThickerOut = value;
    }

    /// <summary>Comfort index of its engagement; nil for a wire that is in place already.</summary>
    public double ComfortIndex { get; init; }

    public bool Allowed => Against.IsEmpty;

    public CatalogueWire Wire => Figures.Wire;

    public bool HasLooseTies => !Figures.TiedAtDistance.IsEmpty;
}
