using System.CommandLine;
using Archwright.Cli.Running;
using Archwright.Cli.Tables;
using Archwright.Dentition.Catalogue;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright wires</c>: the catalogue, or one wire with its sources.</summary>
internal static class WiresVerb
{
    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        Argument<string?> wire = Words.Optional("WIRE", "One wire by its id: its figures with their sources.");
        var alloy = new Option<string?>("--alloy")
        {
            Description = "Only wires of this alloy, as ss, bti or niti.", HelpName = "ALLOY",
        };
        Option<bool> json = CommonOptions.Json();
        var verb = new Verb("wires", "List the wires of the catalogue: stiffness, elastic range, play in the slot.")
        {
            Examples =
            [
                ("archwright wires", "the whole catalogue"),
                ("archwright wires --alloy niti", "the nickel-titanium wires"),
                ("archwright wires ss-019x025", "one wire, and where each figure comes from"),
            ],
        };
        verb.Add(wire);
        verb.Add(alloy);
        verb.Add(json);
        verb.SetAction(parsed => Run(
            terminal, parsed.GetValue(wire), parsed.GetValue(alloy), parsed.GetValue(json)));
        return verb;
    }

    private static int Run(Terminal terminal, string? wireId, string? alloyId, bool json)
    {
        WireCatalogue catalogue = WireCatalogue.Default;
        CatalogueWire[] wires = [.. Chosen(catalogue, wireId, alloyId)];
        if (json)
            WiresJson.Write(terminal.OutputStream, wires);
        else if (wireId is not null)
            WiresTable.WriteOne(terminal, wires[0]);
        else
            WiresTable.WriteAll(terminal, wires);

        return ExitCode.Done;
    }

    private static IEnumerable<CatalogueWire> Chosen(WireCatalogue catalogue, string? wireId, string? alloyId)
    {
        if (wireId is not null)
            return [WireNames.Find(catalogue, wireId)];

        if (alloyId is null)
            return catalogue.Wires;

        if (catalogue.TryFindAlloy(alloyId, out CatalogueAlloy? alloy))
            return catalogue.Wires.Where(wire => wire.Alloy.Id == alloy.Id);

        string all = string.Join(", ", catalogue.Alloys.Select(known => $"{known.Id} ({known.Title})"));
        throw new Refusal($"the catalogue has no alloy '{alloyId}'.", $"It has {all}.");
    }
}
