using Archwright.Dentition.Catalogue;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;

namespace Archwright.Exchange.CaseFiles;

/// <summary>A wire as a file gives it; what could not be read is null.</summary>
internal sealed record WireGiven
{
    public Section? Section { get; init; }

    public Alloy? Alloy { get; init; }

    public string? WireId { get; init; }

    public string? AlloyId { get; init; }

    public RestShape? Rest { get; init; }

    public WireEnds? Ends { get; init; }

    /// <summary>Section and alloy together, when both were read.</summary>
    public Wire? Wire => Section is { } section && Alloy is { } alloy ? new Wire(section, alloy) : null;
}

/// <summary>Reads a wire: a catalogue id, or alloy and section written out.</summary>
internal static class WireReading
{
    private const string Whose = "of the wire";

    public static WireGiven Wire(Node node, ProblemList problems)
    {
        if (Fields.Of(node, CaseKeys.Wire, Whose, problems) is not { } fields)
            return new WireGiven();

        WireGiven wire = fields.Has("catalogue") ? FromCatalogue(fields, problems) : WrittenOut(fields, problems);
        return wire with
        {
            Rest = fields.Find("rest") is { } rest
                ? RestReading.Rest(rest, problems)
                : new RestShape.ThroughRestSlots(),
            Ends = fields.WordOr("ends", "free", "free", "stopped", "cinched") switch
            {
                "free" => WireEnds.Free,
                "stopped" => WireEnds.Stopped,
                "cinched" => WireEnds.Cinched,
                _ => null,
            },
        };
    }

    /// <summary>The wire of a bench test: straight, with free ends, whatever the wire of a case may have; of the
    /// catalogue with its whole law.</summary>
    public static WireGiven StraightWire(Node node, string whose, ProblemList problems)
    {
        WireGiven wire = Wire(node, problems);
        bool bent = node.Members.Any(m => m.Key == "rest") && wire.Rest is not (null or RestShape.Straight);
        if (bent || wire.Ends is WireEnds.Stopped or WireEnds.Cinched)
        {
            problems.Add(
                ProblemCodes.KeyOutOfPlace, node.PathOf(bent ? "rest" : "ends"),
                $"The wire of {whose} is straight, and its ends are free.",
                "Take “rest” and “ends” out.");
        }

        return WithWholeLaw(wire);
    }

    // A bench test of a wire of the catalogue is a test of its whole law.
    private static WireGiven WithWholeLaw(WireGiven wire)
    {
        if (wire.WireId is { } id && WireCatalogue.Default.TryFind(id, out CatalogueWire? known))
            return wire with { Alloy = known.Alloy.WholeLaw };

        return wire.AlloyId is { } alloyId && WireCatalogue.Default.TryFindAlloy(alloyId, out CatalogueAlloy? alloy)
            ? wire with { Alloy = alloy.WholeLaw }
            : wire;
    }

    private static WireGiven FromCatalogue(Fields fields, ProblemList problems)
    {
        if (fields.Has("alloy") || fields.Has("section"))
        {
            problems.Add(
                ProblemCodes.WireTwice, fields.Node.Path,
                "The wire has a catalogue id and is written out as well.",
                "Keep either “catalogue” or “alloy” with “section”.");
        }

        Node node = fields.Find("catalogue")!;
        return CatalogueId(node, Whose, problems) is { } wire
            ? new WireGiven { Section = wire.Section, Alloy = wire.Wire.Alloy, WireId = wire.Id }
            : new WireGiven();
    }

    private static CatalogueWire? CatalogueId(Node node, string whose, ProblemList problems)
    {
        if (NodeReading.Text(node, "catalogue id", whose, problems) is not { } id)
            return null;

        if (WireCatalogue.Default.TryFind(id, out CatalogueWire? wire))
            return wire;

        problems.Add(
            ProblemCodes.WireUnknown, node.Path,
            $"There is no wire {Say.Quote(id)} in the catalogue."
            + Nearest.Hint(id, WireCatalogue.Default.Wires.Select(w => w.Id)),
            "List the catalogue with “archwright wires”, or write the wire out with “alloy” and “section”.");
        return null;
    }

    private static WireGiven WrittenOut(Fields fields, ProblemList problems)
    {
        if (!fields.Has("alloy") && !fields.Has("section"))
        {
            problems.Add(
                ProblemCodes.WireUnsaid, fields.Node.Path, "The wire has neither a catalogue id nor alloy and section.",
                "Write { \"catalogue\": \"ss-016\" }, or give “alloy” and “section”.");
            return new WireGiven();
        }

        AlloyGiven? alloy = fields.Need("alloy") is { } a ? AlloyReading.Alloy(a, problems) : null;
        Section? section = fields.Need("section") is { } s ? SectionReading.Section(s, problems) : null;
        return new WireGiven { Section = section, Alloy = alloy?.Alloy, AlloyId = alloy?.Id };
    }
}
