using System.Collections.Immutable;
using Archwright.Dentition.Positions;

namespace Archwright.Treatment.Decisions.Tracing;

/// <summary>One of the three shifts of a tooth.</summary>
/// <param name="Word">"labial".</param>
/// <param name="Of">Its figure [mm].</param>
/// <param name="By">An offset of that shift alone [mm].</param>
internal sealed record OffsetPart(string Word, Func<ClinicalOffset, double> Of, Func<double, ClinicalOffset> By)
{
    public static ImmutableArray<OffsetPart> All { get; } =
    [
        new("labial", offset => offset.Labial, by => new ClinicalOffset(Labial: by)),
        new("occlusal", offset => offset.Occlusal, by => new ClinicalOffset(Occlusal: by)),
        new("mesial", offset => offset.Mesial, by => new ClinicalOffset(Mesial: by)),
    ];
}
