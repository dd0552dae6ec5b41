using System.Collections.Immutable;
using Archwright.Cli.Running;
using Archwright.Dentition.Catalogue;

namespace Archwright.Cli.Ladders;

/// <summary>Reads a sequence of wires as it is typed: ids, separated by commas.</summary>
internal static class SequenceText
{
    /// <summary>Most wires of a sequence.</summary>
    public const int Most = 12;

    /// <summary>The wires of a text; none where there is no text.</summary>
    /// <exception cref="Refusal">A part is empty, no wire, or the same as the one before; exit 2.</exception>
    public static ImmutableArray<CatalogueWire> Read(string? text)
    {
        if (text is null)
            return [];

        string[] parts = text.Split(',');
        if (parts.Any(string.IsNullOrWhiteSpace))
        {
            throw new Refusal(
                $"--sequence '{text}' has an empty part.",
                "Write ids separated by commas: --sequence niti-014,niti-018,ss-019x025");
        }

        if (parts.Length > Most)
            throw new Refusal($"--sequence takes up to {Most} wires, not {parts.Length}.", "Leave some out.");

        ImmutableArray<CatalogueWire> wires = [.. parts.Select(id => WireNames.Find(WireCatalogue.Default, id.Trim()))];
        for (int i = 1; i < wires.Length; i++)
        {
            if (wires[i].Id == wires[i - 1].Id)
            {
                throw new Refusal(
                    $"--sequence has {wires[i].Id} twice in a row.",
                    "Write each wire once: it is kept until the next may go in.");
            }
        }

        return wires;
    }
}
