using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Units;
using Archwright.Exchange.CaseFiles;

namespace Archwright.Cli.Arches;

/// <summary>A built arch as a case file.</summary>
internal static class ArchFile
{
    private const int Decimals = 4;

    /// <summary>The case, its offsets rounded to a ten-thousandth of a millimetre and of a degree: figures a person can
    /// read, far below what anyone can measure, and the same on every machine.</summary>
    public static CaseFile Of(ArchSetup setup, string title)
    {
        ImmutableArray<ClinicalOffset> offsets = [.. setup.Offsets.Select(Rounded)];
        return CaseFile.Of(setup, title) with
        {
            Offsets = [.. offsets.Select(offset => (ClinicalOffset?)offset)],
            Arrangement = setup.Arrangement with
            {
                Slots =
                [
                    .. setup.Slots.Select((slot, i) =>
                        slot with { Actual = setup.Axes[i].Displaced(slot.Rest, offsets[i]) }),
                ],
            },
        };
    }

    /// <summary>How each slot of a case is off: as its file says, or worked out from its frames.</summary>
    public static ImmutableArray<ClinicalOffset> OffsetsOf(CaseFile file) =>
    [
        .. file.Arrangement.Slots.Select((slot, i) =>
            i < file.Offsets.Length && file.Offsets[i] is { } given
                ? given
                : file.Axes[i].Between(slot.Rest, slot.Actual)),
    ];

    private static ClinicalOffset Rounded(ClinicalOffset offset) => ClinicalOffset.FromDegrees(
        Math.Round(offset.Labial, Decimals),
        Math.Round(offset.Occlusal, Decimals),
        Math.Round(offset.Mesial, Decimals),
        Math.Round(Angle.ToDegrees(offset.Rotation), Decimals),
        Math.Round(Angle.ToDegrees(offset.Tip), Decimals),
        Math.Round(Angle.ToDegrees(offset.Torque), Decimals));
}
