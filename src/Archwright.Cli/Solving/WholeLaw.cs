using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;

namespace Archwright.Cli.Solving;

/// <summary>A case whose wire has its whole law, and a history of temperature.</summary>
internal static class WholeLaw
{
    /// <summary>Whether the wire of a case has a law with memory.</summary>
    public static bool Holds(CaseFile file) => file.Arrangement.Wire.Alloy is not LinearElastic;

    /// <summary>The case with the whole law of its catalogue wire, put in at the first temperature and taken through
    /// the others before anything else happens.</summary>
    /// <param name="file">The case.</param>
    /// <param name="temperatures">One or more [°C].</param>
    public static CaseFile Of(CaseFile file, IReadOnlyList<double> temperatures)
    {
        Alloy alloy = file.WireId is { } id && WireCatalogue.Default.TryFind(id, out CatalogueWire? wire)
            ? wire.Alloy.WholeLaw
            : file.AlloyId is { } alloyId && WireCatalogue.Default.TryFindAlloy(alloyId, out CatalogueAlloy? known)
                ? known.WholeLaw
                : file.Arrangement.Wire.Alloy;
        ImmutableArray<Step> history = [.. temperatures.Skip(1).Select(degrees => new Step(degrees, []))];
        return file with
        {
            Arrangement = file.Arrangement with
            {
                Wire = file.Arrangement.Wire with { Alloy = alloy },
                Temperature = temperatures[0],
            },
            Then = [.. history, .. file.Then],
            StepOffsets = file.StepOffsets.IsDefaultOrEmpty
                ? file.StepOffsets
                : [.. history.Select(_ => ImmutableArray<Dentition.Positions.ClinicalOffset?>.Empty),
                    .. file.StepOffsets],
        };
    }
}
