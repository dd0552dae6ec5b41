using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Exchange.CaseFiles;

namespace Archwright.Cli.Arches;

/// <summary>What can be measured on the arch of a case.</summary>
/// <param name="Irregularity">Null when one of the six front teeth has no slot.</param>
/// <param name="Intercanine">Distance of the canines' cusp tips [mm]; null when one has no slot.</param>
/// <param name="Intermolar">Distance of the first molars [mm]; null when one has no slot.</param>
/// <param name="Space">Room in front of the first molars; null without both of them.</param>
/// <param name="Spee">Depth of the row of teeth; null without central incisors and molars.</param>
/// <param name="Offsets">How each slot is off.</param>
internal sealed record ArchFigures(
    IrregularityIndex? Irregularity,
    double? Intercanine,
    double? Intermolar,
    SpaceDeficit? Space,
    SpeeCurve? Spee,
    ImmutableArray<ClinicalOffset> Offsets)
{
    /// <summary>Measures a case.</summary>
    public static ArchFigures Of(CaseFile file)
    {
        var slots = file.Arrangement.Slots;
        return new ArchFigures(
            IrregularityIndex.TryOf(file.Teeth, slots, out IrregularityIndex? index) ? index : null,
            ArchWidths.Intercanine(file.Teeth, slots),
            ArchWidths.Between(file.Teeth, slots, position: 6),
            SpaceDeficit.Of(file.Teeth, slots),
            SpeeCurve.Of(file.Teeth, slots),
            ArchFile.OffsetsOf(file));
    }
}
